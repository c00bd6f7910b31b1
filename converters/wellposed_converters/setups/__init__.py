"""A setup out of a plain table of tooth movements, by a declared reading of its columns."""
