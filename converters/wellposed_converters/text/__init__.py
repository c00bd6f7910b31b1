"""Notes, checklists and e-mails read into clauses, and everything doubtful asked about."""
