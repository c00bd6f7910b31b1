"""`wellposed sheet`: what it writes, of which files, and how it ends."""

import json
import sys

import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written
from tests.validator.wellposed.render.sheet.cases import made, setup_for

from wellposed.check import sound
from wellposed.commands import main
from wellposed.digests import digest
from wellposed.render.sheet import INSTALL


@pytest.fixture
def run(tmp_path):
    """Runs the command on these contents; the result, and what was written."""

    def ran(*contents, output="case.html", options=()):
        files = []
        for place, content in enumerate(contents):
            files.append(tmp_path / f"{place}.json")
            files[-1].write_bytes(content)
        target = tmp_path / output
        result = CliRunner().invoke(main, ["sheet", *map(str, files), "-o", str(target), *options])
        return result, target.read_bytes() if target.exists() else None

    return ran


SETUP = setup_for(sound(made()), dense=False)
SECOND = made(revision=2, replaces=digest(sound(made())), issued="2026-04-01T09:30:00+02:00")


@pytest.mark.parametrize(
    "sentence, contents, title",
    [
        ("an order", [made()], b"Prescription HR-2031, revision 1"),
        ("one that contradicts itself", [DOCUMENTS["contradictory"]], b"Prescription HR-2031, revision 1"),
        ("a setup", [made(), SETUP], b"Setup SU-77, revision 1, for prescription HR-2031, revision 1"),
        ("whichever comes first", [SETUP, made()], b"Setup SU-77, revision 1, for prescription HR-2031, revision 1"),
        ("two revisions", [made(), SECOND], b"Case HR-2031, followed over 2 revisions"),
        ("two revisions and a setup", [SECOND, SETUP, made()], b"Case HR-2031, followed over 2 revisions"),
    ],
)
def test_the_files_tell_what_the_sheet_is_about(sentence, contents, title, run):
    result, page = run(*contents)
    assert (sentence, result.exit_code, result.output) == (sentence, 0, "")
    assert b"<title>" + title + b"</title>" in page


def test_a_folder_stands_for_its_documents(tmp_path):
    for name, data in (("a.json", made()), ("b.json", SECOND), ("c.JSON", SETUP), ("d.txt", b"not read")):
        (tmp_path / name).write_bytes(data)
    (tmp_path / "e.json").mkdir()
    target = tmp_path / "case.html"
    result = CliRunner().invoke(main, ["sheet", str(tmp_path), "-o", str(target)])
    assert (result.exit_code, b"followed over 2 revisions" in target.read_bytes()) == (0, True)


def test_an_empty_folder_is_no_case(tmp_path):
    result = CliRunner().invoke(main, ["sheet", str(tmp_path), "-o", str(tmp_path / "case.html")])
    assert (result.exit_code, "needs a prescription" in result.output) == (2, True)


def test_a_drawing_alone(run):
    result, page = run(made(), output="case.SVG")
    assert result.exit_code == 0
    assert page.startswith(b'<?xml version="1.0" encoding="UTF-8"?>\n<svg ')


def test_a_pdf(run):
    pytest.importorskip("weasyprint", exc_type=(ImportError, OSError), reason="the extra wellposed[pdf]")
    result, page = run(made(), output="case.pdf")
    assert (result.exit_code, page[:5]) == (0, b"%PDF-")


def test_without_the_extra_a_pdf_is_refused_and_html_is_not(run, monkeypatch):
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    result, page = run(made(), output="case.pdf")
    assert (result.exit_code, page) == (2, None)
    assert " ".join(INSTALL.split()) in " ".join(result.output.replace("\u2502", " ").split())
    assert run(made())[0].exit_code == 0


OTHER = written({**EXAMPLE, "id": "HR-9"})


@pytest.mark.parametrize(
    "sentence, contents, output, code, said",
    [
        ("another ending", [made()], "case.docx", 2, "-o must end in one of .html, .pdf, .svg"),
        ("no ending", [made()], "case", 2, "-o must end in one of .html, .pdf, .svg"),
        ("no prescription", [SETUP], "case.html", 2, "a sheet needs a prescription among its files"),
        ("two cases", [made(), OTHER], "case.html", 2, "the files are of 2 cases; a sheet is of one"),
        ("not read", [b"{"], "case.html", 3, ""),
        ("refused", [DOCUMENTS["refused"]], "case.html", 1, ""),
    ],
)
def test_what_stops_it(sentence, contents, output, code, said, run):
    result, page = run(*contents, output=output)
    assert (sentence, result.exit_code, page) == (sentence, code, None)
    assert said in result.output


def test_nothing_of_a_document_is_in_a_message(run):
    private = json.loads(made())
    private["patient"]["reference"] = "P-SECRET"
    private["unknown"] = 1
    assert "P-SECRET" not in run(json.dumps(private).encode())[0].output
