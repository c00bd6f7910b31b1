"""One revision against another, and a case followed over its revisions."""
