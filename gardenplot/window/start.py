"""Starting the program with its window, and the words when that cannot be."""

import locale
import os
import sys
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLocale
from PySide6.QtWidgets import QApplication

from gardenplot import __version__
from gardenplot.errors import GardenplotError
from gardenplot.files import sample
from gardenplot.window.journal import ENDS, Journal, journal_folder
from gardenplot.window.kept_memory import keep_memory
from gardenplot.window.late import offer_left_work
from gardenplot.window.libraries import missing, missing_words
from gardenplot.window.main import MainWindow
from gardenplot.window.recent import recent, remember
from gardenplot.window.theme import dress
from gardenplot.window.unforeseen import watch
from gardenplot.words import _

EXAMPLE = "kestrel-howe.gardenplot"


def run(path: str | None) -> int:
    """Open the window on a plan, else on the last one, at first on the example; returns when it is closed."""
    if not _has_screen():
        raise GardenplotError(
            _("there is no screen here; the commands count, sheet, draw, dates, supplies, fill and check need none")
        )
    lacking = missing()
    if lacking:
        raise GardenplotError(missing_words(lacking))
    app = made_app()
    window = MainWindow()
    watch(window)
    if path is not None:
        window.document.open(Path(path))
        remember(Path(path))
    else:
        last = recent()
        window.filing.open(last[0] if last else sample(EXAMPLE), example=not last)
    window.show()
    journal = Journal(window.document)
    journal.failed.connect(window.tell)
    if any(journal_folder().glob(f"*{ENDS}")):
        offer_left_work(window, journal)
    status = app.exec()
    journal.end()
    return status


def made_app() -> QApplication:
    """The one application object, dressed."""
    keep_memory()
    QCoreApplication.setOrganizationName("gardenplot")
    QCoreApplication.setApplicationName("gardenplot")
    QCoreApplication.setApplicationVersion(__version__)
    app = QApplication.instance()
    made = app if isinstance(app, QApplication) else QApplication(sys.argv[:1])
    _speak_one_language()
    dress(made)
    return made


def _speak_one_language() -> None:
    """Name days and months as the words do and as lines of days are read; Qt took the system's names for Python too.

    Weeks begin where the system has them begin.
    """
    locale.setlocale(locale.LC_TIME, "C")
    QLocale.setDefault(QLocale(QLocale.Language.English, QLocale.system().territory()))


def _has_screen() -> bool:
    """Whether a window can be shown: X11 or Wayland on Linux, or a platform that was named."""
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return not sys.platform.startswith("linux") or any(os.environ.get(name) for name in names)
