import hashlib
import json

import pytest

from wellposed.findings import Finding, Severity
from wellposed.render.note import OtherNote, note_of

TEXT = "Hello\nIPR 33-43 max 0.3\nKeep OB"


def made_of(text):
    content = {"sha256": hashlib.sha256(text.encode()).hexdigest(), "sources": {"a1": [[6, 23]], "k1": [[24, 31]]}}
    return json.dumps({"extensions": {"org.wellposed.note": {"critical": False, "content": content}}}).encode()


@pytest.mark.parametrize(
    "clauses, pointer, words",
    [
        (("a1",), "", "In the note, line 2: “IPR 33-43 max 0.3”"),
        (("a1", "k1"), "", "In the note, line 2: “IPR 33-43 max 0.3 … Keep OB”"),
        ((), "/teeth", ""),
    ],
)
def test_a_finding_quotes_the_words_its_clauses_come_from(clauses, pointer, words):
    finding = Finding("a-rule", Severity.NOTE, pointer, clauses=clauses)
    assert note_of(made_of(TEXT), TEXT).words(finding) == words


@pytest.mark.parametrize("data", [made_of("another"), b"{}", b"[]", b"no"])
def test_another_note_is_refused(data):
    with pytest.raises(OtherNote):
        note_of(data, TEXT)
