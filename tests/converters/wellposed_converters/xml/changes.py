"""Changes to a tree of the XML form, made blindly; most make it invalid. The same ones for the same seed."""

import copy

from wellposed_converters.xml.names import JSON, NAMESPACE

XSI = "http://www.w3.org/2001/XMLSchema-instance"
TEXTS = (
    "",
    " ",
    "x",
    "11",
    "11-12",
    "0",
    "-0.0",
    "1.50",
    "1.505",
    "200.01",
    "1e1",
    "+1",
    "true",
    "mm",
    "must",
    "1.0\n",
)
BLANKS = (" {}", "{} ", "\n{}\n", "\t{}")
NAMES = ("item", "member", "id", "unit", "teeth", "arch", "align", "use", "words", "because", *JSON)


class Changer:
    """Changes copies of trees; names and texts come out of the tree itself as often as not."""

    def __init__(self, random):
        self.random = random

    def changed(self, root):
        """The name of the change, and the changed copy."""
        tree, name = copy.deepcopy(root), self.random.choice(CHANGES)
        getattr(self, name)(tree)
        return name, tree

    def some(self, tree, leaf=None):
        """An element below the outermost, with children or without where that is asked for."""
        found = [one for one in tree.iterdescendants() if leaf is None or (len(one) == 0) == leaf]
        return self.random.choice(found)

    def nothing(self, tree):
        """The tree as it was."""

    def left_out(self, tree):
        one = self.some(tree)
        one.getparent().remove(one)

    def emptied(self, tree):
        one = self.some(tree)
        key = one.get("key")
        one.clear()
        if key is not None:
            one.set("key", key)

    def repeated(self, tree):
        one = self.some(tree)
        one.addnext(copy.deepcopy(one))

    def moved(self, tree):
        one = self.some(tree)
        others = list(one.getparent())
        one.getparent().insert(self.random.randrange(len(others)), one)

    def put_elsewhere(self, tree):
        self.some(tree).append(copy.deepcopy(self.some(tree)))

    def renamed(self, tree):
        taken = self.some(tree).tag if self.random.random() < 0.5 else f"{{{NAMESPACE}}}{self.random.choice(NAMES)}"
        self.some(tree).tag = taken

    def of_another_namespace(self, tree):
        one = self.some(tree)
        one.tag = one.tag.replace(NAMESPACE, self.random.choice(("urn:x", "urn:wellposed:2")))

    def other_text(self, tree):
        pool = (*TEXTS, self.some(tree, leaf=True).text)
        self.some(tree, leaf=True).text = self.random.choice(pool)

    def blanks(self, tree):
        one = self.some(tree, leaf=True)
        one.text = self.random.choice(BLANKS).format(one.text or "")

    def text_beside(self, tree):
        self.some(tree, leaf=False).text = "x"

    def attribute(self, tree):
        name = self.random.choice(("key", "id", f"{{{XSI}}}nil", f"{{{XSI}}}noNamespaceSchemaLocation"))
        self.some(tree).set(name, "false")

    def without_key(self, tree):
        for one in tree.iter():
            if "key" in one.attrib and self.random.random() < 0.3:
                del one.attrib["key"]

    def other_key(self, tree):
        keyed = [one for one in tree.iter() if "key" in one.attrib]
        if keyed:
            self.random.choice(keyed).set("key", self.random.choice(("11", "21", "x", "", "a.b", " 11")))


CHANGES = [name for name in vars(Changer) if not name.startswith("_") and name not in ("changed", "some")]
