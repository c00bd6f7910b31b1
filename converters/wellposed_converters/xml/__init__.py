"""The XML form of the documents: the same content as the JSON form, both ways."""
