"""One monkey at one window: random events by a seed, and after each of them a look whether all still holds.

Run as a program with a seed, the numbers of the events as JSON, and a file that tells how far it has come, it prints
what it did; what it broke goes to the error output, and the status is then 1. Each event has dice of its own, so that
some can be left out and the others stay what they are, as far as there is the same to be hit.
"""

import faulthandler
import json
import random
import resource
import sys
import time
import traceback
import warnings
from collections import Counter, deque
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from unittest.mock import patch
from zlib import crc32

from PySide6.QtCore import QSettings, Qt, QTimer, QtMsgType, qInstallMessageHandler
from PySide6.QtGui import QDrag
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QWidget

from gardenplot.files import sample
from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan
from gardenplot.plan.unsaved import newest_of
from gardenplot.window.journal import Journal
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from gardenplot.window.theme import dress
from tests.attack.monkey_hand import Hand
from tests.attack.monkey_laws import agree, go_back, hold
from tests.attack.monkey_wait import InTurn, look_at_work
from tests.attack.monkey_words import FILES
from tests.plans import metric_plan
from tests.today import TODAY
from tests.window.walk import settle, text_of

EXAMPLES = ("kestrel-howe", "larch-bend", "otter-steep", "tarn-garth")
QUIET = ("plugin does not support",)
"""What Qt says because there is no screen."""
_LOOK_CLOSELY, _GO_BACK = 50, 400
"""Of so many events, one is followed by the laws that take longer, and one by a way back to the first plan."""
_PATIENCE = 40
"""So many events a dialog is left open before it is closed."""
_NEVER = 2**31 - 1
"""Milliseconds after which a clock is not heard of in a run."""
_HANGS = 600
"""Seconds after which an event is taken for one that never ends."""


class Monkey:
    """Does its events one after another; where one opens a dialog that waits for its end, the next ones go there."""

    def __init__(self, seed: int, numbers: list[int], folder: Path, progress: Path) -> None:
        self._seed, self._left, self.folder, self._progress = seed, deque(numbers), folder, progress
        self.broken: list[str] = []
        self.course: list[str] = []
        self.met: Counter[str] = Counter()
        self.slowest = (0.0, 0)
        self.window = MainWindow()
        self.hand = Hand(self.window)
        self._open: list[QWidget | None] = []
        self._drags = 0
        self._is_due = False
        self._first = self._last = Plan()
        self.window.document.opened.connect(self._begin_anew)
        self.window.document.changed.connect(lambda: self.met.update(["changes of the plan"]))

    def _begin_anew(self) -> None:
        self._first = self.window.document.plan
        self.met["plans opened"] += 1

    def go(self) -> None:
        """Do all events, then undo everything."""
        while self._left and not self.broken:
            self._step()
        self._leave()
        self._look(lambda: go_back(self.window, self._first))
        self._look(lambda: hold(self.window))

    def _step(self) -> None:
        number = self._left.popleft()
        self._progress.write_text(str(number))
        faulthandler.dump_traceback_later(_HANGS, exit=True)
        self.hand.dice, began = random.Random(f"{self._seed}:{number}"), time.process_time()
        self._open.append(_waiting())
        self._have_looked_at()
        try:
            look_at_work()
            top = self._top()
            self._note(number, top)
            self.hand.act(top)
        except Exception:
            self.broken.append(traceback.format_exc())
        self._open.pop()
        QApplication.processEvents()
        if not self._open:
            self.slowest = max(self.slowest, (time.process_time() - began, number))
        self._check(number)

    def _note(self, number: int, top: QWidget) -> None:
        """Note what an event meets, by which two runs are told from one another."""
        self.met[f"events at {type(top).__name__}"] += 1
        focus, plan = QApplication.focusWidget(), self.window.document.plan
        place = f"{top.width()}x{top.height()} {type(focus).__name__} {len(plan.plantings)} {len(plan.beds)}"
        self.course.append(f"{number} {type(top).__name__} {place} {self.window.document.stack.index()}")

    def _have_looked_at(self) -> None:
        """Look soon whether the event under way waits for the end of something that it opened."""
        if not self._is_due:
            self._is_due = True
            QTimer.singleShot(1, self._follow)

    def _follow(self) -> None:
        self._is_due = False
        if not self._open:
            return
        opened, drags = self._open[-1], self._drags
        done = 0
        while self._left and not self.broken and self._is_inside(opened, drags):
            self._step()
            done += 1
            if done > _PATIENCE or len(self._open) > 8:
                self._close(_waiting())
            if done > 2 * _PATIENCE:
                self.broken.append(f"{type(_waiting()).__name__} cannot be left")
        if (self.broken or not self._left) and self._is_inside(opened, drags):
            self._close(_waiting())
        if self._open:
            self._have_looked_at()

    def _is_inside(self, opened: QWidget | None, drags: int) -> bool:
        """Whether something was opened that what is under way waits for, or a drag between windows goes on."""
        return _waiting() not in (None, opened) or (drags > 0 and self._drags == drags)

    def _close(self, waits: QWidget | None) -> None:
        self.hand.let_go()
        if isinstance(waits, QDialog):
            waits.reject()
        elif waits is not None:
            waits.close()

    def _leave(self) -> None:
        """Let go of everything."""
        self.hand.let_go()
        for _turn in range(10):
            self._close(_waiting())
            QApplication.processEvents()
        for one in QApplication.topLevelWidgets():
            if one is not self.window and one.isVisible():
                one.close()
        self.window.canvas.stage.give_up()
        QApplication.processEvents()

    def _top(self) -> QWidget:
        """The window that is in front: a menu, a dialog that waits, else any that is open, mostly the main one."""
        waits = _waiting()
        if waits is not None:
            return waits
        if not self.window.isVisible():
            self.window.show()
            settle(self.window)
        # Qt gives them in no order.
        beside = [one for one in QApplication.topLevelWidgets() if isinstance(one, QDialog) and one.isVisible()]
        beside.sort(key=lambda one: (type(one).__name__, one.windowTitle()))
        return self.hand.dice.choice(beside) if beside and self.hand.dice.random() < 0.4 else self.window

    def _check(self, number: int) -> None:
        plan = self.window.document.plan
        if plan is not self._last:
            self._last = plan
            self._look(lambda: agree(self.window))
        if number % _LOOK_CLOSELY == 0:
            self._look(lambda: hold(self.window))
        if number % _GO_BACK == 0 and not self._open and _waiting() is None and self.hand.held is None:
            self._look(lambda: go_back(self.window, self._first))

    def _look(self, at_law: Callable[[], object]) -> None:
        if self.broken:
            return
        try:
            at_law()
        except Exception:
            self.broken.append(traceback.format_exc())

    def note_drag(self, more: int) -> None:
        """A drag between windows has begun, or is over."""
        self._drags += more

    def named(self) -> str:
        """A file for whoever asks for one."""
        name = self.hand.dice.choice(FILES)
        return str(self.folder / name) if name else ""


def _waiting() -> QWidget | None:
    return QApplication.activePopupWidget() or QApplication.activeModalWidget()


def _stand_in(monkey: Monkey) -> None:
    """Answer what the system would ask: for files, for a printer; follow drags; keep what went wrong."""

    class Printing(QPrintDialog):
        def __init__(self, printer: QPrinter, parent: QWidget) -> None:
            printer.setOutputFileName(str(monkey.folder / "printed.pdf"))
            super().__init__(printer, parent)

        def exec(self) -> int:
            return monkey.hand.dice.choice((0, 1))

    class Drag(QDrag):
        def exec(self, actions: Qt.DropAction) -> Qt.DropAction:  # type: ignore[override]  # the one way it is called
            monkey.note_drag(1)
            monkey.met["drags from the shelf"] += 1
            try:
                return super().exec(actions)
            finally:
                monkey.note_drag(-1)

    patch.object(QFileDialog, "getExistingDirectory", lambda *_asked: monkey.named()).start()
    for asks in ("getSaveFileName", "getOpenFileName"):
        patch.object(QFileDialog, asks, lambda *_asked: (monkey.named(), "")).start()
    patch("gardenplot.window.long_work.Apart", InTurn).start()
    patch("gardenplot.window.long_work._LOOK_EVERY", _NEVER).start()
    patch("gardenplot.window.preview.QPrintDialog", Printing).start()
    patch("gardenplot.window.shelf.QDrag", Drag).start()

    def hear(kind: QtMsgType, _context: object, words: str) -> None:
        if kind != QtMsgType.QtDebugMsg and not any(known in words for known in QUIET):
            monkey.broken.append(f"Qt says: {words}\n{''.join(traceback.format_stack(limit=12))}")

    def fail(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        monkey.broken.append("".join(traceback.format_exception(kind, error, trace)))

    def lose(told: "sys.UnraisableHookArgs") -> None:
        monkey.broken.append(f"unraisable: {told.exc_value!r} in {told.object!r}")

    qInstallMessageHandler(hear)
    sys.excepthook, sys.unraisablehook = fail, lose


def begun_with(seed: int) -> Plan:
    """The plan of a seed."""
    names = (None, *EXAMPLES)
    name = names[seed % len(names)]
    return read_plan(sample(f"{name}.gardenplot")).plan if name else metric_plan()


def attack(seed: int, numbers: list[int], folder: Path, progress: Path) -> dict[str, object]:
    """Let a monkey do these events; what it did, or under "broken" what went wrong."""
    app = made_app()
    app.setQuitOnLastWindowClosed(False)
    app.setCursorFlashTime(0)
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(folder))
    (folder / "broken.gardenplot").write_text('{"gardenplot": 1, "beds": [{}]')
    with text_of(app, 1.5 if seed % 4 == 3 else 1.0, dress):
        monkey = Monkey(seed, numbers, folder, progress)
        _stand_in(monkey)
        window = monkey.window
        window.document.today = lambda: TODAY
        window.document.start(begun_with(seed))
        window.show()
        settle(window)
        journal = Journal(window.document)
        monkey.go()
        if not monkey.broken and journal.wait() and not window.document.is_saved:
            kept = newest_of([path for path in journal.paths if path.exists()]).plan
            if kept != window.document.plan:
                monkey.broken.append("the journal has another plan than the window")
        journal.end()
        window.document.start(window.document.plan)
        window.close()
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    course = crc32("\n".join(monkey.course).encode())
    return {
        "broken": monkey.broken[:1],
        "course": course,
        "MB": memory,
        "processor s": time.process_time(),
        **monkey.met,
    }


if __name__ == "__main__":
    faulthandler.enable()
    warnings.simplefilter("error")
    seed, numbers, folder, progress = int(sys.argv[1]), json.loads(sys.argv[2]), Path(sys.argv[3]), Path(sys.argv[4])
    came = attack(seed, list(range(numbers)) if isinstance(numbers, int) else numbers, folder, progress)
    print(json.dumps(came))
    sys.exit(1 if came["broken"] else 0)
