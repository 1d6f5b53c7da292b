"""The unforeseen: one hook that saves the plan beside its file first, then shows what happened in words to copy."""

import os
import re
import sys
import traceback
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QDir
from PySide6.QtWidgets import QMessageBox

from gardenplot import __version__
from gardenplot.errors import FileError
from gardenplot.plan.disk_words import why
from gardenplot.plan.file import SUFFIX, file_name, write_plan
from gardenplot.window.main import MainWindow
from gardenplot.window.plain import as_is
from gardenplot.words import _

_QUOTED = re.compile(r"""(['"])(?:[A-Za-z]:)?[^'"\n]*[/\\][^'"\n]*\1""")
_BARE = re.compile(
    r"(?<!\w)(?:~?/|[A-Za-z]:[/\\]|\\\\|file:)(?:[^\n]*[/\\])?" + rf"(?:[^\n]*{re.escape(SUFFIX)}|[^\s'\":,;)]*)"
)
"""What may be a path: anything in quotes with a slash; else from what begins like one to the last slash and name."""
_MOST_TOLD = 20


def watch(window: MainWindow) -> None:
    """From now on nothing unforeseen ends the program without a word."""
    told = Told(window)

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        sys.__excepthook__(kind, error, trace)
        if not issubclass(kind, KeyboardInterrupt):
            told.tell(report(kind, error, trace))

    sys.excepthook = hook


class Told:
    """Saves the plan aside and tells what happened: each thing once, and one box at a time.

    What goes wrong while something is painted goes wrong again as often as that is painted, also behind the box.
    """

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._known: set[str] = set()
        self._is_open = False
        self._saved: Path | None = None

    def tell(self, words: str) -> None:
        """Save the plan aside, and show the words unless they were shown before."""
        if self._is_open or words in self._known or len(self._known) >= _MOST_TOLD:
            self._known.add(words)
            return
        self._known.add(words)
        self._is_open = True
        try:
            self._saved = rescued(self._window, self._saved)
            _show(self._window, words, self._saved)
        finally:
            self._is_open = False


def rescued(window: MainWindow, before: Path | None = None) -> Path | None:
    """Save the plan beside its file or else in the home folder, where it was saved `before` or under a free name.

    None where even that fails.
    """
    document, home = window.document, Path(QDir.homePath())
    own = document.path or home / file_name(document.name)
    for folder in (own.parent, home):
        beside = before if before and before.parent == folder else _free(folder, own.stem)
        try:
            write_plan(beside, document.plan)
        except FileError:
            continue
        return beside
    return None


def _free(folder: Path, stem: str) -> Path:
    """A name that no earlier rescue has, so that none is written over."""
    names: Iterator[str] = (f"-{number}" if number > 1 else "" for number in range(1, 1000))
    free = (folder / f"{stem}-rescued{number}{SUFFIX}" for number in names)
    return next((path for path in free if not os.path.lexists(path)), folder / f"{stem}-rescued{SUFFIX}")


def report(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> str:
    """What happened and from what it came, without the folders and files of this machine."""
    head = f"gardenplot {__version__}, Python {sys.version.split()[0]}, {sys.platform}"
    lines = [head, *_frames(trace), f"{kind.__name__}: {_said(error)}"]
    cause, seen = error.__cause__ or error.__context__, {id(error)}
    while cause is not None and id(cause) not in seen:
        seen.add(id(cause))
        lines += ["which came from", *_frames(cause.__traceback__), f"{type(cause).__name__}: {_said(cause)}"]
        cause = cause.__cause__ or cause.__context__
    return "\n".join(lines)


def _frames(trace: TracebackType | None) -> Iterator[str]:
    return (f"  {Path(one.filename).name}:{one.lineno} {one.name}" for one in traceback.extract_tb(trace))


def _said(error: BaseException) -> str:
    """The message of an error; an error of the system names its files apart from its reason."""
    words = why(error) if isinstance(error, OSError) and error.errno else str(error)
    return without_paths(words)[:500]


def without_paths(words: str) -> str:
    """Words with all in them left out that could be a path of this machine, or the name of who uses it."""
    words = _BARE.sub("(a path)", _QUOTED.sub("(a path)", words))
    home = Path.home()
    for name in (str(home), home.name):
        if len(name) > 2:
            words = words.replace(name, "(a name)")
    return words


def _show(window: MainWindow, words: str, saved: Path | None) -> None:
    box = QMessageBox(QMessageBox.Icon.Warning, _("Something went wrong"), "", QMessageBox.StandardButton.Ok, window)
    kept = _("The plan was saved as {path}.").format(path=saved) if saved else _("The plan could not be saved aside.")
    box.setText(as_is(_("That was not meant to happen; the program goes on where it can.") + " " + kept))
    box.setDetailedText(words)
    box.exec()
