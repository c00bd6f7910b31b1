"""What a bundle says beside and against its document."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from wellposed.findings import Finding
from wellposed.formats import Loss
from wellposed.model.envelope import Envelope
from wellposed_converters.fhir.bundle import bundle
from wellposed_converters.fhir.differences import ADDS, LACKS, Difference, differences
from wellposed_converters.fhir.entries import OURS, Entries
from wellposed_converters.fhir.faults import Told
from wellposed_converters.fhir.names import Object, extension
from wellposed_converters.fhir.original import attached

NARRATIVE, OTHER_RESOURCE = "narrative-not-read", "resource-not-read"
_BOOKKEEPING = "bundle-bookkeeping"
_KEPT_BY_SERVERS = frozenset({"versionId", "lastUpdated", "source"})
_ENTRY = re.compile("/entry/[0-9]+")
_IN_ENTRY = re.compile("/entry/(?P<number>[0-9]+)/resource(?P<rest>.*)", re.DOTALL)
_OF_RESOURCE = re.compile("(/entry/[0-9]+/resource)?/(id|meta|text)")
_PERSONAL = ("patient", "prescriber", "record")


def compared(document: Envelope, found: Object, entries: Entries) -> tuple[tuple[Finding, ...], tuple[Loss, ...]]:
    """Every disagreement as a finding, and what of the bundle is none of the document's as a loss."""
    expected = _around(bundle(document.model_dump(exclude_unset=True, mode="json")).resource, entries)
    told, losses = Told(), list[Loss]()
    for one in differences(expected, found):
        lost = _lost(one)
        if lost:
            losses.append(Loss(one.pointer, lost))
        else:
            told.tell(_BOOKKEEPING if _of_server(one) else one.rule, one.pointer, **_facts(one, found))
    return tuple(told.findings), tuple(losses)


def _around(expected: Object, entries: Entries) -> Object:
    """The bundle to expect around a document: its bytes as they are attached, or without them where they are not."""
    *others, original = expected["entry"]
    there = entries.by_url.get(original["fullUrl"])
    if not entries.originals():
        return {**expected, "entry": others}
    if there is not None and attached(there.value) is not None:
        original["resource"]["content"][0]["attachment"]["data"] = there.value["content"][0]["attachment"]["data"]
    return expected


def _lost(one: Difference) -> str:
    """What an addition is, where it is for people or nothing of the document's; "" where it is not."""
    if one.rule != ADDS or not isinstance(one.found, dict):
        return ""
    if _ENTRY.fullmatch(one.pointer):
        return OTHER_RESOURCE if _resource_type(one.found) not in OURS else ""
    narrative = _OF_RESOURCE.fullmatch(one.pointer) and one.pointer.endswith("/text")
    return NARRATIVE if narrative and one.found.get("status") in ("generated", "empty") else ""


def _of_server(one: Difference) -> bool:
    """Whether it is one of the elements that servers add to what they keep."""
    if one.rule != ADDS or not _OF_RESOURCE.fullmatch(one.pointer):
        return False
    if isinstance(one.found, dict):
        return one.pointer.endswith("/meta") and one.found.keys() <= _KEPT_BY_SERVERS
    return isinstance(one.found, str) and one.pointer.endswith("/id")


def _resource_type(entry: Object) -> str:
    resource = entry.get("resource")
    return str(resource.get("resourceType", "")) if isinstance(resource, dict) else ""


def _facts(one: Difference, found: Object) -> dict[str, Any]:
    """The element's name; a number found and what was expected, unless it may be about a person."""
    facts: dict[str, Any] = {"name": _element(one.pointer, found) + _which(one.expected)}
    if one.rule == LACKS or _personal(one.pointer, found):
        return facts
    if isinstance(one.found, int | float) and not isinstance(one.found, bool):
        facts["found"] = one.found
    if isinstance(one.expected, int | float) and not isinstance(one.expected, bool):
        facts["expected"] = one.expected
    return facts


def _element(pointer: str, found: Object) -> str:
    """The path of an element in its resource, as FHIR writes it: names alone, without places in lists."""
    in_entry = _IN_ENTRY.fullmatch(pointer)
    head = _resource_type(found["entry"][int(in_entry["number"])]) if in_entry else "Bundle"
    rest = in_entry["rest"] if in_entry else pointer
    return ".".join([head, *(step for step in rest.split("/")[1:] if not step.isdecimal())])


def _which(expected: Any) -> str:
    """Of an entry or extension that is not there, the type or url: its place is only that of the list."""
    if not isinstance(expected, dict):
        return ""
    kind = _resource_type(expected)
    return f" ({kind})" if kind else f"('{expected['url']}')" if "url" in expected else ""


def _personal(pointer: str, found: Object) -> bool:
    """Whether a place is inside an extension about a person or a record."""
    urls = [extension(name) for name in _PERSONAL]
    return any(value.get("url") in urls for value in _above(pointer, found))


def _above(pointer: str, value: Any) -> Iterator[Object]:
    for step in pointer.split("/")[1:]:
        if isinstance(value, list):
            value = value[int(step)]
        elif isinstance(value, dict) and step in value:
            value = value[step]
        else:
            return
        if isinstance(value, dict):
            yield value
