"""The whole mouth: allergies, and bleeding, that go badly with what an order counts on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.aids import CARRYING, attached
from wellposed.rules.chart import Chart

_ELASTICS = ("elastics", "class-ii-elastics", "class-iii-elastics")
_OPERATIONS = ("extraction", "exposure", "surgery")
_STEEL = ("bonded-button", "expansion-screw")
_HOOKS = ("button-opening", "elastic")
_BONDED = ("bonded", "both")
_CARRIED = ("must", "prefer", "may")


@rule(
    "bleeding-disorder-and-operation",
    Severity.CAUTION,
    title="A tooth is to be taken out, or an operation done, and a disorder of bleeding is stated.",
    says="a disorder of bleeding is stated, and the order counts on: {things:words}.",
    do="Agree it with the physician first, and tell whoever operates.",
    change="A plan without an operation, or no such disorder, would change it.",
)
def bleeding_disorder_and_operation(chart: Chart) -> Iterator[Told]:
    """No extraction, exposure, surgery or bone screw stands beside a disorder of bleeding.

    Whoever operates has to know; whether the plan can go that way is decided before aligners are made for it.

    Evidence: general dental practice.

    Passes: {"conditions": [{"condition": "bleeding-disorder"}]}
    Fails: {"conditions": [{"condition": "bleeding-disorder"}],
            "allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}
    """
    places = [*chart.allowed("extraction"), *(p for p in chart.of("process") if p.said("step") in _OPERATIONS)]
    yield from _beside(chart, "bleeding-disorder", [*places, *_auxiliaries(chart, "bone-screw")])


@rule(
    "nickel-allergy-and-metal",
    Severity.CAUTION,
    title="An allergy to nickel is stated, and something of metal is to be bonded or hooked.",
    says="an allergy to nickel is stated, and the order counts on: {things:words}; buttons, hooks and wires are mostly "
    "of steel, which holds nickel.",
    do="Say of which material it is to be, or ask for one without nickel.",
    change="Words that name the material, where they can be given, or no such part, would change it.",
)
def nickel_allergy_and_metal(chart: Chart) -> Iterator[Told]:
    """No button, hook, elastic, expansion screw or bonded retainer whose material is not said stands beside an allergy
    to nickel.

    Stainless steel holds nickel. Gold, titanium, ceramic or fibre can be used instead.

    Evidence: textbooks of materials; bound in steel little is given off, and few react in the mouth.

    Passes: {"conditions": [{"condition": "allergy-nickel"}],
             "retention": [{"id": "r1", "arch": "lower", "retainer": "bonded", "words": "fibre"}]}
    Fails: {"conditions": [{"condition": "allergy-nickel"}],
            "allow": [{"id": "a1", "use": "auxiliary", "auxiliary": "bonded-button", "teeth": ["13"]}]}
    """
    places = [*_auxiliaries(chart, *_STEEL), *_built(chart, "button-opening"), *_retainers(chart)]
    hooks_said = any(place.said("words") for place in _built(chart, *_HOOKS))
    hooked = () if hooks_said else chart.allowed(*_ELASTICS)
    yield from _beside(chart, "allergy-nickel", [*hooked, *_not_described(places)])


@rule(
    "acrylate-allergy-and-resin",
    Severity.ASK,
    title="An allergy to acrylates is stated, and resin is to be bonded.",
    says="an allergy to acrylates is stated, and the order counts on: {things:words}; the resin they are bonded "
    "with is an acrylate.",
    do="Ask the patient's physician which resin can be used, or plan without bonding.",
    change="Nothing bonded, or words at the clause that name the material, would change it.",
)
def acrylate_allergy_and_resin(chart: Chart) -> Iterator[Told]:
    """No attachment, bonded button or bonded retainer whose material is not said stands beside an allergy to acrylates.

    Dental resins are acrylates; what is not fully set is what the allergic react to, on the gums as on the hands.

    Evidence: textbooks of materials. The aligner itself is mostly another plastic; its maker can say.

    Passes: {"conditions": [{"condition": "allergy-acrylate"}], "attachments": [{"id": "t1", "otherwise": "none"}]}
    Fails: {"conditions": [{"condition": "allergy-acrylate"}],
            "attachments": [{"id": "t1", "otherwise": "laboratory-decides"}]}
    """
    attachments = [p for p in chart.of("attachments") if attached(p, *_CARRIED) or p.said("otherwise") in CARRYING]
    places = [*attachments, *_auxiliaries(chart, "bonded-button"), *_retainers(chart)]
    yield from _beside(chart, "allergy-acrylate", _not_described(places))


@rule(
    "latex-allergy-and-elastics",
    Severity.ASK,
    title="An allergy to latex is stated, elastics are to be worn, and their material is not said.",
    says="an allergy to latex is stated, and elastics are to be worn: they are usually of latex, and no others "
    "are asked for.",
    do="Ask for elastics without latex, in words at an `elastic` under `appliance`.",
    change="Words at an `elastic` under `appliance`, or no elastics, would change it.",
)
def latex_allergy_and_elastics(chart: Chart) -> Iterator[Told]:
    """Where an allergy to latex is stated, elastics are described in words under `appliance`.

    Intra-oral elastics are mostly made of latex, and a reaction in the mouth can be grave.

    Evidence: textbooks of materials; elastics without latex lose their force sooner.

    Passes: {"conditions": [{"condition": "allergy-latex"}],
             "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right"]}],
             "appliance": [{"id": "b1", "part": "elastic", "words": "without latex"}]}
    Fails: {"conditions": [{"condition": "allergy-latex"}],
            "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right"]}]}
    """
    worn = _built(chart, "elastic")
    if not any(place.said("words") for place in worn):
        yield from _beside(chart, "allergy-latex", [*chart.allowed(*_ELASTICS), *worn])


def _auxiliaries(chart: Chart, *kinds: str) -> list[Place]:
    return [place for place in chart.allowed("auxiliary") if place.said("auxiliary") in kinds]


def _built(chart: Chart, *parts: str) -> list[Place]:
    return [place for place in chart.of("appliance") if place.said("part") in parts]


def _retainers(chart: Chart) -> list[Place]:
    return [place for place in chart.of("retention") if place.said("retainer") in _BONDED]


def _not_described(places: Iterable[Place]) -> list[Place]:
    return [place for place in places if not place.said("words")]


def _beside(chart: Chart, name: str, places: list[Place]) -> Iterator[Told]:
    """One finding of each statement of a condition, with the clauses that do not go with it."""
    for condition in chart.condition(name):
        if places:
            things = list(dict.fromkeys(_thing(place) for place in places))
            yield told(condition.pointer, *(place.owner for place in places), things=things)


def _thing(place: Place) -> str:
    """What a clause wants used, as a term."""
    if place.section == "attachments":
        return "attachments"
    if place.section == "retention":
        return "bonded-retainer"
    use = str(place.said("use") or "")
    if use.endswith("elastics"):
        return "elastics"
    term: str = place.said("auxiliary") or place.said("part") or place.said("step") or use
    return term


RULES = (
    *(bleeding_disorder_and_operation, nickel_allergy_and_metal, acrylate_allergy_and_resin),
    latex_allergy_and_elastics,
)
