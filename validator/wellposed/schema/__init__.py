"""The published JSON Schemas, made from the models and held to what every validator understands alike."""

from wellposed.schema.documents import FOLDER, document_schema, names, text
from wellposed.schema.subset import outside_subset

__all__ = ["FOLDER", "document_schema", "names", "outside_subset", "text"]
