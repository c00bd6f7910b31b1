"""A segment cut into items, every grouping of them, and each grouping as statements."""
