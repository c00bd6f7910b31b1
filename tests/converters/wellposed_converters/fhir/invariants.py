"""What FHIR R4 asks of a bundle that fhir.resources does not look at: required bindings, invariants, lexical forms.

The codes and expressions are those of hl7.org/fhir/R4: the pages of the resources, valueset-request-status,
valueset-request-intent, valueset-observation-status, valueset-document-reference-status, valueset-task-status,
valueset-issue-severity, valueset-issue-type, datatypes.html (regular expressions) and extensibility.html (ext-1).
"""

import json
import re
from base64 import b64decode

REQUEST = {"draft", "active", "on-hold", "revoked", "completed", "entered-in-error", "unknown"}
INTENT = {
    *("proposal", "plan", "directive", "order", "original-order"),
    *("reflex-order", "filler-order", "instance-order", "option"),
}
TASK = {
    *("draft", "requested", "received", "accepted", "rejected", "ready", "cancelled"),
    *("in-progress", "on-hold", "failed", "completed", "entered-in-error"),
}
BINDINGS = {
    ("Bundle", "type"): {
        *("document", "message", "transaction", "transaction-response", "batch", "batch-response"),
        *("history", "searchset", "collection"),
    },
    ("ServiceRequest", "status"): REQUEST,
    ("ServiceRequest", "intent"): INTENT,
    ("DeviceRequest", "status"): REQUEST,
    ("DeviceRequest", "intent"): INTENT,
    ("Observation", "status"): {
        *("registered", "preliminary", "final", "amended", "corrected", "cancelled", "entered-in-error", "unknown"),
    },
    ("DocumentReference", "status"): {"current", "superseded", "entered-in-error"},
    ("Task", "status"): TASK,
    ("Task", "intent"): {"unknown", *(INTENT - {"directive"})},
}
REQUIRED = {
    "ServiceRequest": ("status", "intent", "subject"),
    "DeviceRequest": ("intent", "codeCodeableConcept", "subject"),
    "Observation": ("status", "code"),
    "Condition": ("subject",),
    "BodyStructure": ("patient",),
    "DocumentReference": ("status", "content"),
    "Task": ("status", "intent"),
}
SEVERITIES = {"fatal", "error", "warning", "information"}
ISSUES = {
    *("invalid", "structure", "required", "value", "invariant", "security", "login", "unknown", "expired"),
    *("forbidden", "suppressed", "processing", "not-supported", "duplicate", "multiple-matches", "not-found"),
    *("deleted", "too-long", "code-invalid", "extension", "too-costly", "business-rule", "conflict", "transient"),
    *("lock-error", "no-store", "exception", "timeout", "incomplete", "throttled", "informational"),
}

_YEAR = "([0-9]([0-9]([0-9][1-9]|[1-9]0)|[1-9]00)|[1-9]000)"
_DATE = rf"{_YEAR}(-(0[1-9]|1[0-2])(-(0[1-9]|[1-2][0-9]|3[0-1]))?)?"
_TIME = r"([01][0-9]|2[0-3]):[0-5][0-9]:([0-5][0-9]|60)(\.[0-9]+)?(Z|(\+|-)((0[0-9]|1[0-3]):[0-5][0-9]|14:00))"
_INSTANT = rf"{_YEAR}-(0[1-9]|1[0-2])-(0[1-9]|[1-2][0-9]|3[0-1])T{_TIME}"
FORMS = {
    "valueDate": _DATE,
    "effectiveDateTime": rf"{_DATE}(T{_TIME})?",
    "authoredOn": rf"{_DATE}(T{_TIME})?",
    "end": _DATE,
    "timestamp": _INSTANT,
    "date": _INSTANT,
    "valueCode": r"[^\s]+(\s[^\s]+)*",
    "code": r"[^\s]+(\s[^\s]+)*",
    "valueString": r"[ \r\n\t\S]+",
    "url": r"\S+",
    "system": r"\S+",
    "reference": r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}",
    "fullUrl": r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}",
}


def broken(bundle):
    """Everything of a bundle that R4 does not allow, as words."""
    urls = [one["fullUrl"] for one in bundle["entry"]]
    faults = ["bdl-7: fullUrl twice"] if len(set(urls)) < len(urls) else []
    faults += _bound(bundle) + [fault for one in bundle["entry"] for fault in _resource(one["resource"])]
    return faults + [fault for at, value in _walk(bundle, "") for fault in _element(at, value, set(urls))]


def _bound(resource):
    kind = resource["resourceType"]
    bound = [(name, codes) for (of, name), codes in BINDINGS.items() if of == kind and name in resource]
    return [f"{kind}.{name}: {resource[name]}" for name, codes in bound if resource[name] not in codes]


def _resource(resource):
    kind = resource["resourceType"]
    faults = [f"{kind} without {name}" for name in REQUIRED[kind] if name not in resource]
    if kind == "Observation" and "dataAbsentReason" in resource and "valueQuantity" in resource:
        faults.append("obs-6")
    return faults + _bound(resource)


def _walk(value, at):
    yield at, value
    pairs = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in pairs:
        yield from _walk(inner, f"{at}/{step}")


def _element(at, value, urls):
    """No null and nothing empty (json.html); ext-1, qty-3, ref-1, lexical forms, Base64."""
    if value is None or value in ("", [], {}):
        yield f"{at} is empty"
    if isinstance(value, dict) and at.rsplit("/", 2)[-2:-1] == ["extension"]:
        values = [name for name in value if name.startswith("value")]
        if len(values) + ("extension" in value) != 1:
            yield f"ext-1: {at}"
    if isinstance(value, dict) and "system" not in value and "unit" in value:
        yield f"qty-3: {at}"
    name = at.rsplit("/", 1)[-1]
    if isinstance(value, str):
        yield from _string(at, name, value, urls)


def _string(at, name, value, urls):
    if name in FORMS and not re.fullmatch(FORMS[name], value):
        yield f"{at} is {json.dumps(value)}"
    if name == "reference" and value not in urls:
        yield f"{at} leads nowhere"
    if name == "data" and not b64decode(value, validate=True):
        yield f"{at} is empty"
    if re.search("[\x00-\x08\x0b\x0c\x0e-\x1f]", value) or not value.strip():
        yield f"{at} holds what no string may"
