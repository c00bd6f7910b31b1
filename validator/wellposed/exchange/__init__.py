"""From one house to another: canonical bytes, keys, signatures, and what arrives."""
