"""`wellposed keys`: what it writes, who may read it, what it prints, and what it refuses.

Pictures are read by another library, zxing-cpp.
"""

import json
import os
import stat

import pytest
import zxingcpp
from click.testing import CliRunner
from PIL import Image
from tests.validator.wellposed.exchange.arrivals import KEY, KID, D

from wellposed.commands import main
from wellposed.exchange.base64url import bytes_of
from wellposed.exchange.spoken import words

WORDS = " ".join(words(bytes_of(KID)))
PRIVATE = json.dumps({**KEY, "d": D})


pytestmark = pytest.mark.usefixtures("folder")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.public.json").write_text(json.dumps(KEY))
    (tmp_path / "a.private.json").write_text(PRIVATE)
    (tmp_path / "a.private.json").chmod(0o600)
    return tmp_path


def keys(*arguments):
    return CliRunner().invoke(main, ["keys", *arguments])


def trusted(*more):
    named = ("trust", "a.public.json", "--trust", "store.json", "--owner", "clinic-17/dr-2", "--read-back", WORDS)
    return keys(*named, "--holder", "lab-4", *more)


def stored(folder):
    return json.loads((folder / "store.json").read_text())


# made and shown


def test_a_key_is_made_in_two_halves(folder):
    result = keys("make", "b.private.json", "--public", "b.public.json")
    private, public = (json.loads((folder / f"b.{half}.json").read_text()) for half in ("private", "public"))
    assert (result.exit_code, result.stderr) == (0, "")
    assert private.pop("d") not in result.output
    assert private == public
    assert f"thumbprint  {public['kid']}\n" in result.output
    assert " ".join(words(bytes_of(public["kid"]))) in " ".join(result.output.split())


@pytest.mark.skipif(os.name != "posix", reason="modes are those of POSIX")
def test_only_its_owner_may_read_the_private_half(folder):
    keys("make", "b.private.json", "--public", "b.public.json")
    assert stat.S_IMODE((folder / "b.private.json").stat().st_mode) == 0o600


@pytest.mark.parametrize("there", ["a.private.json", "a.public.json"])
def test_a_key_is_never_written_over_another(folder, there):
    before = (folder / there).read_bytes()
    names = {"private": "b.private.json", "public": "b.public.json", there.split(".")[1]: there}
    result = keys("make", names["private"], "--public", names["public"])
    assert (result.exit_code, "is there, and is not written over" in result.stderr) == (2, True)
    assert (folder / there).read_bytes() == before
    assert not (folder / "b.private.json").exists()


@pytest.mark.parametrize("half", ["private", "public"])
def test_either_half_is_shown_alike_and_nothing_secret(half):
    result = keys("show", f"a.{half}.json")
    assert result.exit_code == 0
    assert KID in result.stdout
    assert WORDS in " ".join(result.stdout.split())
    assert D not in result.output


def test_the_picture_says_the_thumbprint(folder):
    assert keys("show", "a.public.json", "--qr", "a.png").exit_code == 0
    (read,) = zxingcpp.read_barcodes(Image.open(folder / "a.png").convert("L"))
    assert read.text == f"urn:ietf:params:oauth:jwk-thumbprint:sha-256:{KID}"


def test_the_picture_can_be_drawn(folder):
    assert keys("show", "a.public.json", "--qr", "a.svg").exit_code == 0
    assert b"<svg" in (folder / "a.svg").read_bytes()


@pytest.mark.parametrize("name", ["a.pdf", "a", "svg", "a.svg.gz"])
def test_a_picture_has_one_of_two_forms(folder, name):
    assert keys("show", "a.public.json", "--qr", name).exit_code == 2
    assert not (folder / name).exists()


# trusted


def test_a_key_read_back_is_trusted(folder):
    result = trusted("--until", "2999-01-01T00:00:00Z")
    (one,) = stored(folder)["keys"]
    assert (result.exit_code, stored(folder)["holder"]) == (0, ["lab-4"])
    assert (one["kid"], one["owners"], one["until"]) == (KID, ["clinic-17/dr-2"], "2999-01-01T00:00:00Z")
    assert "signs for   clinic-17/dr-2\nstands      in force\n" in result.stdout


@pytest.mark.parametrize(
    "arguments, words_of",
    [
        (["--read-back", WORDS.replace("n", "m", 1)], "another key"),
        (["--read-back", ""], "another key"),
        (["--read-back", WORDS.rpartition(" ")[0]], "another key"),
        (["--since", "today"], "not an RFC 3339"),
        (["--until", "2026-02-30T00:00:00Z"], "not an RFC 3339"),
        (["--since", "2026-03-02T00:00:00Z", "--until", "2026-03-01T00:00:00Z"], "end before they begin"),
        (["--owner", "clinic 17"], "not written as the format writes it"),
        (["--holder", "lab 4"], "not written as the format writes it"),
    ],
)
def test_a_key_that_is_not_read_back_or_said_right_is_not_trusted(folder, arguments, words_of):
    result = trusted(*arguments)
    assert (result.exit_code, words_of in result.stderr) == (2, True)
    assert not (folder / "store.json").exists()


@pytest.mark.parametrize("left_out", ["--owner", "--read-back", "--holder", "--trust"])
def test_nothing_is_taken_for_granted(folder, left_out):
    said = {"--trust": "store.json", "--owner": "clinic-17/dr-2", "--read-back": WORDS, "--holder": "lab-4"}
    pairs = [part for name, value in said.items() if name != left_out for part in (name, value)]
    result = keys("trust", "a.public.json", *pairs)
    assert (result.exit_code, left_out in result.stderr) == (2, True)
    assert not (folder / "store.json").exists()


def test_a_private_key_that_was_sent_is_not_trusted():
    said = ("--owner", "clinic-17/dr-2", "--read-back", WORDS, "--holder", "lab-4")
    result = keys("trust", "a.private.json", "--trust", "store.json", *said)
    assert (result.exit_code, "this is a private key" in result.stderr, D in result.output) == (2, True, False)


def test_the_list_says_whose_it_is_once():
    trusted()
    assert "--holder is for a new list" in trusted().stderr


def test_a_key_is_not_trusted_twice():
    trusted()
    result = keys("trust", "a.public.json", "--trust", "store.json", "--owner", "clinic-9/dr-1", "--read-back", WORDS)
    assert (result.exit_code, "the key is in the list" in result.stderr) == (2, True)


BROKEN = {
    "nothing": "",
    "not JSON": "{",
    "no object": "[]",
    "another kind of key": json.dumps({**KEY, "kty": "RSA"}),
    "the name of another key": json.dumps({**KEY, "kid": "A" * 43}),
    "a member nobody knows": json.dumps({**KEY, "note": "P-7F3A"}),
    "an address": json.dumps({**KEY, "x5u": "https://keys.example/k.pem"}),
    "a list of keys": json.dumps({"keys": [KEY]}),
    "half a private key": json.dumps({**KEY, "d": D[:-1]}),
    "a name twice": json.dumps(KEY)[:-1] + f', "x": "{KEY["x"]}"}}',
    "a certificate": "-----BEGIN CERTIFICATE-----\nAA==\n-----END CERTIFICATE-----\n",
    "a long file": json.dumps(KEY) + " " * 20_000,
}


@pytest.mark.parametrize("content", BROKEN.values(), ids=BROKEN)
@pytest.mark.parametrize("command", ["show", "trust", "rotate"])
def test_a_file_that_is_no_key_is_refused_without_a_word_of_it(folder, content, command):
    (folder / "x.json").write_text(content)
    (folder / "x.json").chmod(0o600)
    more = {
        "show": [],
        "trust": ["--trust", "store.json", "--holder", "lab-4", "--owner", "clinic-17", "--read-back", WORDS],
        "rotate": ["a.private.json", "-o", "change.json"],
    }
    result = keys(command, "x.json", *more[command])
    assert result.exit_code == 2
    assert [part for part in (KEY["x"], D[:-1], "P-7F3A", "keys.example") if part in result.output] == []
    assert not (folder / "store.json").exists()


# revoked, replaced, listed


def test_a_key_is_revoked_by_its_words(folder):
    trusted()
    result = keys(
        "revoke", WORDS, "--trust", "store.json", "--reason", "compromised", "--since", "2026-03-05T00:00:00Z"
    )
    (one,) = stored(folder)["keys"]
    assert (result.exit_code, one["revoked"]["reason"]) == (0, "compromised")
    assert "revoked (compromised, since 2026-03-05T00:00:00Z)" in result.stdout


@pytest.mark.parametrize("key, reason", [("babab", "ended"), (KID, "lost"), (KID.lower(), "ended"), ("", "ended")])
def test_what_is_not_in_the_list_or_no_reason_is_not_revoked(folder, key, reason):
    trusted()
    before = (folder / "store.json").read_bytes()
    assert keys("revoke", key, "--trust", "store.json", "--reason", reason).exit_code == 2
    assert (folder / "store.json").read_bytes() == before


def test_a_key_gives_way_to_the_next(folder):
    trusted()
    keys("make", "b.private.json", "--public", "b.public.json")
    made = keys("rotate", "a.private.json", "b.private.json", "-o", "change.json")
    taken = keys("trust", "change.json", "--trust", "store.json")
    old, new = stored(folder)["keys"]
    assert (made.exit_code, taken.exit_code, old["revoked"]["reason"]) == (0, 0, "superseded")
    assert (new["replaces"], new["owners"]) == (KID, old["owners"])
    assert "revoked (superseded" in taken.stdout
    assert D not in (folder / "change.json").read_text()


@pytest.mark.parametrize("option", ["--owner", "--read-back", "--since", "--until"])
def test_what_a_change_says_itself_is_not_said_beside_it(option):
    trusted()
    keys("make", "b.private.json", "--public", "b.public.json")
    keys("rotate", "a.private.json", "b.private.json", "-o", "change.json")
    value = "2026-03-05T00:00:00Z" if option in ("--since", "--until") else "x"
    result = keys("trust", "change.json", "--trust", "store.json", option, value)
    assert (result.exit_code, f"{option} does not go with a change" in result.stderr) == (2, True)


def test_a_key_does_not_give_way_to_itself():
    result = keys("rotate", "a.private.json", "a.private.json", "-o", "change.json")
    assert (result.exit_code, "one key" in result.stderr) == (2, True)


@pytest.mark.skipif(os.name != "posix", reason="modes are those of POSIX")
@pytest.mark.parametrize("mode", [0o640, 0o604, 0o644, 0o660])
def test_a_private_key_that_others_can_read_is_not_used(folder, mode):
    (folder / "a.private.json").chmod(mode)
    keys("make", "b.private.json", "--public", "b.public.json")
    result = keys("rotate", "a.private.json", "b.private.json", "-o", "change.json")
    assert (result.exit_code, "others can read it" in result.stderr) == (2, True)


def test_the_list_is_listed():
    trusted()
    result = keys("list", "--trust", "store.json")
    assert (result.exit_code, result.stdout.startswith("Documents addressed to lab-4. 1 key.\n")) == (0, True)
    assert KID in result.stdout


@pytest.mark.parametrize("content", [None, "", "{}", "[]"])
def test_a_list_that_is_none_is_said(folder, content):
    if content is not None:
        (folder / "store.json").write_text(content)
    assert keys("list", "--trust", "store.json").exit_code == 2
