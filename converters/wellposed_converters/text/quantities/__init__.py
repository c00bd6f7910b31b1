"""Amounts: values with their units and bounds, ranges, changes, what they are counted by, places in a row."""

from wellposed_converters.text.quantities.bases import find_bases, find_ordinals
from wellposed_converters.text.quantities.find import find_amounts
from wellposed_converters.text.quantities.kinds import Amount, Basis, FromTo, Ordinal

__all__ = ["Amount", "Basis", "FromTo", "Ordinal", "find_amounts", "find_bases", "find_ordinals"]
