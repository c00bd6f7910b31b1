"""XML to a document: its faults have the rules and pointers of the JSON form, and their places in the XML."""

from __future__ import annotations

from codecs import BOM_UTF8
from dataclasses import replace

from wellposed.check import sound_document
from wellposed.findings import Finding, ordered
from wellposed.formats import Carried
from wellposed.model.envelope import Envelope
from wellposed.reading.positions import Place
from wellposed.report import Report
from wellposed_converters.xml.faults import Fault, stop
from wellposed_converters.xml.names import NAMESPACE
from wellposed_converters.xml.parsing import UTF_8, Parsed, parsed
from wellposed_converters.xml.places import places
from wellposed_converters.xml.teller import Told
from wellposed_converters.xml.telling import told


def read(data: bytes) -> tuple[Carried, ...]:
    """The one document of a file, or everything wrong with it. Never raises for what is in the bytes."""
    if not data.startswith(BOM_UTF8):
        return (_read(data),)
    rest = _read(data.removeprefix(BOM_UTF8))
    return (Carried(None, ordered([stop("byte-order-mark", expected=UTF_8).at(1, 1), *rest.findings])),)


def _read(data: bytes) -> Carried:
    tree = parsed(data)
    if not isinstance(tree, Parsed):
        return Carried(None, ordered(tree))
    if not tree.root.tag.startswith(f"{{{NAMESPACE}}}"):
        return Carried(None, (_elsewhere(tree),))
    text = told(tree.root)
    made = sound_document(text.text.encode()) if text.text else None
    if isinstance(made, Envelope) and not text.faults:
        return Carried(made)
    found = made.findings if isinstance(made, Report) else ()
    return Carried(None, _placed(tree, text, found))


def _elsewhere(tree: Parsed) -> Finding:
    """Where the outermost element is of another namespace, all in it means something else."""
    place = places(tree, [tree.root])[tree.root]
    return stop("other-namespace", expected=NAMESPACE).at(place.line, place.column)


def _placed(tree: Parsed, text: Told, found: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """All of it with line and column in the XML, in stable order."""
    wanted = [fault.node for fault in text.faults]
    wanted += [text.element(column) for one in found for column in _columns(one)]
    at = places(tree, wanted)
    own = [_finding(fault, at[fault.node]) for fault in text.faults]
    return ordered([*own, *(_moved(one, text, at) if one.column else one for one in found)])


def _columns(one: Finding) -> list[int]:
    first = one.facts.get("first_column")
    return [column for column in (one.column, first) if column is not None]


def _finding(fault: Fault, place: Place) -> Finding:
    return stop(fault.rule, fault.pointer, **fault.facts).at(place.line, place.column)


def _moved(one: Finding, text: Told, at: dict[object, Place]) -> Finding:
    """A finding placed in the JSON text, at the element that place comes from."""
    here, *first = (at[text.element(column)] for column in _columns(one))
    if first:
        one = replace(one, facts={**one.facts, "first_line": first[0].line, "first_column": first[0].column})
    return one.at(here.line, here.column)
