"""From landmark points to where teeth stand, how they move, and the measures of a mouth."""
