"""A text laid out: what is read sentence by sentence, what stands in rows, and what is no instruction."""

from wellposed_converters.text.layout.blocks import Block, lay_out

__all__ = ["Block", "lay_out"]
