"""A thumbprint in words that can be read out in any language, and compared with the ear.

Two bytes are one word of five letters, consonants and vowels in turn: proquints, D. S. Wilkerson, arXiv:0901.4016.
A thumbprint of 32 bytes is 16 of them.
"""

from __future__ import annotations

import re

from wellposed.exchange.base64url import bytes_of

__all__ = ["URN", "same", "words"]

URN = "urn:ietf:params:oauth:jwk-thumbprint:sha-256:"
"""What stands before a thumbprint where it has to say what it is (RFC 9278), as in the picture to scan."""

_CONSONANTS = "bdfghjklmnprstvz"
_VOWELS = "aiou"
_BETWEEN = re.compile(r"[\s,-]+")


def words(data: bytes) -> tuple[str, ...]:
    """An even number of bytes as words, one for two of them."""
    pairs = (int.from_bytes(data[place : place + 2]) for place in range(0, len(data), 2))
    return tuple(_word(pair) for pair in pairs)


def _word(pair: int) -> str:
    consonants = [_CONSONANTS[pair >> shift & 15] for shift in (12, 6, 0)]
    vowels = [_VOWELS[pair >> shift & 3] for shift in (10, 4)]
    return consonants[0] + vowels[0] + consonants[1] + vowels[1] + consonants[2]


def same(read_back: str, kid: str) -> bool:
    """Whether what was read back is this thumbprint: its words, all of them and in order, or the thumbprint itself.

    Large and small letters, blanks, commas and hyphens between words do not matter; nothing else is overlooked.
    """
    if read_back.strip().removeprefix(URN) == kid:
        return True
    heard = [word for word in _BETWEEN.split(read_back.lower()) if word]
    return tuple(heard) == words(bytes_of(kid) or b"")
