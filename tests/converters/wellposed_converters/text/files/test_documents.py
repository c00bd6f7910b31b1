import io
import zipfile

import pytest
from docx import Document
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls

from wellposed_converters.text.files import read_file
from wellposed_converters.text.files.notes import NoteError


def saved(document):
    file = io.BytesIO()
    document.save(file)
    return file.getvalue()


def refusal(data):
    with pytest.raises(NoteError) as caught:
        read_file(data, "a.docx")
    return caught.value


def with_xml(xml):
    document = Document()
    paragraph = document.add_paragraph("No IPR")
    paragraph._element.append(parse_xml(xml.replace(">", f" {nsdecls('w')}>", 1)))
    return saved(document)


def test_paragraphs_and_tables_come_in_the_order_of_the_document():
    document = Document()
    document.sections[0].header.paragraphs[0].text = "Case A-102"
    document.add_paragraph("Findings")
    table = document.add_table(2, 2)
    for cell, text in zip(table._cells, ("tooth", "movement", "13", "rotate 10°"), strict=True):
        cell.text = text
    document.add_paragraph("No IPR")
    document.add_paragraph("Keep OB", style="List Bullet")
    text = read_file(saved(document), "a.docx").text
    assert text == "Case A-102\n\nFindings\n| tooth | movement |\n| 13 | rotate 10° |\nNo IPR\nKeep OB"


def test_the_words_of_a_link_are_read():
    link = "<w:hyperlink><w:r><w:t> on 12</w:t></w:r></w:hyperlink>"
    assert read_file(with_xml(link), "a.docx").text == "No IPR on 12"


@pytest.mark.parametrize(
    "xml, what",
    [
        ('<w:ins w:id="1" w:author="a"><w:r><w:t>on 12</w:t></w:r></w:ins>', "tracked changes"),
        ('<w:del w:id="1" w:author="a"><w:r><w:delText>on 12</w:delText></w:r></w:del>', "tracked changes"),
        ('<w:r><w:commentReference w:id="0"/></w:r>', "comments"),
        (
            "<w:r><w:pict><w:txbxContent><w:p><w:r><w:t>12</w:t></w:r></w:p></w:txbxContent></w:pict></w:r>",
            "text boxes",
        ),
        ("<w:r><w:rPr><w:strike/></w:rPr><w:t>on 12</w:t></w:r>", "struck-out words"),
        ("<w:r><w:rPr><w:vanish/></w:rPr><w:t>on 12</w:t></w:r>", "hidden words"),
        ("<w:sdt><w:sdtContent><w:r><w:t>on 12</w:t></w:r></w:sdtContent></w:sdt>", "form fields or content controls"),
        ('<w:r><w:sym w:font="Symbol" w:char="F0B0"/></w:r>', "symbols of a special font"),
        ('<w:r><w:footnoteReference w:id="2"/></w:r>', "footnotes or endnotes"),
    ],
)
def test_what_words_alone_do_not_tell_is_refused_by_name(xml, what):
    fault = refusal(with_xml(xml))
    assert fault.rule == "note-document-refused"
    assert what in fault.place


def test_a_property_that_is_switched_off_is_none():
    assert read_file(with_xml('<w:r><w:rPr><w:strike w:val="0"/></w:rPr><w:t> on 12</w:t></w:r>'), "a.docx").text


def test_words_that_no_paragraph_holds_are_out_of_reach():
    assert (
        refusal(with_xml("<w:smartTag><w:r><w:t>on 12</w:t></w:r></w:smartTag>")).rule == "note-document-out-of-reach"
    )


def test_merged_cells_are_refused():
    document = Document()
    table = document.add_table(2, 2)
    table.cell(0, 0).merge(table.cell(0, 1)).text = "13"
    assert "merged table cells" in refusal(saved(document)).place


def test_a_bar_in_a_cell_is_refused():
    document = Document()
    document.add_table(1, 1).cell(0, 0).text = "upper 21|12"
    assert "bar" in refusal(saved(document)).place


def test_a_nested_table_is_out_of_reach():
    document = Document()
    document.add_table(1, 1).cell(0, 0).add_table(1, 1).cell(0, 0).text = "13"
    assert refusal(saved(document)).rule == "note-document-out-of-reach"


def test_a_picture_is_named():
    picture = "<w:r><w:drawing/></w:r>"
    assert read_file(with_xml(picture), "a.docx").warnings == ("pictures are not read",)


def test_what_is_no_document_is_damaged():
    assert refusal(b"No IPR").rule == "note-document-damaged"
    empty = io.BytesIO()
    zipfile.ZipFile(empty, "w").close()
    assert refusal(empty.getvalue()).rule == "note-document-damaged"


def test_a_document_that_unpacks_too_large_is_not_unpacked():
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as file:
        file.writestr("word/document.xml", b" " * 21_000_000)
    assert refusal(packed.getvalue()).rule == "note-too-large"
