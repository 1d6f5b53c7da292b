"""A screen of its own for a journey: Xvfb, and on it the real window in a process of its own.

The window lives in that process's main thread, the journey in a second one.
"""

import shutil
import subprocess
import sys
import traceback
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from threading import Thread
from types import TracebackType

import pytest
from PySide6.QtCore import QMessageLogContext, QPoint, Qt, QtMsgType, qInstallMessageHandler
from PySide6.QtWidgets import QApplication, QMessageBox

from gardenplot.plan import Plan
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from tests.journeys.display import display, surroundings
from tests.journeys.person import Person
from tests.journeys.places import middle_of
from tests.today import TODAY

Journey = Callable[[Person], None]
_LONGEST = 120
_NEEDED = ("Xvfb", "xdotool")
_ROOT = Path(__file__).resolve().parents[2]

needs_screen = pytest.mark.skipif(
    not all(map(shutil.which, _NEEDED)), reason=f"needs {' and '.join(_NEEDED)} on the path"
)


def walk(journey: Journey, folder: Path) -> None:
    """Let a person walk a journey from an empty plan; where it does not end well, fail with all that was said."""
    with display() as shown:
        walked = (__name__, journey.__module__, journey.__name__, str(folder))
        command = [sys.executable, "-W", "error", "-m", "tests.as_program", *walked]
        run = subprocess.run(
            command,
            cwd=_ROOT,
            env=surroundings(shown, folder),
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            encoding="utf-8",
            timeout=_LONGEST,
            check=False,
        )
    assert run.returncode == 0, f"the journey ended with {run.returncode}; pictures in {folder}\n{run.stdout}"


class Troubles(list[str]):
    """What must not happen on a journey: Qt's warnings and errors that nobody caught."""

    def watch(self) -> None:
        """Hear of all troubles from now on."""
        qInstallMessageHandler(self._hear)
        sys.excepthook = self._catch

    def _hear(self, kind: QtMsgType, _context: QMessageLogContext, message: str) -> None:
        if kind not in (QtMsgType.QtDebugMsg, QtMsgType.QtInfoMsg):
            self.append(message)

    def _catch(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        self.append("".join(traceback.format_exception(kind, error, trace)))


def _walked(journey: Journey, person: Person, troubles: Troubles) -> None:
    """Walk to the end, where the window closes, and leave Qt's loop with the outcome.

    It closes without a question, but of a plan that was begun and never saved: that is let go.
    """
    try:
        journey(person)
        was_begun = person.see(
            lambda: not person.window.document.is_saved and not person.window.document.stack.index()
        )
        person.press("ctrl+q")
        if was_begun:
            person.wait_until(lambda: isinstance(QApplication.activeModalWidget(), QMessageBox), "the question")
            person.click(_discards)
        person.wait_until(lambda: not person.window.isVisible(), "the window's end")
    except BaseException:
        troubles.append(traceback.format_exc())
        person.photograph("failed")
    person.see(lambda: QApplication.exit(1 if troubles else 0))


def _discards(window: MainWindow) -> QPoint:
    """The button that lets go of what is not saved."""
    box = QApplication.activeModalWidget()
    assert isinstance(box, QMessageBox)
    return middle_of(box.button(QMessageBox.StandardButton.Discard))(window)


def _main(module: str, name: str, folder: str) -> int:
    troubles = Troubles()
    troubles.watch()
    QApplication.setAttribute(Qt.ApplicationAttribute.AA_DontUseNativeDialogs)
    app = made_app()
    app.setQuitOnLastWindowClosed(False)
    window = MainWindow()
    window.document.today = lambda: TODAY
    window.document.start(Plan())
    window.move(60, 30)
    window.show()
    person = Person(window, Path(folder))
    journey: Journey = getattr(import_module(module), name)
    thread = Thread(target=_walked, args=(journey, person, troubles), daemon=True)
    thread.start()
    outcome = app.exec()
    thread.join()
    print("\n".join(troubles))
    return outcome


if __name__ == "__main__":
    sys.exit(_main(*sys.argv[1:]))
