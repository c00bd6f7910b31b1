"""The words a note may use, as data, and the longest match over them."""

from wellposed_converters.text.lexicon.forms import Entry, Match, content_words, entry_of, head, longest, vocabulary

__all__ = ["Entry", "Match", "content_words", "entry_of", "head", "longest", "vocabulary"]
