"""What all tests share: hypothesis profiles, settings of their own, no screen unless one is asked for."""

import gc
import os
from collections.abc import Generator, Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.seasons import TODAY

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
settings.register_profile(
    "short", max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)
settings.register_profile("deep", deadline=None, suppress_health_check=[HealthCheck.too_slow], max_examples=5000)
# The plainest example of a plan that fails can take minutes to find; this one takes the first.
settings.register_profile("first", settings.get_profile("short"), phases=(Phase.explicit, Phase.generate))
settings.load_profile(os.environ.get("GARDENPLOT_HYPOTHESIS", "short"))


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Collect without looking for garbage, of which there is none, nor ever later in what is loaded by then.

    Looking through all modules and tests took half a second each time, a tenth of the whole run.
    """
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


@pytest.fixture(autouse=True)
def own_settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Keep what the program remembers apart from the machine's and from other tests'."""
    from PySide6.QtCore import QCoreApplication, QSettings  # noqa: PLC0415  # after the platform is chosen

    monkeypatch.setenv("GARDENPLOT_FOLDER", str(tmp_path / "settings" / "own"))
    QCoreApplication.setOrganizationName("gardenplot")
    QCoreApplication.setApplicationName("gardenplot-tests")
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(tmp_path / "settings"))
    yield
    QSettings().clear()


@pytest.fixture(autouse=True)
def winter_before(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let every window look at its plan on one day, before the seasons of the tests' plans."""
    monkeypatch.setattr("gardenplot.window.document.Document.today", staticmethod(lambda: TODAY))


def pytest_addoption(parser: pytest.Parser) -> None:
    """The flag that approves how the window looks now (tests/looks)."""
    parser.addoption("--rewrite-looks", action="store_true", help="approve how the window looks now")
