"""Moved."""

from wellposed_converters.text.lexicon.lexer import Token as Token
from wellposed_converters.text.lexicon.lexer import tokens as tokens
