"""The same document gives the same findings, byte for byte, whatever the seed of the hash."""

import json
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest
from tests.validator.wellposed.kinematics.generate import check, judged, prescription, written

HASH_SEEDS = range(20)
PROGRAM = """
import json, sys
from wellposed.check import check

def plain(value):
    return dict(value) if hasattr(value, "keys") else list(value)

for line in sys.stdin.buffer:
    report = check(line)
    findings = [
        [f.rule, f.severity, f.pointer, f.facts, f.clauses, f.line, f.column] for f in report.findings
    ]
    print(json.dumps([report.verdict, findings], default=plain))
print(hash("a"), file=sys.stderr)
"""


def documents():
    """One of each kind of answer, those with conflicts the longest of the first hundred."""
    wanted = ("contradictory", "undecided", "beyond-practice", "possible")
    seeds = {verdict: max((s for s in range(100) if judged(s).verdict == verdict), key=size) for verdict in wanted}
    return wanted, [prescription(seed) for seed in seeds.values()]


def size(seed):
    """How much there is to get out of order."""
    found = judged(seed)
    ways = sum(len(conflict.ways_out) + len(conflict.members) for conflict in found.conflicts)
    return ways + len(found.forced), -seed


@pytest.mark.slow
def test_findings_are_the_same_under_every_hash_seed():
    wanted, chosen = documents()
    text = b"".join(written(document) + b"\n" for document in chosen)

    def run(seed):
        environment = {**os.environ, "PYTHONHASHSEED": str(seed), "PYTHONPATH": os.pathsep.join(sys.path)}
        ran = subprocess.run(
            [sys.executable, "-c", PROGRAM], input=text, capture_output=True, env=environment, check=True
        )
        return ran.stdout, ran.stderr

    with ThreadPoolExecutor(2) as pool:
        answers = list(pool.map(run, HASH_SEEDS))
    assert len({hashes for _, hashes in answers}) == len(HASH_SEEDS)
    assert len({found for found, _ in answers}) == 1
    reports = [json.loads(line) for line in answers[0][0].splitlines()]
    assert tuple(verdict for verdict, _ in reports) == wanted
    assert all(findings for _, findings in reports)


@pytest.mark.slow
def test_what_was_asked_before_does_not_matter():
    """A judgement leaves nothing behind that the next one could see."""
    _, chosen = documents()
    texts = [written(document) for document in chosen]
    forward = {text: repr(check(text)) for text in texts}
    backward = {text: repr(check(text)) for text in reversed(texts)}
    assert forward == backward
