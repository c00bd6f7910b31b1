"""Measured costs as ratios within one run, so that the machine drops out: ``make bench``."""

import subprocess
import sys
import time
from itertools import pairwise
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import cases
from tests.validator.wellposed.rules.sound import DAYS, sound

from wellposed.check import check
from wellposed.kinematics.arch import arch_line
from wellposed.kinematics.case import Case, must
from wellposed.kinematics.possible import forced
from wellposed.kinematics.search import failing
from wellposed.kinematics.solve import Model
from wellposed.kinematics.verdict import judge
from wellposed.model import Prescription
from wellposed.reading import read_document
from wellposed.rules import RULES, Chart, clinical
from wellposed.rules.causes import sorted_out


def seconds(work, rounds=15, repeat=10):
    """The median of the means of ``repeat`` runs."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        for _ in range(repeat):
            work()
        times.append((time.perf_counter() - start) / repeat)
    return median(times)


def row(what, value, aim):
    print(f"{what:<78} {value:>8}   aim {aim}")


def structure():
    data = cases.as_bytes(cases.ordinary())
    bare = seconds(lambda: Prescription.model_validate_json(data), repeat=200)
    ours = seconds(lambda: Prescription.model_validate(read_document(data).value), repeat=200)
    row("structural check : bare pydantic parsing", f"{ours / bare:.2f}", "<= 1.5")


def feasible():
    data = cases.as_bytes(cases.ordinary())
    parsed = Prescription.model_validate(read_document(data).value)
    case = Case(parsed)
    members = must(case.quick, limits=True)
    setting = case.quick.frame.hinge.stated[0][0]

    def verdict():
        arch_line.cache_clear()
        fresh = Case(Prescription.model_validate(read_document(data).value))
        assert failing(fresh.quick_groups(), must(fresh.quick, limits=True)) is None

    def parse_and_solve():
        Prescription.model_validate(read_document(data).value)
        Model(case.quick.system).holds(members, setting)

    whole, least = seconds(verdict), seconds(parse_and_solve)
    row("verdict of a feasible prescription : parse + one cold solve of its model", f"{whole / least:.2f}", "<= 2")
    groups = case.quick_groups()
    ranges = len(list(forced(case.quick, groups, members)))
    told = seconds(lambda: list(forced(case.quick, groups, members)))
    terms = next(iter(case.quick.asked.demands.values()))[0]
    model = case.quick_model
    senses = (1, -1)

    def warm():
        for sense in senses:
            model.extreme(members, terms, sense, setting)

    solve = seconds(warm) / 2
    solves = ranges * 2 * len(groups)
    row(f"what it forces, per bound of {ranges} ranges : one warm solve", f"{told / solves / solve:.2f}", "<= 2")


def contradiction():
    parsed = Prescription.model_validate(cases.contradictory())

    def cold():
        arch_line.cache_clear()
        judge(parsed)

    row("a contradictory one, every conflict and way out, ms", f"{seconds(cold, repeat=3) * 1e3:.0f}", "<= 40")
    found = judge(parsed)
    row(
        "   its conflicts and ways out", f"{len(found.conflicts)}, {sum(len(c.ways_out) for c in found.conflicts)}", "-"
    )


def clinical_rules():
    """Every clinical rule on one order of each ordinary kind, the judgement given, against the judgement."""
    orders = [Prescription.model_validate(sound(seed)) for seed in range(len(DAYS))]
    judged = [(order, judge(order)) for order in orders]

    def told():
        for order, judgement in judged:
            chart = Chart(order, judged=judgement)
            sorted_out(chart, clinical(chart))

    rules = seconds(told, rounds=7, repeat=2) / len(orders)
    verdicts = seconds(lambda: [judge(order) for order in orders], rounds=7, repeat=2) / len(orders)
    row(f"all {len(RULES)} clinical rules on an ordinary order, ms", f"{rules * 1e3:.1f}", "<= 5")
    row("   the same : its verdict", f"{rules / verdicts:.2f}", "-")


def command():
    """The whole command against a Python that imports the same modules, in the same order, and stops."""
    path = Path(__file__).parents[2] / "examples" / "spaced-upper-front" / "prescription.json"
    shown = "import sys; from wellposed.commands import main\ntry:\n main()\nexcept SystemExit: print(*sys.modules)"
    run = [sys.executable, "-c", shown, "check", str(path)]
    loaded = subprocess.run(run, capture_output=True, text=True, check=True).stdout.splitlines()[-1].split()
    imports = "\n".join(f"try: __import__({name!r})\nexcept ImportError: pass" for name in loaded if name != "__main__")
    runs = {"command": ["-m", "wellposed", "check", str(path)], "imports": ["-c", imports]}
    times = {name: [] for name in runs}
    for _ in range(15):
        for name, arguments in runs.items():
            start = time.perf_counter()
            subprocess.run([sys.executable, *arguments], capture_output=True, check=True)
            times[name].append(time.perf_counter() - start)
    ratio = median(times["command"]) / median(times["imports"])
    row("whole command : Python with the same imports", f"{ratio:.2f}", "<= 1.3")


def growth():
    sizes = [10, 20, 40, 80, 160, 320, 640, 1000]
    costs = []
    for size in sizes:
        data = cases.as_bytes(cases.of_clauses(size))
        costs.append(seconds(lambda data=data: check(data), rounds=5, repeat=2))
    told = ", ".join(f"{size}: {cost * 1e3:.0f} ms" for size, cost in zip(sizes, costs, strict=True))
    print(f"   {told}")
    doublings = [b / a for a, b in pairwise(costs[:-1])]
    row("cost of a verdict when the clauses double, 10 to 640, worst doubling", f"{max(doublings):.2f}", "<= 2.4")


if __name__ == "__main__":
    for measure in (structure, feasible, contradiction, clinical_rules, command, growth):
        measure()
