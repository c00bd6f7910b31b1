"""What a prescription means, as linear constraints on planned movements, and whether they can hold."""
