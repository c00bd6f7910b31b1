"""Thumbprints in words: the published examples of the words, and what is taken as the same."""

import pytest
from tests.validator.wellposed.exchange.arrivals import KID

from wellposed.exchange.spoken import URN, same, words

# D. S. Wilkerson, A Proposal for Proquints, arXiv:0901.4016: its table of addresses
PUBLISHED = {
    "127.0.0.1": "lusab-babad",
    "63.84.220.193": "gutih-tugad",
    "63.118.7.35": "gutuk-bisog",
    "140.98.193.141": "mudof-sakat",
    "64.255.6.200": "haguz-biram",
    "128.30.52.45": "mabiv-gibot",
    "147.67.119.2": "natag-lisaf",
    "212.58.253.68": "tibup-zujah",
    "216.35.68.215": "tobog-higil",
    "216.68.232.21": "todah-vobij",
    "198.81.129.136": "sinid-makam",
    "12.110.110.204": "budov-kuras",
}


@pytest.mark.parametrize("address, spoken", PUBLISHED.items())
def test_words_are_the_published_ones(address, spoken):
    assert "-".join(words(bytes(map(int, address.split("."))))) == spoken


def test_every_two_bytes_have_a_word_of_their_own():
    assert len({words(pair.to_bytes(2)) for pair in range(2**16)}) == 2**16


OURS = words(bytes.fromhex("90facafea9b1556698540f70c0117a22ea37bd5cf3ed3c47093c1707282b4b89"))


@pytest.mark.parametrize(
    "read_back",
    [
        KID,
        URN + KID,
        f" {KID}\n",
        " ".join(OURS),
        "-".join(OURS),
        ", ".join(OURS),
        " ".join(OURS).upper(),
        "\n".join(OURS),
    ],
)
def test_the_same_key_is_heard(read_back):
    assert len(OURS) == 16
    assert same(read_back, KID)


@pytest.mark.parametrize(
    "read_back",
    [
        "",
        " ",
        "-",
        KID.lower(),
        KID[:-1],
        KID + "A",
        URN,
        " ".join(OURS[:15]),
        " ".join(OURS[1:]),
        " ".join([*OURS, OURS[0]]),
        " ".join(reversed(OURS)),
        " ".join([OURS[1], OURS[0], *OURS[2:]]),
        " ".join(["babab", *OURS[1:]]),
        "".join(OURS),
        " ".join(OURS).replace("o", "0"),
        " ".join(OURS).replace("a", "\u0430"),
        ". ".join(OURS),
    ],
)
def test_another_is_not(read_back):
    assert not same(read_back, KID)
