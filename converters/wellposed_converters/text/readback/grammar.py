"""The sentences of a read-back parsed: the grammar beside this module with the words of the format in it."""

from __future__ import annotations

from functools import cache
from importlib import resources

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput

from wellposed_converters.text.readback.terms import alternatives, terms


def parsed(sentence: str) -> Tree[Token] | None:
    """The form of a sentence in British words, or None for one that is no sentence of a read-back."""
    try:
        (form,) = _parser().parse(sentence).children
    except UnexpectedInput:
        return None
    return form if isinstance(form, Tree) else None


@cache
def _parser() -> Lark:
    return Lark(grammar(), parser="lalr", lexer="contextual")


@cache
def grammar() -> str:
    """The grammar whole."""
    rules = resources.files(__package__).joinpath("readback.lark").read_text("utf-8")
    words = [f"{name}: {alternatives(table)}" for name, table in terms().items()]
    return "\n".join([rules, *words, ""])
