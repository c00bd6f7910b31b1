"""Every rule the tool can speak for, every verdict and every norm, each with its page."""

from wellposed.catalogue.book import GROUPS, find, known_names, nearest, rules
from wellposed.catalogue.entry import Entry, Verdict, verdicts
from wellposed.catalogue.origin import bibliography_page
from wellposed.catalogue.pages import page, rules_page

__all__ = [
    "GROUPS",
    "Entry",
    "Verdict",
    "bibliography_page",
    "find",
    "known_names",
    "nearest",
    "page",
    "rules",
    "rules_page",
    "verdicts",
]
