"""One segment to clauses and questions: all its groupings read, and one left, or a question."""
