"""Reports in words and in the forms other programs read."""
