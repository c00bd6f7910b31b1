"""What in a letter or mail is no instruction: subject, greeting, admin, closing, names.

Only what the closed patterns of the data cover wholly counts; a line that could hold an instruction is never among it.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from wellposed_converters.text.layout.words import NAMES, compiled, pattern, plain, table, title, words
from wellposed_converters.text.lexicon import vocabulary

WORD: Final = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?")
LONGEST: Final = 300


def notice(said: str) -> str | None:
    """Whether a sentence is wholly a "greeting", "closing", "signature" or "admin"; None for one to be read."""
    if len(said) > LONGEST:
        return None
    bare = plain(said)
    greeting = pattern("greeting").fullmatch(bare)
    if greeting:
        return None if _holds_content(greeting["who"] or "") else "greeting"
    if pattern("closing").fullmatch(bare):
        return "closing"
    if pattern("admin").fullmatch(bare):
        return "admin"
    return "signature" if _signed_off(bare) or _titled_name(bare) else None


def greeting_before(said: str) -> int:
    """How many characters of the sentence are a greeting with the sign after it, before something else: 'Hi team, '."""
    found = _greeting_first().match(said[:LONGEST])
    return found.end() if found and not _holds_content(found["who"] or "") else 0


def subject(said: str) -> tuple[int, bool] | None:
    """For a line 'Subject: ...': the length of the label, and whether all that follows is admin. None for others."""
    found = _label().match(said)
    if not found:
        return None
    rest = plain(said[found.end() :])
    return found.end(), not rest or pattern("subject").fullmatch(rest) is not None


def is_name_line(said: str) -> bool:
    """Whether a line below a closing is a name, a practice, an address, a telephone number or the like."""
    bare = plain(said[:LONGEST]) if len(said) <= LONGEST else ""
    if pattern("signature").fullmatch(bare):
        return True
    return _titled_name(bare) or _practice(bare) or (_names().fullmatch(bare) is not None and not _holds_content(bare))


def _signed_off(bare: str) -> bool:
    """'Many thanks, Dr Sample' on one line."""
    found = _closing_and_name().fullmatch(bare)
    return found is not None and not _holds_content(found["name"])


def _titled_name(bare: str) -> bool:
    first, *rest = re.split(r",? ", bare)
    if first.casefold().rstrip(".") not in words("signature", "titles") or not rest:
        return False
    names = [word for word in rest if word.casefold().strip("().") not in words("signature", "degrees")]
    return bool(names) and _names().fullmatch(" ".join(names)) is not None and not _holds_content(" ".join(names))


def _practice(bare: str) -> bool:
    """Capitals throughout, at least one word such as 'Practice', and no other word of an order."""
    parts = [part.strip("(),.") for part in bare.split()]
    known = words("signature", "practice") | words("signature", "joiners") | words("signature", "degrees")
    others = [part for part in parts if part and part.casefold() not in known]
    named = any(part.casefold() in words("signature", "practice") | words("signature", "degrees") for part in parts)
    return named and all(part[0].isupper() for part in others) and not _holds_content(" ".join(others))


def _holds_content(bare: str) -> bool:
    """Whether a word of an order is among the words, so that they are not taken for names."""
    found = [word.casefold() for word in WORD.findall(bare)]
    known = vocabulary() - words("signature", "joiners") | words("signature", "content")
    stems = tuple(table("signature")["stems"])
    plainly = words("greeting", "addressees") | words("signature", "titles")
    return any((len(word) > 1 and word in known) or word.startswith(stems) for word in found if word not in plainly)


@cache
def _names() -> re.Pattern[str]:
    return compiled([NAMES])


@cache
def _closing_and_name() -> re.Pattern[str]:
    closings = "|".join(f"(?:{part})" for part in table("closing")["patterns"])
    return compiled([rf"(?:{closings}),? (?P<name>(?:{title()} )?{NAMES})"])


@cache
def _greeting_first() -> re.Pattern[str]:
    greetings = "|".join(f"(?:{part})" for part in table("greeting")["patterns"])
    return compiled([rf"(?:{greetings})(?:[,!:]|\s[\u2013-])\s+(?=\S)"])


@cache
def _label() -> re.Pattern[str]:
    return compiled([rf"(?:{'|'.join(table('subject')['labels'])}):\s*"])
