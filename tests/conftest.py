"""For every test: nothing may be skipped in secret, and nothing may depend on the clock."""

import os

import pytest
from hypothesis import settings

# The same examples every run, and no deadline: a busy machine is no fault of the code.
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")


def skipped(config):
    """How many tests this run has skipped so far; workers of a distributed run count none."""
    reporter = config.pluginmanager.get_plugin("terminalreporter")
    return len(reporter.stats.get("skipped", [])) if reporter else 0


@pytest.hookimpl(tryfirst=True)
def pytest_sessionfinish(session):
    """With WELLPOSED_NO_SKIPS=1 a run that skipped anything has failed."""
    if os.environ.get("WELLPOSED_NO_SKIPS") == "1" and skipped(session.config):
        session.exitstatus = pytest.ExitCode.TESTS_FAILED


def pytest_terminal_summary(terminalreporter, config):
    if os.environ.get("WELLPOSED_NO_SKIPS") == "1" and skipped(config):
        terminalreporter.write_line("WELLPOSED_NO_SKIPS=1: skipped tests fail this run", red=True)
