"""The area ``xml``: rows of the tables of the tests, each with a sentence; expectations are those of the tables."""

from tests.converters.wellposed_converters.xml.documents import BASE, SAME
from tests.converters.wellposed_converters.xml.malformed import MALFORMED
from tests.converters.wellposed_converters.xml.test_hostile import HOSTILE
from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.laying import Area, Row, expecting, finding

# what is put into the base, and what is so
CHOSEN = {
    "<id>HR-2031</id>\n  <name>x</name>\n": "An element that names no member",
    "<growht>complete</growht>\n    <growth>": "A misspelt element beside the right one",
    "<version>2.0": "Another version",
    "<version> 1.0": "A blank before the version",
    "<notation>ISO  3950": "Two blanks in a name of a list",
    "<revision>0<": "A number out of bounds",
    "<revision>one<": "A number in words",
    "<revision> 1<": "A number behind a blank",
    "<revision>+1<": "A number with a plus",
    "<revision>01<": "A number with a nought before it",
    "<revision>1e0<": "A number with an exponent",
    "<revision>NaN<": "A number that is none",
    "<revision>9007199254740993<": "A number that is too large",
    "<revision>1</revision>\n  <revision>2</revision>": "A member twice",
    "<critical>0": "A truth value as a number",
    "<critical/>": "An empty truth value",
    "<prescriber>clinic-17/dr-2</prescriber>": "Text where an object belongs",
    "<prescriber/>": "An object without its members",
    "<age_years>24,5": "A decimal comma",
    "<age_years>24.125": "A number with three decimals",
    "<growth>complete ": "A blank behind a word of a list",
    "<item>19</item>": "A tooth that there is not",
    "<tooth>12</tooth>": "A list of other elements than items",
    "12 <item>13</item>": "Text beside the items of a list",
    "12 11 21 22": "A list written as blanks and words",
    "<item>\u0661\u0662</item>": "A tooth in digits of another script",
    "<member>8.5": "A member without its key",
    '<member key="21">8.5': "A key twice",
    '<member key="11" unit="mm">8.5': "An attribute that the form has not",
    "<value>\n2.5\n</value>": "A number with white space about it",
    "<unit>mm</unit>\n      <value>2.5</value>": "Members in another order",
    "<goals>none": "Text beside members",
    '<id xml:space="preserve">HR-2031': "An attribute of the XML namespace",
    "<prescription>": "No namespace",
    '<prescription xmlns="urn:wellposed:2">': "Another namespace",
    '<include xmlns="http://www.w3.org/2001/XInclude" href="file:///etc/passwd" parse="text"/>': (
        "An inclusion of another file"
    ),
    "order": "A root that names no document",
    "<value>2.<!-- -->5</value>": "A comment within a number",
    "<!-- allergic to nickel -->\n  <notes>": "A comment between members",
    '<?xml-stylesheet href="http://example.org/x.xsl"?><prescription ': "A processing instruction",
    "<number>1.125</number>": "Three decimals in the content of an extension",
    "<integer>1</integer>": "A kind of content that there is not",
    "<null>0</null>": "A null with something in it",
    '<map key="a"/>': "A name twice in the content of an extension",
    "</note>": "A tag closed by another",
    "Prefers & mornings.": "An ampersand by itself",
    "Prefers &nbsp; mornings.": "An entity that XML does not have",
    "Prefers &#0; mornings.": "The character 0 by its number",
    "</prescription><prescription/>": "Two roots",
    "version='1.1'": "Another version of XML",
}
HELD = (
    "an internal entity",
    "an external entity",
    "entities of entities",
    "an external subset",
    "nothing declared",
    "UTF-16 with its mark",
    "Latin-1",
    "a letter of Latin-1",
    "an overlong slash",
    "a byte order mark",
)
RIGHT = {
    "as it is written": BASE,
    "with a prefix": BASE.replace('xmlns="urn', 'xmlns:w="urn')
    .replace("<", "<w:")
    .replace("<w:/", "</w:")
    .replace("<w:?", "<?"),
    "with a character by its number": BASE.replace("Prefers", "&#80;refers"),
    "with character data": BASE.replace("Prefers mornings.", "<![CDATA[Prefers mornings.]]>"),
    "with an empty element in two tags": BASE.replace("<null/>", "<null></null>"),
    "without white space between elements": "".join(line.strip() for line in BASE.splitlines()),
    "with line breaks of another system": BASE.replace("\n", "\r\n"),
    "without a declaration": BASE.partition("\n")[2],
}


def told(line):
    """A finding from a row of the tables: rule, pointer, place."""
    rule, *pointer, place = line.split(" ")
    at, _, column = place.partition(":")
    return finding(rule, pointer=" ".join(pointer), line=int(at), column=int(column) if column else None)


def rows():
    for sentence, text in RIGHT.items():
        same = expecting("accept", digest=digest(SAME))
        yield Row(f"XML read as the same document: {sentence}", "xml.md#how-a-value-is-written", text.encode(), same)
    for old, new, *expected in MALFORMED:
        if new in CHOSEN:
            refused = expecting("reject", *map(told, expected))
            data = BASE.replace(old, new).encode()
            yield Row(f"Refused in XML: {CHOSEN[new].lower()}", "xml.md#what-is-refused", data, refused)
    for sentence, data, line in HOSTILE:
        if sentence in HELD:
            refused = expecting("reject", told(line.replace(" ", "  ", 1)))
            yield Row(f"Refused in XML: {sentence}", "xml.md#what-is-refused", data, refused)


AREA = Area("xml", "read", "application/xml", "input.xml", tuple(rows()))
