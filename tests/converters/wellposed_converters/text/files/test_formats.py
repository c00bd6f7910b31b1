import pytest

from wellposed_converters.text.files import LARGEST, read_file
from wellposed_converters.text.files.notes import NoteError

NOTE = "Derotate 3⏌ by 10°.\nNo IPR.\n"


def refusal(data, name):
    with pytest.raises(NoteError) as caught:
        read_file(data, name)
    return caught.value


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("name", ["a.txt", "A.MD"])
def test_plain_text_is_read_in_utf_8_and_marked_utf_16(encoding, name):
    assert read_file(NOTE.encode(encoding), name).text == NOTE


def test_big_endian_utf_16_is_read_by_its_mark():
    assert read_file(b"\xfe\xff" + NOTE.encode("utf-16-be"), "a.txt").text == NOTE


def test_a_path_is_read_under_its_name(tmp_path):
    path = tmp_path / "a.txt"
    path.write_text(NOTE, "utf-8")
    assert read_file(path) == read_file(str(path)) == read_file(NOTE.encode())


def test_another_encoding_is_not_guessed_but_told_with_line_column_and_byte():
    fault = refusal("No IPR\n13: 10°".encode("cp1252"), "a.txt")
    assert (fault.rule, fault.place) == ("note-encoding", "a.txt, line 2, column 7 (byte 0xB0)")


def test_utf_16_cut_short_is_an_encoding_fault():
    assert refusal(NOTE.encode("utf-16")[:-1], "a.txt").rule == "note-encoding"


def test_the_largest_note_is_read_and_one_byte_more_is_not():
    assert read_file(b"a" * LARGEST, "a.txt").text
    assert refusal(b"a" * (LARGEST + 1), "a.txt").rule == "note-too-large"


@pytest.mark.parametrize("name", ["a.pdf", "a", "a.doc", "a.rtf"])
def test_another_format_is_refused(name):
    assert refusal(b"No IPR", name).rule == "note-format-unknown"


MAIL = b"""Subject: new case\r
MIME-Version: 1.0\r
Content-Type: multipart/mixed; boundary=b\r
\r
--b\r
Content-Type: text/plain; charset=%s\r
\r
Rotate 13 by 10%s.\r
--b\r
Content-Type: application/octet-stream\r
Content-Disposition: attachment; filename="upper.stl"\r
\r
solid\r
--b--\r
"""


@pytest.mark.parametrize("charset, degree", [(b"utf-8", b"\xc2\xb0"), (b"windows-1252", b"\xb0")])
def test_a_mail_gives_subject_and_words_and_names_what_it_leaves_out(charset, degree):
    note = read_file(MAIL % (charset, degree), "a.eml")
    assert note.text.replace("\r\n", "\n") == "Subject: new case\n\nRotate 13 by 10°."
    assert note.warnings == ("the attachment is not read: upper.stl",)


@pytest.mark.parametrize("charset, degree", [(b"utf-8", b"\xb0"), (b"us-ascii", b"\xb0"), (b"no-such", b"")])
def test_a_mail_not_in_its_stated_encoding_is_refused(charset, degree):
    assert refusal(MAIL % (charset, degree), "a.eml").rule == "note-encoding"


def test_a_mail_of_html_alone_is_refused():
    data = b"Subject: a\r\nMIME-Version: 1.0\r\nContent-Type: text/html\r\n\r\n<p>No IPR</p>\r\n"
    assert refusal(data, "a.eml").rule == "note-mail-without-plain-text"


def test_the_html_beside_the_plain_text_is_named():
    data = (
        b"Subject: a\r\nMIME-Version: 1.0\r\nContent-Type: multipart/alternative; boundary=b\r\n\r\n"
        b"--b\r\nContent-Type: text/plain\r\n\r\nNo IPR\r\n"
        b"--b\r\nContent-Type: text/html\r\n\r\n<p>No IPR</p>\r\n--b--\r\n"
    )
    note = read_file(data, "a.eml")
    assert note.text == "Subject: a\n\nNo IPR"
    assert note.warnings == ("the HTML form of the mail is not read, only its plain text",)


def test_a_damaged_mail_is_refused():
    data = (
        b"Subject: a\r\nMIME-Version: 1.0\r\nContent-Type: multipart/mixed; boundary=b\r\n\r\n"
        b"--b\r\nContent-Type: text/plain\r\n\r\nNo IPR\r\n"
    )
    assert refusal(data, "a.eml").rule == "note-mail-damaged"
