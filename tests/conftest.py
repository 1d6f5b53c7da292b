"""What all tests share: hypothesis profiles, settings of their own, no screen unless one is asked for."""

import builtins
import gc
import os
from collections.abc import Generator
from itertools import count
from pathlib import Path
from shutil import rmtree

import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.today import TODAY

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
_TESTS = count()

settings.register_profile(
    "short", max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)
settings.register_profile("deep", deadline=None, suppress_health_check=[HealthCheck.too_slow], max_examples=5000)
# The plainest example of a plan that fails can take minutes to find; this one takes the first.
settings.register_profile("first", settings.get_profile("short"), phases=(Phase.explicit, Phase.generate))
settings.load_profile(os.environ.get("GARDENPLOT_HYPOTHESIS", "short"))


_OVER, _FEW, _MANY = count(1), 5, 250
"""Tests that are over; after a few garbage that is young is looked for, after many all of it."""


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Collect without looking for garbage, of which there is none, nor ever later in what is loaded by then.

    Looking through all modules and tests took half a second each time, a tenth of the whole run.

    PySide, which is loaded by then, looks at every import for a sign that is nowhere in here, and hypothesis imports
    three times for each value that it draws. The program asks it not to, too (`__main__.load_window`).
    """
    builtins.__import__ = getattr(builtins, "__orig_import__", builtins.__import__)
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()


@pytest.hookimpl(trylast=True)
def pytest_runtest_logfinish() -> None:
    """Look for garbage between tests, and never in one, as the program looks for it between events.

    Parts of a window that are thrown away in another thread than their own, or while Qt is at work on others, may
    bring a test down. A window that closed has handed it back to Python.
    """
    gc.disable()
    over = next(_OVER)
    if over % _FEW == 0:
        gc.collect(2 if over % _MANY == 0 else 1)


@pytest.fixture
def python_looks() -> Generator[None]:
    """Python looks for garbage itself, as it does when the program begins."""
    gc.enable()
    yield
    gc.disable()


@pytest.fixture(scope="session", autouse=True)
def remembered(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the program remembers things while it is tested, apart from the machine's; the winter before is today.

    The seasons of the tests' plans are all to come on that day.
    """
    from PySide6.QtCore import QSettings  # noqa: PLC0415  # after the platform is chosen

    from gardenplot.window.document import Document  # noqa: PLC0415  # it brings in Qt

    folder = tmp_path_factory.mktemp("kept")
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(folder))
    Document.today = staticmethod(lambda: TODAY)
    return folder


@pytest.fixture(autouse=True)
def own_settings(remembered: Path) -> None:
    """Keep what the program remembers apart from other tests'; what is not asked for costs nothing.

    It is cleared before a test, since windows that a module shares are closed, and remembered, after its last one.
    """
    from PySide6.QtCore import QCoreApplication, QSettings  # noqa: PLC0415  # after the platform is chosen

    os.environ["GARDENPLOT_FOLDER"] = str(remembered / f"own {next(_TESTS)}")
    QCoreApplication.setOrganizationName("gardenplot")
    QCoreApplication.setApplicationName("gardenplot-tests")
    settings_of_others = remembered / "gardenplot"
    if settings_of_others.exists():
        QSettings().clear()
        rmtree(settings_of_others)


def pytest_addoption(parser: pytest.Parser) -> None:
    """The flag that approves how the window looks now (tests/looks)."""
    parser.addoption("--rewrite-looks", action="store_true", help="approve how the window looks now")
