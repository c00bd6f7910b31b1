"""A setup's aligners: how many there are, what happens at which, and where the path from the start leads."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed import norms
from wellposed.consistency.whole import mentions
from wellposed.consistency.whole_setup import Moved, What, WholeSetup, arch_of_contact
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.setup import Stage
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.teeth import ARCHES, arch_of

_ROUNDING = 1e-9


@rule(
    "beyond-last-aligner",
    Severity.STOP,
    title="Something is planned at an aligner that the arch does not have.",
    do="Correct the number of the aligner, or how many there are.",
)
def beyond_last_aligner(whole: WholeSetup) -> Iterator[Told]:
    """No stage, reduction or attachment names an aligner beyond the number stated for its arch.

    Either an aligner is missing, or it happens at another one.

    Passes: {"aligners": {"lower": 12}, "reductions": [
                {"contact": "31-41", "amount": 0.2, "unit": "mm", "before_aligner": 12}]}
    Fails: {"aligners": {"lower": 12}, "reductions": [
                {"contact": "31-41", "amount": 0.2, "unit": "mm", "before_aligner": 13}]}
    """
    for pointer, arch, number in _timed(whole):
        most = None if arch is None else whole.aligners(arch)
        if number is not None and most is not None and number > most:
            yield told(pointer, name=arch, value=number, expected=f"at most {most}")


def _timed(whole: WholeSetup) -> Iterator[tuple[str, str | None, int | None]]:
    """Where an aligner is named, the arch it is of, and its number."""
    for place in whole.of("reductions"):
        yield f"{place.pointer}/before_aligner", arch_of_contact(place), place.said("before_aligner")
    for place in whole.of("attachments"):
        yield f"{place.pointer}/from_aligner", arch_of(place.said("tooth")), place.said("from_aligner")
    for place in whole.of("stages"):
        if isinstance(place.part, Stage):
            yield f"{place.pointer}/aligner", place.part.arch, place.part.aligner


@rule(
    "moves-without-aligners",
    Severity.ASK,
    title="Teeth move in an arch that gets no aligners.",
    do="State how many aligners the arch gets, or what moves its teeth; or leave the movement out.",
)
def moves_without_aligners(whole: WholeSetup) -> Iterator[Told]:
    """Where an arch gets 0 aligners, its teeth have no movement but 0.

    The number or the movement is a slip, or something moves the teeth that the setup does not say.

    Passes: {"aligners": {"upper": 14, "lower": 0},
             "movements": [{"variable": "out", "unit": "mm", "values": {"11": 1, "41": 0}}]}
    Fails: {"aligners": {"upper": 14, "lower": 0},
            "movements": [{"variable": "out", "unit": "mm", "values": {"11": 1, "41": 0.5}}]}
    """
    for arch in (arch for arch in ARCHES if whole.aligners(arch) == 0):
        moving = [one for one in whole.moved("movements") if one.value and arch_of(one.what[0]) == arch]
        if moving:
            teeth = list(dict.fromkeys(one.what[0] for one in moving))
            yield told(moving[0].pointer, name=arch, teeth=teeth, first=f"/aligners/{arch}")


@rule(
    "stage-stated-twice",
    Severity.STOP,
    title="Two stages are of one aligner.",
    do="Put all that is said of an aligner of an arch in one stage, or correct its number.",
)
def stage_stated_twice(whole: WholeSetup) -> Iterator[Told]:
    """An aligner of an arch has one stage.

    Of two, one was probably meant for another aligner or the other arch.

    Passes: {"stages": [{"aligner": 1, "arch": "upper", "movements": []},
                        {"aligner": 1, "arch": "lower", "movements": []}]}
    Fails: {"stages": [{"aligner": 1, "arch": "upper", "movements": []},
                       {"aligner": 1, "arch": "upper", "movements": []}]}
    """
    seen: dict[tuple[str, int], str] = {}
    for at, stage in enumerate(whole.document.stages or ()):
        first = seen.setdefault((stage.arch, stage.aligner), f"/stages/{at}")
        if first != f"/stages/{at}":
            yield told(f"/stages/{at}", name=stage.arch, value=stage.aligner, first=first)


@rule(
    "stage-of-other-arch",
    Severity.STOP,
    title="A stage names a tooth of the other arch.",
    do="Correct the tooth, or the arch of the stage.",
)
def stage_of_other_arch(whole: WholeSetup) -> Iterator[Told]:
    """A stage is of one arch, and names teeth of that arch only.

    The aligners of an arch are counted for themselves; one of the two is a slip.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.2}}], "stages": [
                {"aligner": 1, "arch": "upper",
                 "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.2}}]}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"41": 0.2}}], "stages": [
               {"aligner": 1, "arch": "upper",
                "movements": [{"variable": "out", "unit": "mm", "values": {"41": 0.2}}]}]}
    """
    arch = None
    for place in whole.of("stages"):
        arch = place.said("arch") or arch
        for tooth in mentions(place, ("values",)):
            if arch_of(tooth.name) != arch:
                yield told(tooth.pointer, tooth=tooth.name, expected=f"a tooth of the {arch} arch")


@rule(
    "path-without-end",
    Severity.STOP,
    title="A movement stands on the way that the final positions do not name.",
    do="State it among the movements, or correct the tooth or variable of the stage.",
)
def path_without_end(whole: WholeSetup) -> Iterator[Told]:
    """What a stage states has its final position too: in a table, or by `unlisted` as unmoved.

    It was forgotten at the end, or meant for another tooth on the way. The first place is named.

    Passes: {"unlisted": null, "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0}}], "stages": [
                {"aligner": 1, "arch": "upper",
                 "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0}}]}]}
    Fails: {"unlisted": null, "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0}}], "stages": [
               {"aligner": 1, "arch": "upper",
                "movements": [{"variable": "out", "unit": "mm", "values": {"12": 0}}]}]}
    """
    seen: set[What] = set()
    for one in whole.moved("stages"):
        if one.what not in seen and whole.final(one.what) is None:
            seen.add(one.what)
            yield told(one.pointer, tooth=one.what[0], name=one.what[1])


@rule(
    "path-misses-the-end",
    Severity.STOP,
    title="The path does not end where the tooth is to stand.",
    do="Correct the final position or the last stage, or say how many aligners there are.",
)
def path_misses_the_end(whole: WholeSetup) -> Iterator[Told]:
    """After the last aligner of an arch a tooth stands at its final position, but for rounding.

    The last aligner is the number stated, else the last on the path. Of two positions nobody can tell which is meant;
    a stage that counts from the one before, instead of from the start, shows here.

    Passes: {"aligners": {"upper": 2}, "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.4}}],
             "stages": [{"aligner": 2, "arch": "upper",
                         "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.42}}]}]}
    Fails: {"aligners": {"upper": 2}, "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.4}}],
            "stages": [{"aligner": 2, "arch": "upper",
                        "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.2}}]}]}
    """
    last = {f"/stages/{at}" for at, one in enumerate(whole.document.stages or ()) if one.aligner == whole.end(one.arch)}
    for one in whole.moved("stages"):
        end = whole.final(one.what)
        if one.pointer.partition("/movements")[0] in last and end is not None and _apart(one, end):
            tooth, variable = one.what
            yield told(one.pointer, tooth=tooth, name=variable, value=one.value, expected=end)


def _apart(one: Moved, end: float) -> bool:
    """Whether the two differ by more than rounding; of a wrong unit another rule speaks."""
    expected = VARIABLE_UNITS[one.what[1]]
    near = norms.value(f"setup.path-end.{expected}")
    return one.unit == expected and abs(one.value - end) > near + _ROUNDING


@rule(
    "path-not-whole",
    Severity.NOTE,
    title="The path does not say where teeth stand after each aligner.",
    do="Nothing, if only some stages were meant to be stated.",
)
def path_not_whole(whole: WholeSetup) -> Iterator[Told]:
    """Names an arch with a path that leaves aligners out. A path may: what a stage does not state is not known.

    Where teeth stand in between is not known, and what is undone there cannot be seen.

    Passes: {"aligners": {"upper": 2}, "stages": [{"aligner": 1, "arch": "upper", "movements": []},
                                                  {"aligner": 2, "arch": "upper", "movements": []}]}
    Fails: {"aligners": {"upper": 2}, "stages": [{"aligner": 2, "arch": "upper", "movements": []}]}
    """
    for arch, found in whole.path.items():
        if set(found) < set(range(1, whole.end(arch) + 1)):
            yield told("/stages", name=arch, found=found, expected=f"1 to {whole.end(arch)}")


@rule(
    "aligners-not-stated",
    Severity.NOTE,
    title="It is not said how many aligners an arch gets.",
    do="State it; until then the last stage of the arch counts as the last aligner.",
)
def aligners_not_stated(whole: WholeSetup) -> Iterator[Told]:
    """Where stages of an arch are stated, so is the number of its aligners.

    Without it nobody can tell a path that was cut off from one that has ended.

    Passes: {"aligners": {"upper": 1}, "stages": [{"aligner": 1, "arch": "upper", "movements": []}]}
    Fails: {"stages": [{"aligner": 1, "arch": "upper", "movements": []}]}
    """
    for arch in whole.path:
        if whole.aligners(arch) is None:
            yield told("/stages", name=arch, expected=f"aligners/{arch}")


@rule(
    "nothing-planned",
    Severity.NOTE,
    title="The setup says of no tooth where it is to stand.",
    do="State the movements; or by `unlisted` that no tooth moves.",
)
def nothing_planned(whole: WholeSetup) -> Iterator[Told]:
    """There is a movement, or `unlisted` says that what is not named stays.

    A tooth that is not named is not stated; it is not taken to stay.

    Passes: {"movements": [], "unlisted": "unmoved"}
    Fails: {"movements": [], "unlisted": null}
    """
    if not whole.document.movements and whole.document.unlisted is None:
        yield told("/movements", expected=["movements", "unlisted"])


RULES = (
    *(beyond_last_aligner, moves_without_aligners, stage_stated_twice, stage_of_other_arch),
    *(path_without_end, path_misses_the_end, path_not_whole, aligners_not_stated, nothing_planned),
)
