"""`wellposed sign` and `wellposed verify`: what they print, on which stream, and how they end."""

import json

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written
from tests.validator.wellposed.exchange.arrivals import KEY, KID, D, digest, sealed, trusted

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text
from wellposed.render.verification import SCOPE

RECEIVED = ("--received", "2026-03-05T08:00:00Z")
NEXT = {**EXAMPLE, "revision": 2, "replaces": digest(EXAMPLE)}


pytestmark = pytest.mark.usefixtures("folder")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name, data in DOCUMENTS.items():
        (tmp_path / f"{name}.json").write_bytes(data)
    (tmp_path / "order.json").write_bytes(written(EXAMPLE))
    (tmp_path / "order.sig").write_bytes(sealed(EXAMPLE))
    (tmp_path / "next.json").write_bytes(written(NEXT))
    (tmp_path / "keys.json").write_text(json.dumps(trusted()))
    (tmp_path / "key.json").write_text(json.dumps({**KEY, "d": D}))
    (tmp_path / "key.json").chmod(0o600)
    return tmp_path


def run(*arguments, data=None):
    return CliRunner().invoke(main, arguments, input=data)


def verify(*arguments):
    return run("verify", *arguments, "--trust", "keys.json", *RECEIVED)


# sign


def test_a_document_is_signed_beside_itself(folder):
    before = (folder / "order.json").read_bytes()
    result = run("sign", "order.json", "--key", "key.json", "-o", "new.sig")
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout == f"HR-2031, revision 1: signed.\nkey      {KID}\nSHA-256  {digest(EXAMPLE)}\n"
    assert (folder / "order.json").read_bytes() == before
    assert (folder / "new.sig").read_bytes().count(b"\n") == 0
    assert verify("order.json", "new.sig").exit_code == 0


def test_the_standard_input_is_signed():
    result = run("sign", "-", "--key", "key.json", "-o", "new.sig", data=written(EXAMPLE))
    assert result.exit_code == 0
    assert verify("order.json", "new.sig").exit_code == 0


@pytest.mark.parametrize("name, code", [("refused", 1), ("unreadable", 3), ("nowhere", 3)])
def test_what_has_faults_is_not_signed(folder, name, code):
    result = run("sign", f"{name}.json", "--key", "key.json", "-o", "new.sig")
    assert (result.exit_code, result.stdout) == (code, "")
    assert not (folder / "new.sig").exists()


def test_what_cannot_hold_together_can_be_signed():
    assert run("sign", "contradictory.json", "--key", "key.json", "-o", "new.sig").exit_code == 0


def test_a_signature_is_not_written_over():
    result = run("sign", "order.json", "--key", "key.json", "-o", "order.sig")
    assert (result.exit_code, "order.sig is there" in result.stderr) == (2, True)


def test_the_key_is_not_read_from_the_standard_input(folder):
    result = run("sign", "order.json", "--key", "-", "-o", "new.sig", data=(folder / "key.json").read_bytes())
    assert (result.exit_code, "not from the standard input" in result.stderr) == (2, True)


def test_nobody_signs_with_half_a_key(folder):
    (folder / "key.json").write_text(json.dumps(KEY))
    result = run("sign", "order.json", "--key", "key.json", "-o", "new.sig")
    assert (result.exit_code, "not a key, or not of the kind" in result.stderr) == (2, True)


def test_nobody_signs_with_halves_of_two_keys(folder):
    (folder / "key.json").write_text(json.dumps({**KEY, "d": "A" * 43}))
    result = run("sign", "order.json", "--key", "key.json", "-o", "new.sig")
    assert (result.exit_code, "do not belong together" in result.stderr) == (2, True)


# verify


def test_what_is_as_it_should_be():
    result = verify("order.json", "order.sig")
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("HR-2031, revision 1: signed by clinic-17/dr-2, and unchanged.\n")
    assert (KID in result.stdout, digest(EXAMPLE) in result.stdout) == (True, True)


@pytest.mark.parametrize("arguments", [("order.json", "order.sig"), ("order.json",), ("next.json", "order.sig")])
def test_everything_said_carries_its_scope_and_the_caution(arguments):
    told = " ".join(verify(*arguments).stdout.split())
    assert (SCOPE in told, CAUTION in told) == (True, True)


@pytest.mark.parametrize(
    "arguments, code, told",
    [
        (("order.json",), 1, "[stop · signature-left-out · line 9, column 9 · /prescriber/id]"),
        (("next.json", "order.sig"), 1, "[stop · signature-does-not-fit"),
        (("order.json", "order.json"), 1, "[stop · signature-form"),
        (("order.json", "order.sig", "--earlier", "order.json"), 0, "[note · received-before]"),
        (("order.json", "order.sig", "--earlier", "next.json"), 1, "but it is not to be worked from yet."),
        (("refused.json", "order.sig"), 1, "signature-does-not-fit"),
        (("unreadable.json", "order.sig"), 3, "[stop · duplicate-member"),
    ],
)
def test_what_is_not(arguments, code, told):
    result = verify(*arguments)
    assert (result.exit_code, told in result.stdout) == (code, True)


def test_a_document_without_signature_of_one_who_has_no_key(folder):
    (folder / "keys.json").write_text(json.dumps({**trusted(), "keys": []}))
    result = verify("order.json")
    assert (result.exit_code, "[caution · not-signed]" in result.stdout) == (1, True)
    assert result.stdout.startswith("HR-2031, revision 1: not shown to come from whom it names.\n")


@pytest.mark.parametrize("arguments", [("nowhere.json", "order.sig"), ("order.json", "nowhere.sig")])
def test_a_file_that_cannot_be_read(arguments):
    result = verify(*arguments)
    assert (result.exit_code, result.stdout) == (3, "")
    assert result.stderr.startswith("wellposed: nowhere.")


@pytest.mark.parametrize(
    "arguments, words",
    [
        (("order.json", "-"), "SIGNATURE is a file"),
        (("order.json", "order.sig", "--earlier", "refused.json"), "not a sound document"),
    ],
)
def test_a_wrong_call(arguments, words):
    result = verify(*arguments)
    assert (result.exit_code, words in result.stderr) == (2, True)


@pytest.mark.parametrize("moment", ["today", "20260305T080000Z", "2026-03-05 08:00:00Z", "2026-03-05T08:00:00"])
def test_a_moment_of_receipt_that_is_none(moment):
    result = run("verify", "order.json", "order.sig", "--trust", "keys.json", "--received", moment)
    assert (result.exit_code, "--received: not an RFC 3339" in result.stderr) == (2, True)


def test_a_list_of_keys_with_a_fault(folder):
    (folder / "keys.json").write_text(json.dumps({**trusted(), "note": "x"}))
    result = verify("order.json", "order.sig")
    assert (result.exit_code, "keys.json: not a list of trusted keys: unknown-member at /note" in result.stderr) == (
        2,
        True,
    )


CASES = [("order.json", "order.sig"), ("order.json",), ("next.json", "order.sig"), ("unreadable.json", "order.sig")]


@pytest.mark.parametrize("arguments", CASES)
def test_the_json_holds_to_its_schema(arguments):
    told = json.loads(verify(*arguments, "--format", "json").stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("verification"))).validate(told)
    assert told["caution"] == CAUTION


def test_the_json_says_who_and_what():
    told = json.loads(verify("order.json", "order.sig", "--format", "json").stdout)
    document = {"name": "order.json", "of": "prescription", "id": "HR-2031", "revision": 1}
    expected = {"accepted": True, "authentic": True, "document": document, "sha256": digest(EXAMPLE), "key": KID}
    assert {name: told[name] for name in expected} == expected
    assert (told["signer"], told["received"], told["findings"]) == ("clinic-17/dr-2", RECEIVED[1], [])


def test_nothing_secret_and_no_content_is_printed():
    outputs = [run("sign", "order.json", "--key", "key.json", "-o", "new.sig").output]
    outputs += [verify(*arguments).output for arguments in CASES]
    assert [part for part in (D, "P-7F3A", "OR-55821") for output in outputs if part in output] == []
