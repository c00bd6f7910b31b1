"""Errors of strict models become findings with the pointers of the document."""

from enum import Enum
from typing import Annotated, Any, Literal

import pytest
from pydantic import (
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    Strict,
    Tag,
    ValidationError,
    field_validator,
    model_validator,
)
from pydantic_core import PydanticCustomError

from wellposed.findings import Finding, Severity
from wellposed.reading import structure_findings

PRIVATE = ("/owner",)


class Part(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False, hide_input_in_errors=True)


class Colour(Enum):
    RED = "red"
    BLUE = "blue"


class Circle(Part):
    kind: Literal["circle"]
    radius: Annotated[float, Field(gt=0, le=100)]


class Square(Part):
    kind: Literal["square"]
    side: Annotated[float, Field(ge=0.5, lt=100)]


class Slide(Part):
    slide: Literal["left", "right"]
    by: Annotated[int, Field(multiple_of=2)]


class Turn(Part):
    turn: Annotated[tuple[Literal["a", "b"], ...], Strict(False), Field(min_length=2, max_length=3)]
    by: float

    @model_validator(mode="after")
    def _not_forever(self):
        if self.by == 360:
            raise ValueError({"rule": "turns-forever", "expected": "less than a turn", "angle": 360})
        return self


def moved(value: Any) -> str | None:
    return next((name for name in ("slide", "turn") if name in value), None) if isinstance(value, dict) else "turn"


Shape = Annotated[Circle | Square, Field(discriminator="kind")]
Move = Annotated[Annotated[Slide, Tag("slide")] | Annotated[Turn, Tag("turn")], Discriminator(moved)]
Name = Annotated[str, Field(pattern="^[a-z]+$", min_length=2, max_length=4, description="small letters only")]


class Owner(Part):
    name: Name = "nn"
    age: Annotated[int, Field(le=120)] = 1
    group: Literal["first", "second"] = "first"
    height: float = 1.0

    @field_validator("height")
    @classmethod
    def _is_human(cls, value):
        if value > 3:
            raise ValueError({"rule": "too-tall", "expected": "at most 3 metres", "height": value})
        return value


class Dotted(Part):
    line: Literal["dots", "dashes"]


class Drawn(Part):
    line: Literal["dashes", "strokes"]


class Sheet(Part):
    title: Name = "ab"
    code: Annotated[str, Field(pattern="^[0-9]$")] = "1"
    colour: Annotated[Colour, Strict(False)] = Colour.RED
    on: bool = True
    nothing: None = None
    either: int | list[str] = 1
    shapes: list[Shape] = []
    moves: list[Move] = []
    sizes: dict[Literal["small", "large"], float] = {}
    owner: Owner = Owner()
    line: Dotted | Drawn | None = None
    tags: dict[Name, int] = {}
    nickname: Name | None = Field(None, description="what friends say")
    odd: int = 1
    aliased: Annotated[int, Field(alias="also/known")] = 1

    @field_validator("odd")
    @classmethod
    def _is_odd(cls, value):
        if value == 0:
            raise PydanticCustomError("my_own", "Jane Doe says {value}", {"value": value})
        assert value % 2, f"{value} is even"
        if value < 0:
            raise ValueError("Jane Doe is negative")
        return value


class Needed(Part):
    first: int
    second: int
    inner: list[Shape]


def errors(model, document):
    with pytest.raises(ValidationError) as caught:
        model.model_validate(document)
    return caught.value


def found(document, model=Sheet, root=Sheet):
    return structure_findings(errors(model, document), document, PRIVATE, root=root)


def stop(rule, pointer, **facts):
    return Finding(rule, Severity.STOP, pointer, facts)


def kind(pointer, expected, found):
    return stop("wrong-kind", pointer, expected=expected, found=found)


def one_of(pointer, expected, nearest=None, **facts):
    return stop("not-one-of", pointer, expected=expected, nearest=nearest, **facts)


def unknown(pointer, expected, nearest, name):
    return stop("unknown-member", pointer, expected=expected, nearest=nearest, name=name)


def limit(pointer, expected, **facts):
    return stop("out-of-range", pointer, expected=expected, **facts)


def missing(pointer, name):
    return stop("missing-member", pointer, expected=f"a member named {name}", name=name)


CIRCLE = {"kind": "circle", "radius": 1.0}
TURN = {"turn": ["a", "b"], "by": 1.0}

ONE = {
    "a string": ({"title": 1}, kind("/title", "a string", "a whole number")),
    "a whole number": ({"odd": 1.5}, kind("/odd", "a whole number", "a number with decimals")),
    "a number": ({"owner": {"height": "2"}}, kind("/owner/height", "a number", "a string")),
    "true or false": ({"on": "yes"}, kind("/on", "true or false", "a string")),
    "null": ({"nothing": False}, kind("/nothing", "null", "true or false")),
    "a list": ({"shapes": {}}, kind("/shapes", "a list", "an object")),
    "a mapping": ({"sizes": []}, kind("/sizes", "an object", "a list")),
    "an object": ({"owner": None}, kind("/owner", "an object", "null")),
    "an object with a tag": ({"shapes": [CIRCLE, 1]}, kind("/shapes/1", "an object", "a whole number")),
    "an object whose form a function tells": (
        {"moves": [2]},
        kind("/moves/0", "an object", "a whole number"),
    ),
    "one of two kinds": ({"either": "x"}, kind("/either", "a whole number or a list", "a string")),
    "a member not known, nearly spelt": (
        {"shapes": [{**CIRCLE, "radios": 2}]},
        unknown("/shapes/0/radios", ["kind", "radius"], "radius", "radios"),
    ),
    "a member of another form of the union": (
        {"shapes": [{**CIRCLE, "side": 2}]},
        unknown("/shapes/0/side", ["kind", "radius"], None, "side"),
    ),
    "a member not known where a form is named like a member": (
        {"moves": [{**TURN, "trun": 2}]},
        unknown("/moves/0/trun", ["by", "turn"], "turn", "trun"),
    ),
    "a private member not known": (
        {"owner": {"nam": "Jane Doe"}},
        unknown("/owner/nam", ["age", "group", "height", "name"], "name", "nam"),
    ),
    "a name that needs escapes": (
        {"owner": {"~/": 1}},
        unknown("/owner/~0~1", ["age", "group", "height", "name"], None, "~/"),
    ),
    "a missing member": ({"shapes": [{"kind": "square"}]}, missing("/shapes/0/side", "side")),
    "a missing member where a form is named like a member": (
        {"moves": [CIRCLE, {"turn": ["a", "b"]}][1:]},
        missing("/moves/0/by", "by"),
    ),
    "a missing tag": ({"shapes": [{"side": 1.0}]}, missing("/shapes/0/kind", "kind")),
    "a tag not known": (
        {"shapes": [{"kind": "squares"}]},
        one_of("/shapes/0/kind", ["circle", "square"], "square", found="squares"),
    ),
    "a tag of another kind": (
        {"shapes": [{"kind": ["square"]}]},
        kind("/shapes/0/kind", "a string", "a list"),
    ),
    "no form told by a function": (
        {"moves": [{"by": 1.0}]},
        stop("wrong-form", "/moves/0", expected="one of the known forms", type="union_tag_not_found"),
    ),
    "a word not allowed": (
        {"moves": [{**TURN, "turn": ["a", "c"]}]},
        one_of("/moves/0/turn/1", ["a", "b"], found="c"),
    ),
    "a word of an enumeration": ({"colour": "blu"}, one_of("/colour", ["red", "blue"], "blue", found="blu")),
    "a long text for a word": ({"colour": "x" * 65}, one_of("/colour", ["red", "blue"])),
    "a private word": ({"owner": {"group": "secund"}}, one_of("/owner/group", ["first", "second"])),
    "a name of a mapping": (
        {"sizes": {"smal": 1.0}},
        one_of("/sizes/smal", ["small", "large"], "small", found="smal", about="name"),
    ),
    "more than": (
        {"shapes": [{**CIRCLE, "radius": 0.0}]},
        limit("/shapes/0/radius", "more than 0", found=0.0),
    ),
    "at most": (
        {"shapes": [{**CIRCLE, "radius": 101.0}]},
        limit("/shapes/0/radius", "at most 100", found=101.0),
    ),
    "at least": (
        {"shapes": [{"kind": "square", "side": 0.25}]},
        limit("/shapes/0/side", "at least 0.5", found=0.25),
    ),
    "less than": (
        {"shapes": [{"kind": "square", "side": 100.0}]},
        limit("/shapes/0/side", "less than 100", found=100.0),
    ),
    "a multiple": ({"moves": [{"slide": "left", "by": 3}]}, limit("/moves/0/by", "a multiple of 2", found=3)),
    "a private number": ({"owner": {"age": 121}}, limit("/owner/age", "at most 120")),
    "a number without end": ({"sizes": {"small": float("inf")}}, limit("/sizes/small", "a finite number")),
    "a form with a description": (
        {"title": "AB"},
        stop("wrong-form", "/title", expected="small letters only", pattern="^[a-z]+$"),
    ),
    "a form without": ({"code": "x"}, stop("wrong-form", "/code", expected="^[0-9]$", pattern="^[0-9]$")),
    "too long": ({"title": "abcde"}, stop("too-long", "/title", expected="at most 4 characters")),
    "too short": ({"title": "a"}, stop("too-short", "/title", expected="at least 2 characters")),
    "too many": (
        {"moves": [{**TURN, "turn": ["a"] * 4}]},
        stop("too-many", "/moves/0/turn", expected="at most 3 entries"),
    ),
    "too few": (
        {"moves": [{**TURN, "turn": ["a"]}]},
        stop("too-few", "/moves/0/turn", expected="at least 2 entries"),
    ),
    "a rule of the model's own, at the object": (
        {"moves": [{**TURN, "by": 360.0}]},
        stop("turns-forever", "/moves/0", expected="less than a turn", angle=360),
    ),
    "an error in the model's own words, which may tell a value": (
        {"odd": -1},
        stop("wrong-form", "/odd", expected="another form", type="value_error"),
    ),
    "a rule of the model's own, in private": (
        {"owner": {"height": 77.5}},
        stop("too-tall", "/owner/height", expected="at most 3 metres"),
    ),
    "words of either form": (
        {"line": {"line": "wave"}},
        one_of("/line/line", ["dots", "dashes", "strokes"], found="wave"),
    ),
    "the form of a name": (
        {"tags": {"AB": 1}},
        stop("wrong-form", "/tags/AB", expected="small letters only", pattern="^[a-z]+$", about="name"),
    ),
    "the description of the form before that of the member": (
        {"nickname": "AB"},
        stop("wrong-form", "/nickname", expected="small letters only", pattern="^[a-z]+$"),
    ),
    "an assertion": ({"odd": 2}, stop("wrong-form", "/odd", expected="another form", type="assertion_error")),
    "an error of a type not known": (
        {"odd": 0},
        stop("wrong-form", "/odd", expected="another form", type="my_own"),
    ),
    "a member with another name outside": (
        {"also/known": "x"},
        kind("/also~1known", "a whole number", "a string"),
    ),
}


@pytest.mark.parametrize("document,finding", ONE.values(), ids=ONE)
def test_one_error_is_one_finding(document, finding):
    assert found(document) == (finding,)


def test_every_error_is_told_in_the_order_of_the_pointers():
    document = {
        "first": "1",
        "inner": [{"kind": "circle", "radius": -1.0, "x": 1}, {"kind": "ring"}],
        "secnd": 2,
    }
    assert found(document, Needed, Needed) == (
        kind("/first", "a whole number", "a string"),
        limit("/inner/0/radius", "more than 0", found=-1.0),
        unknown("/inner/0/x", ["kind", "radius"], None, "x"),
        one_of("/inner/1/kind", ["circle", "square"], found="ring"),
        unknown("/secnd", ["first", "inner", "second"], "second", "secnd"),
        missing("/second", "second"),
    )


def test_entries_refused_are_not_also_counted_as_lacking():
    assert found({"moves": [{**TURN, "turn": ["a", "c"]}]}) == (one_of("/moves/0/turn/1", ["a", "b"], found="c"),)


NO_ROOT = {
    "a plain place": ({"owner": {"age": "1"}}, kind("/owner/age", "a whole number", "a string")),
    "a tag is dropped": (
        {"shapes": [{**CIRCLE, "radius": "1"}]},
        kind("/shapes/0/radius", "a number", "a string"),
    ),
    "a form named like a member": (
        {"moves": [{**TURN, "by": "1"}]},
        kind("/moves/0/by", "a number", "a string"),
    ),
    "a missing member beside one named like the form": (
        {"moves": [{"turn": ["a", "b"]}]},
        missing("/moves/0/by", "by"),
    ),
    "inside a member named like the form": (
        {"moves": [{**TURN, "turn": ["a", "c"]}]},
        one_of("/moves/0/turn/1", ["a", "b"], found="c"),
    ),
    "a name of a mapping": (
        {"sizes": {"smal": 1.0}},
        one_of("/sizes/smal", ["small", "large"], "small", found="smal", about="name"),
    ),
    "without descriptions the pattern": (
        {"title": "AB"},
        stop("wrong-form", "/title", expected="^[a-z]+$", pattern="^[a-z]+$"),
    ),
    "without a model nothing is known": ({"titel": "ab"}, unknown("/titel", [], None, "titel")),
}


@pytest.mark.parametrize("document,finding", NO_ROOT.values(), ids=NO_ROOT)
def test_without_the_model_the_document_shows_the_place(document, finding):
    assert found(document, root=None) == (finding,)


def test_known_names_may_come_from_the_caller():
    document = {"owner": {"nam": 1}}
    asked = []
    told = structure_findings(errors(Sheet, document), document, (), lambda at: asked.append(at) or ("name", "b"))
    assert (told, asked) == ((unknown("/owner/nam", ["b", "name"], "name", "nam"),), ["/owner"])


SECRETS = {
    "a name for a number": {"age": "Jane Doe"},
    "a name for a word": {"group": "Jane Doe"},
    "a name of another form": {"name": "Jane Doe"},
    "a name too long": {"name": "janedoe", "height": "Jane Doe"},
    "a number out of range": {"age": 77_777},
    "the value of an unknown member": {"x": "Jane Doe", "y": 77_777},
}


@pytest.mark.parametrize("owner", SECRETS.values(), ids=SECRETS)
@pytest.mark.parametrize("root", [Sheet, None], ids=["with the model", "without"])
def test_no_private_value_is_told(owner, root):
    told = repr(found({"owner": owner}, root=root)).lower()
    assert [secret for secret in ("jane", "doe", "77777", "77_777") if secret in told] == []


def test_more_than_a_thousand_errors_are_cut_and_the_cut_is_told():
    told = found({f"x{number}": 1 for number in range(1500)})
    rules = [finding.rule for finding in told]
    assert (rules.count("unknown-member"), rules.count("too-many-faults")) == (1000, 1)
