"""What follows from the measurements of a prescription alone: pure functions, no findings."""
