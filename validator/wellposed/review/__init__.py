"""A setup held against its prescription, clause by clause."""
