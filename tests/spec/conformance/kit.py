"""The conformance kit: its files, what is asked of a runner, and what an answer lacks.

``python tests/spec/conformance/kit.py`` writes the manifest and the digests of the inputs again.
"""

import base64
import hashlib
import json
import subprocess
from functools import cache
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[3]
KIT = ROOT / "spec" / "conformance"
MANIFEST = KIT / "manifest.json"
VERSION = "1.0.0"
MOST_SECONDS = 1800
PLACE = ("pointer", "line", "column", "nearest")
SENT = ("id", "task", "media_type", "now")
WAY = ("what", "use", "clause", "arch")


class Case(NamedTuple):
    """One case: where it stands, what it says of itself, what is expected."""

    folder: Path
    about: dict
    expected: dict

    @property
    def data(self):
        return (self.folder / self.about["input"]).read_bytes()

    @property
    def beside(self):
        """The bytes of the files beside the input, by what they are."""
        return {name: (self.folder / file).read_bytes() for name, file in self.about.get("beside", {}).items()}


def read(path):
    return json.loads(path.read_text("utf-8"))


@cache
def cases():
    """Every case, by folder."""
    folders = sorted(path.parent for path in KIT.glob("cases/*/*/case.json"))
    return tuple(Case(folder, read(folder / "case.json"), read(folder / "expected.json")) for folder in folders)


def asked(seq, case):
    """The line a runner is sent: nothing of what is expected."""
    sent = {name: case.about[name] for name in SENT if name in case.about}
    sent["input"] = base64.b64encode(case.data).decode()
    if case.beside:
        sent["beside"] = {name: base64.b64encode(data).decode() for name, data in case.beside.items()}
    return json.dumps({"seq": seq, "case": sent})


def run(command, chosen, most_seconds=MOST_SECONDS):
    """What a runner answers to these cases, by the id of the case; a case without an answer is left out.

    What was answered counts, however the runner ended. Its error stream is left to be seen. OSError where it cannot
    be started.
    """
    lines = "".join(asked(seq, case) + "\n" for seq, case in enumerate(chosen, 1)).encode()
    try:
        out = subprocess.run(command, input=lines, stdout=subprocess.PIPE, check=False, timeout=most_seconds).stdout
    except subprocess.TimeoutExpired as late:
        out = late.stdout or b""
    answers = by_seq(out)
    return {case.about["id"]: answers[seq] for seq, case in enumerate(chosen, 1) if seq in answers}


def by_seq(out):
    """The answers by their ``seq``. Of two with one ``seq`` nobody knows which is meant; other lines are no answers."""
    found = {}
    for line in out.splitlines():
        answer = parsed(line)
        seq = answer.get("seq") if isinstance(answer, dict) else None
        if isinstance(seq, int):
            found[seq] = {"errored": True, "why": "answered twice"} if seq in found else answer
    return found


def parsed(line):
    try:
        return json.loads(line)
    except ValueError:
        return None


def is_list_of(holds):
    return lambda value: isinstance(value, list) and all(map(holds, value))


FORM = {
    "findings": is_list_of(lambda one: isinstance(one, dict) and {"rule", "severity"} <= one.keys()),
    "conflicts": is_list_of(is_list_of(lambda one: isinstance(one, dict))),
    "amounts": is_list_of(lambda one: isinstance(one, dict) and isinstance(one.get("amount"), int | float)),
    "clauses": is_list_of(lambda one: isinstance(one, dict) and {"clause", "outcome"} <= one.keys()),
}


def unanswered(answer):
    """Why there is no answer to compare; "" where there is one."""
    if answer is None:
        return "no answer"
    if answer.get("errored"):
        return _with_reason("errored", answer)
    return "; ".join(f"{name} not in their form" for name, holds in FORM.items() if not holds(answer.get(name, [])))


def _with_reason(how, answer):
    return f"{how}: {answer['why']}" if "why" in answer else how


def lacks(expected, answer):
    """All in which an answer is not as expected; nothing for one that passes."""
    if why := unanswered(answer):
        return [why]
    if answer.get("skipped"):
        return [_with_reason("skipped", answer)]
    wrong = [
        f"{name}: {answer.get(name)}, not {expected[name]}"
        for name in ("outcome", "verdict", "digest")
        if name in expected and answer.get(name) != expected[name]
    ]
    wrong += [*_findings(expected, answer), *_clauses(expected, answer)]
    return [*wrong, *_conflicts(expected, answer), *_amounts(expected, answer)]


def _findings(expected, answer):
    found = answer.get("findings", [])
    for one in expected["findings"]:
        if not any(_is(one, other) for other in found):
            yield f"not found: {one}"
    for other in found:
        heavy = other["severity"] != "note" and not other.get("clinical")
        if expected["match"] == "exact" and heavy and not any(_is(one, other) for one in expected["findings"]):
            yield f"not expected: {other}"
    for one in expected.get("absent", ()):
        if any(all(other.get(name) == value for name, value in one.items()) for other in found):
            yield f"must not be found: {one}"


def _is(one, other):
    same = (one["rule"], one["severity"]) == (other["rule"], other["severity"])
    return same and all(one[name] == other.get(name) for name in PLACE if name in one)


def _clauses(expected, answer):
    for one in expected.get("clauses", ()):
        told = [other["outcome"] for other in answer.get("clauses", []) if other["clause"] == one["clause"]]
        if told != [one["outcome"]]:
            yield f"clause: {one}, not {told}"


def _conflicts(expected, answer):
    allowed = [expected["conflicts"]] if "conflicts" in expected else expected.get("any_of", [])
    found = _as_sets(answer.get("conflicts", []))
    if allowed and found not in [_as_sets(conflicts) for conflicts in allowed]:
        yield f"conflicts: {answer.get('conflicts')}"


def _as_sets(conflicts):
    return {frozenset(json.dumps(member, sort_keys=True) for member in members) for members in conflicts}


def _amounts(expected, answer):
    for one in expected.get("amounts", ()):
        ways = [way for way in answer.get("amounts", []) if all(way.get(k) == one[k] for k in WAY if k in one)]
        near = [way for way in ways if abs(way["amount"] - one["amount"]) <= one["tolerance"] + 1e-6]
        if not near:
            yield f"amount: {one}, among {ways}"


def manifest():
    """Version, the number of cases of each area, and the digest of every file but this one."""
    files = sorted(path for path in KIT.rglob("*") if path.is_file() and path != MANIFEST)
    areas = sorted({case.about["id"].partition("/")[0] for case in cases()})
    counts = {area: sum(case.about["id"].startswith(f"{area}/") for case in cases()) for area in areas}
    digests = {path.relative_to(KIT).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}
    return {"kit": VERSION, "format": "1.0", "cases": counts, "files": digests}


def written(value):
    """As the kit's files are written."""
    return json.dumps(value, ensure_ascii=False, indent=2) + "\n"


def main():
    """Write what is computed."""
    for case in cases():
        digest = hashlib.sha256(case.data).hexdigest()
        (case.folder / "case.json").write_text(written(case.about | {"sha256": digest}), "utf-8")
    MANIFEST.write_text(written(manifest()), "utf-8")


if __name__ == "__main__":
    main()
