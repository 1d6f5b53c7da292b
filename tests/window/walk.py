"""A walk over the window and every dialog: each shown, with all its parts in the order of the Tab key."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from gardenplot.gestures.cover_typed import usual_cover
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import text_of as written
from gardenplot.plan.holding import hold
from gardenplot.plan.unsaved import Unsaved
from gardenplot.sheets.choices import Kind
from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.compare_dialog import CompareDialog
from gardenplot.window.fill_dialog import FillDialog
from gardenplot.window.forms import AskDialog
from gardenplot.window.ground_requests import ask_cover, ask_tunnel
from gardenplot.window.keys_page import KeysPage
from gardenplot.window.left_work import Left, LeftDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.new_plan import ask_new_plan
from gardenplot.window.own_folder import own_folder, versions
from gardenplot.window.plans_dialog import PlansDialog
from gardenplot.window.preview import Preview
from gardenplot.window.prints import print_of
from gardenplot.window.requests import ask_bed, ask_crop, ask_order, ask_wish
from gardenplot.window.versions_dialog import VersionsDialog
from gardenplot.window.working_dialog import WorkingDialog
from tests.colours_seen import Values, linear
from tests.scenarios.again_plans import both_short, two_short

Pixels = npt.NDArray[np.uint8]


def _ask_series(window: MainWindow) -> None:
    window.sight.select("b1", "p1")
    window.series.repeat()


def _with_bed(window: MainWindow) -> MainWindow:
    window.sight.select(window.document.plan.beds[0].id)
    return window


def _choose_thing(window: MainWindow) -> None:
    table = window.ledger.supplies.table
    window.ledger.go_to(table)
    group = table.topLevelItem(0)
    thing = group.child(0) if group else None
    assert thing is not None
    table.setCurrentItem(thing)


def _show_working(window: MainWindow) -> None:
    _choose_thing(window)
    window.supplies.show_working()


def _ask_store(window: MainWindow) -> None:
    _choose_thing(window)
    window.supplies.store()


def _ways_out(window: MainWindow) -> None:
    window.document.start(two_short())
    window.ways.open()


def _plan_again(window: MainWindow) -> None:
    window.document.start(both_short())
    window.document.today = lambda: date(2025, 4, 21)
    window.again.open()


def _show_versions(window: MainWindow) -> None:
    path = own_folder() / "sill.gardenplot"
    for day in (1, 2):
        versions().keep(path, written(change_place(window.document.plan, name=f"Sill {day}")).encode())
    VersionsDialog(path, window.document.plan, window).exec()


def _show_left_work(window: MainWindow) -> None:
    plan, changed = window.document.plan, datetime(2027, 3, 1, 12, tzinfo=UTC)
    folder = own_folder()
    folder.mkdir(parents=True, exist_ok=True)
    held = hold(folder / "left")
    assert held is not None
    left = [
        Left("left", held, Unsaved(plan, None, None, changed)),
        Left("damaged", held, None, "is damaged"),
    ]
    LeftDialog(left, window).exec()
    held.close()


DIALOGS: dict[str, Callable[[MainWindow], object]] = {
    "add bed": lambda window: ask_bed(window.document, window),
    "seed packet": lambda window: ask_crop(window.document, window),
    "order": lambda window: ask_order(window.document, window),
    "wish": lambda window: ask_wish(window.document, window),
    "fill the season": lambda window: FillDialog(window.document, window.canvas.stage, window).exec(),
    "new plan": lambda window: ask_new_plan(window.document, window),
    "compare": lambda window: CompareDialog(window.document.plan, "p1", window).exec(),
    "cover": lambda window: ask_cover(
        window.document, window, usual_cover(window.document.plan, window.document.plan.beds[0].id, None)
    ),
    "ways out": _ways_out,
    "plan again": _plan_again,
    "tunnel": lambda window: ask_tunnel(window.document, window),
    "series": _ask_series,
    "working": _show_working,
    "store": _ask_store,
    "jugs": lambda window: _with_bed(window).feeds.jugs(),
    "feed": lambda window: window.feeds.feed(),
    "earlier versions": _show_versions,
    "unsaved work": _show_left_work,
    "keys": lambda window: KeysPage(window.registry, window).exec(),
    "bed sheet": lambda window: Preview(window.document.plan, "Plan", print_of(Kind.BEDS, "b1"), window).exec(),
}
"""Every dialog by name, and what opens it."""
WAITED_FOR = (AskDialog, CompareDialog, FillDialog, KeysPage, PlansDialog, Preview, WorkingDialog)
"""Dialogs that the program waits for; nobody has them when they are closed."""
_LIGHT = linear(np.arange(256) / 255)
STOPS = 80
"""More presses of Tab than any window has stops."""


def opened(window: MainWindow, name: str, monkey: Callable[[type, str, object], None]) -> QDialog:
    """A dialog, shown without waiting for its end."""
    kept: list[QDialog] = []

    def show(dialog: QDialog) -> int:
        kept.append(dialog)
        dialog.show()
        return 0

    for kind in WAITED_FOR:
        monkey(kind, "exec", show)
    DIALOGS[name](window)
    kept += [one for one in window.findChildren(AnswersDialog) if one.isVisible()]
    settle(kept[0])
    return kept[0]


def settle(shown: QWidget) -> None:
    """Let a window come to rest, with the keyboard in it and no caret that blinks."""
    QApplication.setCursorFlashTime(0)
    shown.activateWindow()
    for _turn in range(4):
        QApplication.processEvents()


def stops(shown: QWidget) -> list[QWidget]:
    """The parts that the Tab key comes to, each once, beginning with the one that has the keyboard."""
    found: list[QWidget] = []
    for _press in range(STOPS):
        part = shown.focusWidget()
        if part is None or part in found[:-1] or (found and part is found[0]):
            break
        # A date has stops of its own for day, month and year.
        if not found or part is not found[-1]:
            found.append(part)
        QTest.keyClick(part, Qt.Key.Key_Tab)
    return found


def picture(shown: QWidget, frame: QRect | None = None) -> Pixels:
    """A window as it looks, or a piece of it, as rows of red, green and blue."""
    image = shown.grab(frame or shown.rect()).toImage().convertToFormat(QImage.Format.Format_RGB888)
    wide, high, stride = image.width(), image.height(), image.bytesPerLine()
    return (
        np.frombuffer(bytes(image.constBits()), np.uint8).reshape(high, stride)[:, : wide * 3].reshape(high, wide, 3)
    )


def light(pixels: Pixels) -> Values:
    """Pixels as light, looked up, since a picture has a million values of 256 kinds."""
    return _LIGHT[pixels]


def keyed(pixels: Pixels) -> npt.NDArray[np.uint32]:
    """Pixels as one number each, which are sorted and compared much faster than three."""
    red, green, blue = (pixels[..., channel].astype(np.uint32) for channel in range(3))
    return np.asarray(red << 16 | green << 8 | blue, np.uint32)


def place(part: QWidget, shown: QWidget, around: int = 0) -> QRect:
    """Where a part is in its window, with some pixels around it."""
    frame = QRect(part.mapTo(shown, QPoint(0, 0)), part.size()).adjusted(-around, -around, around, around)
    return frame.intersected(shown.rect())


def cut(pixels: Pixels, frame: QRect) -> Pixels:
    """A piece of a picture."""
    return pixels[frame.top() : frame.bottom() + 1, frame.left() : frame.right() + 1]


def parts(shown: QWidget) -> Iterator[QWidget]:
    """Every part of a window that can be seen whole."""
    for part in shown.findChildren(QWidget):
        if part.isVisibleTo(shown) and is_whole(part):
            yield part


def is_whole(part: QWidget) -> bool:
    """Whether nothing of a part is scrolled out of sight."""
    return not part.size().isEmpty() and part.visibleRegion().boundingRect().size() == part.size()


@contextmanager
def text_of(app: QApplication, times: float, dress: Callable[[QApplication], None]) -> Iterator[None]:
    """Text so many times as large as usual, for windows that are made meanwhile."""
    usual = app.font()
    larger = app.font()
    larger.setPointSizeF(10.0 * times)
    app.setFont(larger)
    dress(app)
    try:
        yield
    finally:
        app.setFont(usual)
        dress(app)
