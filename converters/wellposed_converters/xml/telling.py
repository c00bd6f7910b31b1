"""The tree told again as the JSON text it stands for, in one line.

So a document in XML is read by the one way in: whatever is wrong with its content gets the rule, the pointer and the
facts it has in JSON. What cannot be told that way is a fault of its own.
"""

from __future__ import annotations

from typing import Any

from wellposed.reading.faults import name_fact
from wellposed_converters.xml import names
from wellposed_converters.xml.content import WORDS, content, is_number
from wellposed_converters.xml.order import misplaced
from wellposed_converters.xml.parsing import SPACE
from wellposed_converters.xml.plan import Plan, plans
from wellposed_converters.xml.teller import EndedError, Teller, Told, name_of, quoted, text_of


def told(root: Any) -> Told:
    """The whole document, told from its outermost element, which is in the namespace of the form."""
    teller = _DocumentTeller()
    try:
        teller.document(root)
    except EndedError:
        return teller.told(whole=False)
    return teller.told(whole=True)


class _DocumentTeller(Teller):
    """What the plans say of a document, kind by kind."""

    def document(self, root: Any) -> None:
        name = name_of(root)
        self.mark(root)
        self.attributes(root)
        self.put(f'{{"format":{quoted(f"wellposed/{name}")}')
        if plan := plans().get(name):
            self.members(root, plan, first=False)
            self.no_text(root)
        else:
            self.passed_over(root)
        self.put("}")
        for node in (*root.itersiblings(preceding=True), *root.itersiblings()):
            self.stray(node)

    def value(self, element: Any, plan: Plan | None, *allowed: str) -> None:
        """One value; of a member that is not known, nothing but that it is there."""
        if plan is None:
            self.put("null")
            self.passed_over(element)
            return
        self.attributes(element, *allowed)
        if plan.kind in ("text", "number", "truth"):
            self.leaf(element, plan)
        elif plan.kind != "content" and len(element) == 0 and text_of(element).strip(SPACE):
            self.put(quoted(text_of(element)))  # which the model refuses as it refuses any text there
        else:
            self.no_text(element)
            self.nested(element, plan)

    def leaf(self, element: Any, plan: Plan) -> None:
        text = text_of(element)
        if inside := list(self.children(element)):
            self.put("{}")
            self.no_text(element)
            for child in inside:
                self.passed_over(child)
        elif (plan.kind == "number" and is_number(text)) or (plan.kind == "truth" and text in WORDS):
            self.put(text)
        else:
            self.put(quoted(text))

    def nested(self, element: Any, plan: Plan) -> None:
        if plan.kind == "content":
            content(self, element)
        elif plan.kind == "list":
            self.entries(element, plan)
        else:
            self.put("{")
            (self.members if plan.kind == "object" else self.keyed)(element, plan)
            self.put("}")

    def members(self, element: Any, plan: Plan, first: bool = True) -> None:
        present: dict[str, Any] = {}
        for child in self.children(element):
            name = name_of(child)
            self.step(child, name, first)
            self.value(child, plan.member(name))
            self.path.pop()
            present.setdefault(name, child)
            first = False
        for name, where in misplaced(plan, present):
            self.fault("member-order", present[name], name, expected=where, **name_fact(name))

    def keyed(self, element: Any, plan: Plan) -> None:
        first = True
        for child in self.children(element):
            if self.is_called(child, names.MEMBER) and self.has_key(child):
                self.step(child, child.get(names.KEY), first)
                self.value(child, plan.inner, names.KEY)
                self.path.pop()
                first = False

    def entries(self, element: Any, plan: Plan) -> None:
        self.put("[")
        place = 0
        for child in self.children(element):
            if self.is_called(child, names.ITEM):
                self.step(child, place, not place)
                self.value(child, plan.inner)
                self.path.pop()
                place += 1
        self.put("]")
