"""Released files do not change, and a change would be seen."""

import pytest
from tests.spec.conformance import frozen, kit

SCHEMA, CASE = "spec/schema/1/prescription.schema.json", "spec/conformance/cases/parse/001-smallest/input.json"


@pytest.fixture
def root(tmp_path):
    for path in (SCHEMA, CASE):
        (tmp_path / path).parent.mkdir(parents=True)
        (tmp_path / path).write_text("{}")
    return tmp_path


def test_what_was_released_is_as_it_was():
    """No version is released yet: the list is empty, and this test holds from the first release on."""
    assert frozen.changed(kit.read(frozen.LIST)["released"], kit.ROOT) == []


# sha256sum of the two bytes {}, by the program of GNU coreutils
def test_a_release_fixes_schemas_and_cases(root):
    empty = "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a"
    assert frozen.with_version({}, "1.0", root) == {"1.0": {SCHEMA: empty, CASE: empty}}


@pytest.mark.parametrize("path", [SCHEMA, CASE])
@pytest.mark.parametrize("spoil", [lambda file: file.write_text("{ }"), lambda file: file.unlink()])
def test_a_released_file_that_is_changed_or_gone_is_seen(root, path, spoil):
    released = frozen.with_version({}, "1.0", root)
    assert frozen.changed(released, root) == []
    spoil(root / path)
    assert frozen.changed(released, root) == [path]
    with pytest.raises(ValueError, match="not as it was released"):
        frozen.with_version(released, "1.1", root)


def test_a_file_that_comes_later_is_no_change(root):
    released = frozen.with_version({}, "1.0", root)
    (root / SCHEMA).with_name("more.schema.json").write_text("{}")
    assert frozen.changed(released, root) == []
    assert len(frozen.with_version(released, "1.1", root)["1.1"]) == 3


def test_a_version_is_released_once(root):
    with pytest.raises(ValueError, match="released before"):
        frozen.with_version({"1.0": {}}, "1.0", root)


def test_every_published_schema_is_among_what_a_release_fixes():
    held = frozen.digests(kit.ROOT)
    assert SCHEMA in held
    assert CASE in held
    assert "spec/schema/1/wellposed.xsd" in held
    assert sum("/cases/" in path for path in held) > 3 * len(kit.cases()) - 1
