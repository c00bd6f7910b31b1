"""How well texts are read, against samples with their expected readings.

``python -m wellposed_converters.text.score SAMPLES.jsonl [--sample ID] [--json]``; the exit code is 1 when there is a
silent error, 2 when the samples cannot be used.
"""

from __future__ import annotations

import argparse
import json
import re
import sys
import unicodedata
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, Final

from wellposed_converters.text.clause import Question, record
from wellposed_converters.text.scoring import Record, Score, Silent, characters, score

SAYS_NOTHING: Final = re.compile(
    r"(?m)^\s*\(?\w{1,2}[.)](?=\s)|\b(?:and|please|but|plus|with|so)\b|[+|•]", re.IGNORECASE
)
"""What need be in no clause and no question: list marks, the closed list of joining words, bare joining signs."""
COUNTS: Final = (
    ("clauses expected", "expected"),
    ("  right", "right"),
    ("  asked about", "asked"),
    ("  missing, silently", "missing"),
    ("  wrong, silently", "wrong"),
    ("clauses made that nothing expects, silently", "invented"),
    ("questions expected", "questions"),
    ("  right", "questions right"),
    ("  covered by another type", "questions covered"),
    ("  answered by the program", "answered"),
    ("  of which nothing is left", "swallowed"),
    ("questions needless", "questions needless"),
    ("SILENT ERRORS", "silent"),
    ("  (a) made clauses that are wrong", "silent (a)"),
    ("  (b) expected clauses that are lost", "silent (b)"),
    ("  (c) expected questions not put", "silent (c)"),
    ("  extraction", "extraction"),
    ("  IPR", "ipr"),
    ("  wrong tooth", "wrong tooth"),
    ("  wrong direction", "wrong direction"),
    ("  lost negation", "lost negation"),
)

Sample = Mapping[str, Any]
Made = tuple[Sequence[Record], Sequence[Record]]


class SampleError(ValueError):
    """A line of the samples that cannot be used."""


def read_samples(text: str) -> list[Sample]:
    """The samples, one JSON object a line.

    Raises:
        SampleError: naming the first line that is no such object, and what it lacks
    """
    return [_sample(line, number) for number, line in enumerate(text.splitlines(), start=1) if line.strip()]


def _sample(line: str, number: int) -> Sample:
    try:
        made = json.loads(line)
    except ValueError as fault:
        raise SampleError(f"line {number}: not JSON ({fault})") from fault
    needs = {"id": str, "text": str, "expected": list, "ask": list}
    if not isinstance(made, dict):
        raise SampleError(f"line {number}: not an object")
    for name, kind in needs.items():
        if not isinstance(made.get(name), kind):
            raise SampleError(f"line {number}: '{name}' must be there and be a {kind.__name__}")
    for clause in made["expected"]:
        _spanned(clause, "kind", number, len(made["text"]))
    for question in made["ask"]:
        _spanned(question, "type", number, len(made["text"]))
    return made


def _spanned(entry: Any, name: str, number: int, length: int) -> None:
    spans = entry.get("spans") if isinstance(entry, dict) and isinstance(entry.get(name), str) else None
    if not isinstance(spans, list) or not spans:
        raise SampleError(f"line {number}: each entry needs '{name}' and 'spans'")
    for span in spans:
        if not (isinstance(span, list) and list(map(type, span)) == [int, int] and 0 <= span[0] < span[1] <= length):
            raise SampleError(f"line {number}: {span!r} is no span of the text")


def coverage(text: str, clauses: Iterable[Record], questions: Iterable[Record]) -> float:
    """The share of the characters that say something which lie in a clause or a question."""
    idle = {at for found in SAYS_NOTHING.finditer(text) for at in range(*found.span())}
    says = {at for at, char in enumerate(text) if not char.isspace() and unicodedata.category(char)[0] != "P"} - idle
    held = {at for one in (*clauses, *questions) for at in characters(one)}
    return len(says & held) / len(says) if says else 1.0


def counted(sample: Sample, found: Score) -> Counter[str]:
    """The numbers of one sample, by the names of ``COUNTS``."""
    numbers = Counter(silent.sort for silent in found.silent)
    numbers.update(weight for silent in found.silent for weight in silent.weights)
    numbers.update({"expected": len(sample["expected"]), "right": len(found.right), "asked": len(found.asked)})
    numbers.update({"questions": len(sample["ask"]), "questions right": len(found.questions_right)})
    numbers.update({"questions covered": len(found.questions_covered)})
    numbers.update({"questions needless": len(found.questions_needless), "silent": len(found.silent)})
    numbers.update({"silent (a)": len(found.wrong_made), "silent (b)": len(found.lost)})
    numbers.update({"silent (c)": len(found.questions_missed)})
    return numbers


def by_kind(sample: Sample, found: Score) -> Counter[tuple[str, str]]:
    """How many clauses of each kind were expected, right, asked about and lost."""
    kinds = [clause["kind"] for clause in sample["expected"]]
    numbers = Counter((kind, "expected") for kind in kinds)
    numbers.update((kinds[g], "right") for g, _ in found.right)
    numbers.update((kinds[g], "asked") for g in found.asked)
    numbers.update((kinds[g], "lost") for g in found.lost)
    return numbers


def report(samples: Sequence[Sample], read: Callable[[str], Made]) -> dict[str, Any]:
    """All numbers: in total, by kind and by sample, with every silent error."""
    total, kinds, each = Counter[str](), Counter[tuple[str, str]](), []
    for sample in samples:
        clauses, questions = read(sample["text"])
        found = score(sample["expected"], sample["ask"], clauses, questions)
        numbers = counted(sample, found)
        total += numbers
        kinds += by_kind(sample, found)
        covered = coverage(sample["text"], clauses, questions)
        errors = [_told(silent) for silent in found.silent]
        each.append({"id": sample["id"], "numbers": dict(numbers), "coverage": covered, "silent": errors})
    names = sorted({kind for kind, _ in kinds})
    table = {kind: {name: kinds[kind, name] for name in ("expected", "right", "asked", "lost")} for kind in names}
    covered = min((one["coverage"] for one in each), default=1.0)
    return {"total": {name: total[name] for _, name in COUNTS}, "coverage": covered, "kinds": table, "samples": each}


def _told(silent: Silent) -> dict[str, Any]:
    said = {"sort": silent.sort, "weights": list(silent.weights), "expected": silent.expected, "made": silent.made}
    return {name: value for name, value in said.items() if value}


def lines(numbers: Mapping[str, Any]) -> list[str]:
    """The report as text."""
    out = [f"{label:46}{numbers['total'][name]:6}" for label, name in COUNTS]
    out += [f"{'span coverage, least of a text':46}{numbers['coverage']:6.1%}", ""]
    out += [f"{'kind':20}{'expected':>9}{'right':>9}{'asked':>9}{'lost':>9}"]
    out += [f"{kind:20}" + "".join(f"{value:9}" for value in row.values()) for kind, row in numbers["kinds"].items()]
    out += ["", f"{'sample':20}{'expected':>9}{'right':>9}{'asked':>9}{'silent':>9}{'covered':>9}"]
    for one in numbers["samples"]:
        values = [one["numbers"].get(name, 0) for name in ("expected", "right", "asked", "silent")]
        out.append(f"{one['id']:20}" + "".join(f"{value:9}" for value in values) + f"{one['coverage']:9.1%}")
    for one in numbers["samples"]:
        out += [f"{one['id']} {_line(silent)}" for silent in one["silent"]]
    return out


def _line(silent: Mapping[str, Any]) -> str:
    weights = f" [{', '.join(silent['weights'])}]" if "weights" in silent else ""
    sides = [
        f"\n    {side}: {json.dumps(silent[side], ensure_ascii=False)}"
        for side in ("expected", "made")
        if side in silent
    ]
    return f"{silent['sort']}{weights}{''.join(sides)}"


def question_record(question: Question) -> Record:
    """A question as the record that is compared: its type, what it concerns, its spans."""
    return {"type": question.type, "for": list(question.concerns), "spans": [list(span) for span in question.spans]}


def _read(text: str) -> Made:
    from wellposed_converters.text.read import read_text  # noqa: PLC0415  # the scoring itself needs no reader

    reading = read_text(text)
    return [record(clause, text) for clause in reading.clauses], [question_record(one) for one in reading.questions]


def main(arguments: Sequence[str] | None = None, read: Callable[[str], Made] = _read) -> int:
    """Print the report; 1 when there is a silent error, 2 when the samples cannot be used."""
    parser = argparse.ArgumentParser(prog="score", description="How well texts are read.")
    parser.add_argument("samples", type=Path)
    parser.add_argument("--sample", help="only the sample of this id")
    parser.add_argument("--json", action="store_true", help="the report as JSON")
    chosen = parser.parse_args(arguments)
    try:
        samples = read_samples(chosen.samples.read_text("utf-8"))
    except (OSError, ValueError) as fault:
        sys.stderr.write(f"{chosen.samples}: {fault}\n")
        return 2
    samples = [one for one in samples if chosen.sample in (None, one["id"])]
    if not samples:
        sys.stderr.write(f"{chosen.samples}: no sample {chosen.sample or ''}\n")
        return 2
    numbers = report(samples, read)
    sys.stdout.write(
        (json.dumps(numbers, ensure_ascii=False, indent=1) if chosen.json else "\n".join(lines(numbers))) + "\n"
    )
    return int(numbers["total"]["silent"] > 0)


if __name__ == "__main__":
    sys.exit(main())
