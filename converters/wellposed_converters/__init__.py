"""Other forms of an order, to and from the prescription format."""
