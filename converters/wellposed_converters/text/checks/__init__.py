"""What is contradictory between clauses of one note; a module a theme, a generator a class."""
