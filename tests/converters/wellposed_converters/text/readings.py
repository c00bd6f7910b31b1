"""A text as the records of its reading, and what can be asked of them."""

from wellposed_converters.text.clause import HARD, record
from wellposed_converters.text.read import read_text
from wellposed_converters.text.score import question_record
from wellposed_converters.text.scoring import overlap, score


def read(text):
    reading = read_text(text)
    return [record(clause, text) for clause in reading.clauses], [question_record(one) for one in reading.questions]


def said(clause):
    """What a clause says, whatever its words: the members in which a wrong value is an error of meaning."""
    return str({name: clause.get(name) for name in (*HARD, "of", "if", "pending")})


def pointed(made, put):
    """The made clauses that a question concerns or lies over."""
    return [p for p, one in enumerate(made) if any(p in q["for"] or overlap(one, q) for q in put)]


def firm(text):
    """The clauses of a text that no question concerns or lies over."""
    made, put = read(text)
    asked = pointed(made, put)
    return [one for p, one in enumerate(made) if p not in asked]


def compared(sample):
    return score(sample.expected, sample.ask, *read(sample.text))


def asked_over(text, start, end):
    """Whether a question lies over these characters, or concerns a clause that does."""
    made, put = read(text)
    here = {"spans": [[start, end]]}
    asked = pointed(made, put)
    return any(overlap(q, here) for q in put) or any(overlap(made[p], here) for p in asked)
