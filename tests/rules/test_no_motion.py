"""Nothing flashes or moves by itself: no animations, and no clocks but those that have a reason."""

import re
from collections.abc import Iterator
from pathlib import Path

from tests.rules.source_tree import ROOT, Offence, assert_none, modules, outlived, write_tree

_MOVES = re.compile(r"\b(Q\w*Animation\w*|QTimeLine|QMovie|QGraphicsEffect|startTimer|QTimer\(|setLoopCount)")

EXCEPTIONS: dict[str, str] = {
    "gardenplot/window/garbage.py": "looks for garbage in the window's own thread; nothing is shown",
    "gardenplot/window/long_work.py": "looks how far long work has come, for its bar of progress",
}
"""Modules that hold a clock or a motion on purpose, by path, and what it explains."""


def motions(root: Path) -> Iterator[Offence]:
    """Modules that could let something on the screen move or flash."""
    for module in modules(root):
        found = _MOVES.search(module.text)
        if found:
            yield Offence(str(module.path), f"{found[0].rstrip('(')} could move or flash something")


def test_nothing_moves_by_itself() -> None:
    assert_none(motions(ROOT), excused=EXCEPTIONS)


def test_each_exception_is_still_needed() -> None:
    assert not outlived(EXCEPTIONS, motions(ROOT))


def test_motions_are_found_and_a_single_shot_is_none(tmp_path: Path) -> None:
    files = {
        "gardenplot/window/a.py": "from PySide6.QtCore import QPropertyAnimation",
        "gardenplot/window/b.py": "clock = QTimer(self)",
        "gardenplot/window/c.py": "QTimer.singleShot(0, self, self.look)",
        "gardenplot/window/d.py": "self.startTimer(500)",
    }
    found = [offence.where for offence in motions(write_tree(tmp_path, files))]
    assert found == [path for path in files if not path.endswith("c.py")]
