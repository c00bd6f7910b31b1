"""The trade's words as data and pure functions."""
