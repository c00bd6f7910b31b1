"""Our extensions held to our own published definitions, by a reader of StructureDefinition that knows nothing else."""

import json
from pathlib import Path

FILE = Path(__file__).parents[4] / "spec" / "fhir" / "definitions.json"
PUBLISHED = json.loads(FILE.read_text("utf-8"))
BY_URL = {one["resource"]["url"]: one["resource"] for one in PUBLISHED["entry"]}


def codes(value_set):
    """Every code of a value set of ours."""
    (included,) = BY_URL[value_set]["compose"]["include"]
    return {one["code"] for one in BY_URL[included["system"]]["concept"]}


def faults(bundle):
    """What in a bundle is not as the definitions say."""
    for entry in bundle["entry"]:
        for element, extension in _extensions(entry["resource"], entry["resource"]["resourceType"]):
            definition = BY_URL.get(extension["url"])
            if definition is None or definition["resourceType"] != "StructureDefinition":
                yield f"{extension['url']} is not defined"
            elif element not in [one["expression"] for one in definition["context"]]:
                yield f"{extension['url']} stands on {element}"
            else:
                elements = {one["id"]: one for one in definition["differential"]["element"]}
                yield from _held(extension, "Extension", elements)
        yield from _codings(entry["resource"])


def _extensions(value, element):
    """The outermost extensions, each with the element it stands on."""
    for name, inner in value.items() if isinstance(value, dict) else ():
        if name == "extension":
            yield from ((element, one) for one in inner)
        else:
            below = "Annotation" if name == "note" else f"{element}.{name}"
            for item in inner if isinstance(inner, list) else [inner]:
                yield from _extensions(item, below)


def _held(extension, at, elements):
    if elements[f"{at}.url"]["fixedUri"] != extension["url"]:
        yield f"{at}.url is {extension['url']}"
    yield from _value(extension, elements[f"{at}.value[x]"])
    if elements.get(f"{at}.extension", {}).get("max") == "0":
        yield from [f"{at} is nested"] if "extension" in extension else []
        return
    slices = {name for name in elements if name.startswith(f"{at}.extension:") and "." not in name[len(at) + 1 :]}
    nested = extension.get("extension", [])
    for one in nested:
        name = f"{at}.extension:{one['url']}"
        yield from _held(one, name, elements) if name in slices else [f"{name} is not defined"]
    for name in slices:
        count = sum(one["url"] == elements[name]["sliceName"] for one in nested)
        most = elements[name]["max"]
        if count < elements[name]["min"] or (most != "*" and count > int(most)):
            yield f"{name} is there {count} times"


def _value(extension, element):
    found = [name for name in extension if name.startswith("value")]
    if element.get("max") == "0":
        yield from [f"{element['id']} has a value"] if found else []
        return
    names = {f"value{one['code'][0].upper()}{one['code'][1:]}" for one in element["type"]}
    if len(found) != 1 or found[0] not in names:
        yield f"{element['id']} has {found}"
    elif "binding" in element and extension[found[0]] not in codes(element["binding"]["valueSet"]):
        yield f"{element['id']} is {extension[found[0]]}"


def _codings(value):
    """Every Coding under a system of ours is of its list."""
    if isinstance(value, dict):
        system = value.get("system", "")
        if "code" in value and system.startswith("urn:wellposed:"):
            known = {one["code"]: one["display"] for one in BY_URL[system]["concept"]}
            if value["code"] not in known or value.get("display", known[value["code"]]) != known[value["code"]]:
                yield f"{system} has no {value['code']}"
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from _codings(inner)
