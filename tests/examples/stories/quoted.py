"""What the page of a story quotes: the lines of one of its files from one that has these words to one that has those.

A quotation is a comment and a fence under it::

    <!-- quoted: review-1.txt | c11 Asked | Against it -->
    ```text
    ...
    ```
"""

import re

QUOTED = re.compile(r"<!-- quoted: (\S+) \| (.+?) \| (.+?) -->\n```text\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def quotations(page):
    """Each quotation of a page: the file, the words it begins and ends with, and the lines that stand there."""
    return QUOTED.findall(page.read_text("utf-8"))


def lines(page, file, first, last):
    """What a quotation must hold. StopIteration where no line has those words."""
    told = (page.parent / file).read_text("utf-8").splitlines(keepends=True)
    start = next(at for at, line in enumerate(told) if first in line)
    end = next(at for at, line in enumerate(told) if at >= start and last in line)
    return "".join(told[start : end + 1])


def requoted(page):
    """The text of a page with every quotation written again."""

    def again(match):
        file, first, last, _ = match.groups()
        return f"<!-- quoted: {file} | {first} | {last} -->\n```text\n{lines(page, file, first, last)}```"

    return QUOTED.sub(again, page.read_text("utf-8"))
