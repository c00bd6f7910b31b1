"""Problems as Conditions, and teeth that are not ordinary as BodyStructures."""

from __future__ import annotations

from wellposed_converters.fhir.names import Object, concept, extension, referred, tooth
from wellposed_converters.fhir.parts import Entry, Source
from wellposed_converters.fhir.sections import PROBLEM

STATE = "tooth-state"


def conditions(source: Source) -> list[Entry]:
    """Each problem, and the findings and problems it rests on."""
    return [
        source.entry(f"problem/{problem['id']}", _condition(source, problem, place))
        for place, problem in source.entries("problems")
    ]


def structures(source: Source) -> list[Entry]:
    """Each tooth that is not ordinary."""
    return [
        source.entry(f"tooth/{number}", _structure(source, one, place))
        for number, (place, one) in enumerate(source.entries("teeth/particulars"))
    ]


def _condition(source: Source, problem: Object, place: str) -> Object:
    sites = [tooth(number) for number in problem.get("teeth", ())]
    return {
        "resourceType": "Condition",
        "extension": source.own(PROBLEM, problem, place),
        "code": concept("problem", problem["problem"], source.text(problem, "words", place)),
        **({"bodySite": sites} if sites else {}),
        "subject": source.subject,
        **_evidence(source, problem, place),
    }


def _evidence(source: Source, problem: Object, place: str) -> Object:
    """What it rests on; left out as a whole where some of that is no finding and no problem."""
    because = problem.get("because")
    if because is None:
        return {}
    names = [source.named.get(name) for name in because]
    if not all(names):
        source.left.out.append(f"{place}/because")
        return {}
    return {"evidence": [{"detail": [referred(name) for name in names if name]}]}


def _structure(source: Source, one: Object, place: str) -> Object:
    said = source.text(one, "words", place)
    return {
        "resourceType": "BodyStructure",
        "extension": [{"url": extension(STATE), "valueCode": state} for state in one["states"]],
        "location": tooth(one["tooth"]),
        **({"description": said} if said else {}),
        "patient": source.subject,
    }
