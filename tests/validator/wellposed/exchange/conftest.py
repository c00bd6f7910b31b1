"""Stores for tests. Where hundreds of commits are made they stand on a disk in memory: the disk is not tested there."""

import os
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from tests.validator.wellposed.exchange.incoming import LABORATORY, NOW

from wellposed.exchange.store import Store

IN_MEMORY = Path("/dev/shm")


@pytest.fixture
def store(tmp_path):
    with Store(str(tmp_path / "intake.db"), LABORATORY, NOW) as opened:
        yield opened


@pytest.fixture
def in_memory():
    """A folder on a disk in memory, where the system has one."""
    with TemporaryDirectory(dir=IN_MEMORY if os.access(IN_MEMORY, os.W_OK) else None) as folder:
        yield Path(folder)
