"""Canonical bytes by the text of RFC 8785, without the library the program uses.

Numbers of the format have two decimals at most and stand below 1e16: there ECMAScript and Python write them alike.
"""

import json
from hashlib import sha256


def canonical(value):
    """Names by their UTF-16 units (section 3.2.3), no blanks, texts escaped only where they must be (3.2.2.2)."""
    if isinstance(value, dict):
        names = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(f"{text(name)}:{canonical(value[name])}" for name in names) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return text(value)


def text(value):
    return json.dumps(value, ensure_ascii=False)


def digest(value):
    return sha256(canonical(value).encode()).hexdigest()
