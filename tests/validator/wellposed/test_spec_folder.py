"""The data are found in the repository, and inside the package once it is installed."""

import importlib.util
import shutil
from pathlib import Path

import pytest

from wellposed import _spec_folder

ROOT = Path(__file__).parents[3]


def copied(folder):
    """The module as if its package stood in another folder."""
    path = shutil.copy(_spec_folder.__file__, folder)
    spec = importlib.util.spec_from_file_location("copied_spec_folder", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_in_the_repository_it_is_spec():
    assert _spec_folder.spec_folder() == ROOT / "spec"


def test_inside_the_package_it_comes_first(tmp_path):
    (tmp_path / "_spec").mkdir()
    (tmp_path / "spec" / "norms").mkdir(parents=True)
    assert copied(tmp_path).spec_folder() == tmp_path / "_spec"


def test_nowhere_is_said_in_words(tmp_path):
    with pytest.raises(FileNotFoundError, match="install it again"):
        copied(tmp_path).spec_folder()
