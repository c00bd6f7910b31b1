"""Documents for the tests of the XML form: one written out, and many made at random."""

import json
import random
from functools import cache

from tests.spec import made
from tests.validator.wellposed.kinematics.generate import prescription
from tests.validator.wellposed.review.made import plausible
from tests.validator.wellposed.rules.sound import sound

from wellposed.model import DOCUMENTS
from wellposed.schema import document_schema, names

BASE = """\
<?xml version='1.0' encoding='UTF-8'?>
<prescription xmlns="urn:wellposed:1">
  <version>1.0</version>
  <id>HR-2031</id>
  <revision>1</revision>
  <issued>2026-03-04T09:30:00+01:00</issued>
  <extensions>
    <member key="org.example">
      <critical>false</critical>
      <content><map><array key="a"><number>1</number><null/><boolean>true</boolean><string>x</string></array><map key="b"/></map></content>
    </member>
  </extensions>
  <notation>ISO 3950</notation>
  <prescriber>
    <id>clinic-17/dr-2</id>
  </prescriber>
  <laboratory>
    <id>lab-4</id>
  </laboratory>
  <patient>
    <reference>P-7F3A</reference>
    <age_years>24</age_years>
    <growth>complete</growth>
  </patient>
  <teeth>
    <upper>
      <item>12</item>
      <item>11</item>
      <item>21</item>
      <item>22</item>
    </upper>
    <lower>
      <item>42</item>
      <item>41</item>
      <item>31</item>
      <item>32</item>
    </lower>
  </teeth>
  <findings>
    <item>
      <id>f1</id>
      <measure>overbite</measure>
      <value>2.5</value>
      <unit>mm</unit>
    </item>
    <item>
      <id>f2</id>
      <tooth_measure>tooth-width</tooth_measure>
      <values>
        <member key="11">8.5</member>
        <member key="21">8.6</member>
      </values>
      <unit>mm</unit>
    </item>
  </findings>
  <goals>
    <item>
      <id>g1</id>
      <strength>must</strength>
      <align>
        <item>41</item>
        <item>31</item>
      </align>
    </item>
  </goals>
  <allow>
    <item>
      <id>a1</id>
      <use>enamel-reduction</use>
      <contacts>
        <item>41-31</item>
      </contacts>
      <in_all>0.4</in_all>
      <unit>mm</unit>
    </item>
  </allow>
  <notes>
    <item>
      <text>Prefers mornings.</text>
    </item>
  </notes>
</prescription>
"""  # noqa: E501 - content of an extension stands on one line
"""Written by hand: what ``SAME`` is in XML."""

SAME = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "id": "HR-2031",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "extensions": {"org.example": {"critical": False, "content": {"a": [1, None, True, "x"], "b": {}}}},
    "notation": "ISO 3950",
    "prescriber": {"id": "clinic-17/dr-2"},
    "laboratory": {"id": "lab-4"},
    "patient": {"reference": "P-7F3A", "age_years": 24, "growth": "complete"},
    "teeth": {"upper": ["12", "11", "21", "22"], "lower": ["42", "41", "31", "32"]},
    "findings": [
        {"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"},
        {"id": "f2", "tooth_measure": "tooth-width", "values": {"11": 8.5, "21": 8.6}, "unit": "mm"},
    ],
    "goals": [{"id": "g1", "strength": "must", "align": ["41", "31"]}],
    "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "in_all": 0.4, "unit": "mm"}],
    "notes": [{"text": "Prefers mornings."}],
}


def model(document):
    """The document as its model."""
    return DOCUMENTS[document["format"]].model_validate(json.loads(json.dumps(document)))


def changed(**members):
    """The base with other members."""
    return model({**SAME, **members})


def extended(content):
    """The base with this content of an extension."""
    return changed(extensions={"org.example": {"critical": False, "content": content}})


def out_of_schema(kind, count, seed):
    """Documents of every shape, most of them without sense."""
    maker = made.Maker(document_schema(kind), random.Random(f"{kind} xml {seed}"))
    return [maker.document() for _ in range(count)]


def sensible(count, seed=0):
    """Documents of a clinic and a laboratory: orders plausible in parts, sound orders, setups."""
    seeds = range(seed, seed + count)
    return [*map(prescription, seeds), *map(sound, seeds), *(plausible(one)[1] for one in seeds)]


@cache
def generated(each, seed=0):
    """Documents of all kinds, as text for a fresh copy each time."""
    shapes = [one for kind in names() for one in out_of_schema(kind, each, seed)]
    return tuple(map(json.dumps, [*sensible(each, seed), *shapes]))
