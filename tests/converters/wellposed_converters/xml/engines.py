"""The published XML Schema in two engines: libxml2 (by lxml), and xmlschema."""

import copy
from functools import cache
from pathlib import Path

import xmlschema
from lxml import etree

from wellposed_converters.xml.xsd import FILE

ROOT = Path(__file__).parents[4]


@cache
def libxml2():
    return etree.XMLSchema(etree.parse(str(ROOT / FILE)))


@cache
def second():
    """The other one; as for any document, nothing is fetched, and no schema location in a document is followed."""
    return xmlschema.XMLSchema10(str(ROOT / FILE))


def verdicts(root):
    """What each of the two says of a tree.

    XML Schema passes over comments and processing instructions; xmlschema would read a text up to the first of them,
    and is given the tree without.
    """
    bare = copy.deepcopy(root)
    etree.strip_tags(bare, etree.Comment, etree.PI)
    return libxml2().validate(root.getroottree()), second().is_valid(bare, use_location_hints=False)
