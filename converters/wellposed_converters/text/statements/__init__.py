"""One statement to clauses: where it applies, with what force, and what its head says."""
