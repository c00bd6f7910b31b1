"""The XML Schema (XSD 1.0) of all documents, made from the plans, which are of the models.

What it cannot say is listed in the specification: the model is the judge.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any, Final

from lxml import etree

from wellposed.reading.limits import LARGEST_WHOLE, MOST_DECIMALS
from wellposed_converters.xml import names
from wellposed_converters.xml.particles import Slot, particle
from wellposed_converters.xml.plan import Form, Plan, plans

FILE: Final = "spec/schema/1/wellposed.xsd"
_XS: Final = "http://www.w3.org/2001/XMLSchema"
_NOTE: Final = " Generated from the models by: python -m wellposed_converters.xml.generate. Do not edit. "
_WHOLE: Final = "-?(0|[1-9][0-9]*)"
_DECIMALS: Final = f"[.][0-9]{{1,{MOST_DECIMALS}}}"
_PATTERNS: Final = {"number": f"{_WHOLE}({_DECIMALS})?", "integer": f"{_WHOLE}([.]0{{1,{MOST_DECIMALS}}})?"}
_BOUNDS: Final = {
    "minimum": "minInclusive",
    "maximum": "maxInclusive",
    "exclusiveMinimum": "minExclusive",
    "exclusiveMaximum": "maxExclusive",
}
_ANY_NUMBER: Final = {"type": "number", "minimum": -LARGEST_WHOLE, "maximum": LARGEST_WHOLE}


def text() -> str:
    """The schema as it is published, byte for byte."""
    schema = etree.Element(_xs("schema"), nsmap={"xs": _XS, None: names.NAMESPACE})
    schema.set("targetNamespace", names.NAMESPACE)
    schema.set("elementFormDefault", "qualified")
    types = _Types()
    for name, plan in plans().items():
        etree.SubElement(schema, _xs("element"), name=name, type=types.of(plan, name.capitalize()))
    schema.extend(made for _, made in sorted(types.made.items()))
    schema.extend(_json_types())
    etree.indent(schema)
    return f"<!--{_NOTE}-->\n{etree.tostring(schema, encoding='unicode')}\n"


def _xs(name: str) -> str:
    return f"{{{_XS}}}{name}"


def _sub(parent: Any, tag: str, /, **attributes: str) -> Any:
    return etree.SubElement(parent, _xs(tag), attributes)


def _camel(name: str) -> str:
    return "".join(part.capitalize() for part in name.replace("-", "_").split("_"))


def _simple(node: Mapping[str, Any], name: str) -> Any:
    """A simple type; text is taken as it stands, numbers as the format writes them."""
    made = etree.Element(_xs("simpleType"), name=name)
    _words(made, node.get("description", ""))
    kind = node["type"]
    base = {"string": "xs:string", "boolean": "xs:boolean"}.get(kind, "xs:decimal")
    inner = _sub(made, "restriction", base=base)
    for value in [node["const"]] if "const" in node else node.get("enum", ()):
        _sub(inner, "enumeration", value=value)
    pattern = node["pattern"][1:-1] if "pattern" in node else _PATTERNS.get(kind)
    if kind == "boolean" or pattern:
        _sub(inner, "pattern", value=pattern or "true|false")
    for word in ("minLength", "maxLength", *_BOUNDS):
        if word in node:
            _sub(inner, _BOUNDS.get(word, word), value=_plain(node[word]))
    return made


def _plain(bound: float) -> str:
    return str(int(bound)) if float(bound).is_integer() else repr(bound)


def _words(made: Any, words: str) -> None:
    if words:
        _sub(_sub(made, "annotation"), "documentation").text = words


class _Types:
    """Types by name, each place's type under a name of its own; equal places share one."""

    def __init__(self) -> None:
        self.made: dict[str, Any] = {}
        self._named: dict[str, str] = {}
        self._maps = 0

    def of(self, plan: Plan, *called: str) -> str:
        """The name of the type of a place, which is made if it is new."""
        if plan.kind == "content":
            return "Json"
        key = json.dumps(plan.node, sort_keys=True)
        if key not in self._named:
            name = self._named[key] = self._free(plan.name, *called)
            self.made[name] = None  # the name is taken while the type is made
            self.made[name] = getattr(self, f"_{plan.kind}", self._leaf)(plan, name)
        return self._named[key]

    def _free(self, *called: str) -> str:
        return next(name for name in called if name and name not in self.made)

    def _leaf(self, plan: Plan, name: str) -> Any:
        return _simple(plan.node, name)

    def _complex(self, name: str, words: str = "") -> Any:
        made = etree.Element(_xs("complexType"), name=name)
        _words(made, words)
        return made

    def _list(self, plan: Plan, name: str) -> Any:
        assert plan.inner is not None
        made = self._complex(name)
        least, most = str(plan.node.get("minItems", 0)), str(plan.node["maxItems"])
        item = self.element(_sub(made, "sequence"), names.ITEM, plan.inner, f"{name}Item")
        item.attrib.update({"minOccurs": least, "maxOccurs": most})
        return made

    def _map(self, plan: Plan, name: str) -> Any:
        assert plan.inner is not None
        made = self._complex(name)
        least, most = str(plan.node.get("minProperties", 0)), str(plan.node["maxProperties"])
        member = _sub(_sub(made, "sequence"), "element", name=names.MEMBER, minOccurs=least, maxOccurs=most)
        content = "complexContent" if plan.inner.kind in ("object", "map", "list") else "simpleContent"
        inner = _sub(_sub(member, "complexType"), content)
        extended = _sub(inner, "extension", base=self.of(plan.inner, f"{name}Member"))
        key = self.of(Plan("text", plan.keys), f"{name}Key")
        _sub(extended, "attribute", name=names.KEY, type=key, use="required")
        return made

    def _object(self, plan: Plan, name: str) -> Any:
        (words,) = {form.words for form in plan.forms} if len(plan.forms) == 1 else ("",)
        made = self._complex(name, words)
        forms = [self._slots(form, plan, name) for form in plan.forms]
        made.append(particle(forms, _xs))
        return made

    def _slots(self, form: Form, plan: Plan, owner: str) -> list[Slot]:
        return [
            Slot(self._slot(member, inner, plan, owner), member in form.required)
            for member, inner in form.members.items()
        ]

    def _slot(self, member: str, inner: Plan, plan: Plan, owner: str) -> Any:
        tags = {form.told: None for form in plan.forms if form.values}
        if member in tags:
            values = [value for form in plan.forms for value in form.values]
            inner = Plan("text", {"type": "string", "enum": values})
        return self.element(etree.Element("slot"), member, inner, _camel(member), f"{owner}{_camel(member)}")

    def element(self, parent: Any, name: str, plan: Plan, *called: str) -> Any:

        made = _sub(parent, "element", name=name, type=self.of(plan, *called))
        if plan.kind == "map":
            self._maps += 1
            _unique(made, str(self._maps))
        return made


def _unique(made: Any, called: str) -> None:
    one = _sub(made, "unique", name=f"one-of-each-{called}")
    _sub(one, "selector", xpath="*")
    _sub(one, "field", xpath=f"@{names.KEY}")


def _json_types() -> list[Any]:
    """Any JSON: one element inside another; within a map each with its key."""
    value = etree.Element(_xs("complexType"), name="Json")
    _words(value, "any JSON, as one element that names its kind")
    _choice(value, "value")
    array = etree.Element(_xs("complexType"), name="JsonArray")
    _choice(array, "entry", minOccurs="0", maxOccurs="unbounded")
    held = etree.Element(_xs("complexType"), name="JsonMap")
    choice = _sub(held, "choice", minOccurs="0", maxOccurs="unbounded")
    for kind in names.JSON:
        _keyed(choice, kind)
    boolean = _simple({"type": "boolean"}, "JsonBoolean")
    null = etree.Element(_xs("complexType"), name="JsonNull")
    string = _simple({"type": "string"}, "JsonString")
    return [value, array, boolean, held, null, _simple(_ANY_NUMBER, "JsonNumber"), string]


def _choice(parent: Any, where: str, **occurs: str) -> None:
    choice = _sub(parent, "choice", **occurs)
    for kind in names.JSON:
        made = _sub(choice, "element", name=kind, type=f"Json{kind.capitalize()}")
        if kind == names.MAP:
            _unique(made, f"of-a-{where}")


def _keyed(choice: Any, kind: str) -> None:
    made = _sub(choice, "element", name=kind)
    held = "simpleContent" if kind in (names.STRING, names.NUMBER, names.BOOLEAN) else "complexContent"
    inner = _sub(_sub(_sub(made, "complexType"), held), "extension", base=f"Json{kind.capitalize()}")
    _sub(inner, "attribute", name=names.KEY, type="xs:string", use="required")
    if kind == names.MAP:
        _unique(made, "of-a-member")
