"""Moved."""

from wellposed_converters.text.places.notation import *  # noqa: F403
