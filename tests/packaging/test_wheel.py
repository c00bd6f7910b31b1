"""The wheel, built and installed away from the repository, is the whole program."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
DATA = ("norms", "schema", "work-orders")

pytestmark = [pytest.mark.packaging, pytest.mark.slow, pytest.mark.xdist_group("wheel")]


def run(*command, cwd=ROOT, **environment):
    done = subprocess.run(command, cwd=cwd, env=os.environ | environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{command} ended with {done.returncode}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """A folder into which the wheel, and nothing else, was installed."""
    wheels, site = tmp_path_factory.mktemp("wheels"), tmp_path_factory.mktemp("site")
    pip = (sys.executable, "-m", "pip", "--disable-pip-version-check", "--quiet")
    run(*pip, "wheel", ".", "--no-deps", "--no-build-isolation", "--wheel-dir", str(wheels))
    (wheel,) = wheels.glob("wellposed-*.whl")
    run(*pip, "install", str(wheel), "--no-deps", "--no-index", "--target", str(site))
    return site


@pytest.fixture
def away(installed, tmp_path):
    """Runs a command in an empty folder, where only the installed wheel is `wellposed`."""

    def call(*command):
        return run(*command, cwd=tmp_path, PYTHONPATH=str(installed), PYTHONSAFEPATH="1")

    return call


@pytest.fixture
def command(installed, away):
    return lambda *words: away(str(installed / "bin" / "wellposed"), *words)


def test_python_finds_the_installed_package(installed, away):
    assert Path(away(sys.executable, "-c", "import wellposed; print(wellposed.__file__)").strip()) == (
        installed / "wellposed" / "__init__.py"
    )


def test_the_command_tells_the_version_of_the_source(command):
    source = (ROOT / "validator/wellposed/__init__.py").read_text("utf-8")
    (version,) = re.findall(r'^__version__ = "(.+)"$', source, re.MULTILINE)
    assert version in command("--version")


def test_the_command_prints_the_schema(command):
    assert '"$schema"' in command("schema")


@pytest.mark.parametrize("kind", DATA)
def test_data_of_the_specification_travels_with_the_package(installed, kind):
    source, copy = ROOT / "spec" / kind, installed / "wellposed" / "_spec" / kind
    assert contents(copy) == contents(source) != {}


def contents(folder):
    return {file.relative_to(folder): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def test_the_norms_load(away):
    assert away(sys.executable, "-c", "import wellposed.norms") == ""


def test_the_types_are_marked_as_given(installed):
    assert (installed / "wellposed" / "py.typed").is_file()
