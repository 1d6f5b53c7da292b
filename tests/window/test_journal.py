"""The journal: what is on the screen and not saved is on the disk within a second; what is saved is not."""

import errno
import gc
import os
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import NoReturn

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMessageBox
from pytestqt.qtbot import QtBot

from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import write_plan
from gardenplot.plan.holding import hold
from gardenplot.plan.unsaved import Pen, Unsaved, newest_of, read_unsaved
from gardenplot.window.document import Document
from gardenplot.window.journal import ENDS, HELD, Journal, journal_folder
from gardenplot.window.left_work import left_work, offer_left_work
from gardenplot.window.main import MainWindow
from gardenplot.window.plans_dialog import PlansDialog
from tests.plans import feet_plan, metric_plan, plans

# Its clock needs an application, whichever test runs first.
pytestmark = pytest.mark.usefixtures("dressed")

Look = Callable[[PlansDialog], object]


@pytest.fixture
def document() -> Document:
    """A document without a window."""
    fresh = Document()
    fresh.start(metric_plan())
    return fresh


@pytest.fixture
def journal(document: Document) -> Iterator[Journal]:
    """The journal of that document."""
    kept = Journal(document)
    yield kept
    kept.end()


@pytest.mark.usefixtures("python_looks")
def test_python_s_own_looks_for_garbage_are_put_off_before_anything_is_edited(document: Document) -> None:
    """They would hold up a filling that is drawn, with a large plan for a quarter of a second."""
    assert gc.isenabled()
    journal = Journal(document)
    assert document.is_saved
    assert not gc.isenabled()
    journal.end()
    assert gc.isenabled()


def rename(document: Document, name: str) -> None:
    document.change("Name of the place", change_place(document.plan, name=name))


def newest(journal: Journal) -> Unsaved:
    return newest_of(path for path in journal.paths if path.exists())


def journals() -> list[str]:
    return sorted(path.suffix for path in journal_folder().glob("*"))


def test_every_edit_is_written_down_within_a_second(document: Document, journal: Journal, tmp_path: Path) -> None:
    document.save(tmp_path / "sill.gardenplot")
    for number in range(5):
        rename(document, f"Sill {number}")
        began = time.monotonic()
        assert journal.wait(1)
        assert time.monotonic() - began < 1
        unsaved = newest(journal)
        assert unsaved.plan == document.plan
        assert (unsaved.path, unsaved.seen) == (document.path, document.seen)
        assert abs((datetime.now(UTC) - unsaved.changed).total_seconds()) < 5


def test_an_edit_does_not_wait_for_the_disk(
    document: Document, journal: Journal, monkeypatch: pytest.MonkeyPatch
) -> None:
    rename(document, "Sill")
    assert journal.wait(1)
    fsync = os.fsync

    def slow(handle: int) -> None:
        time.sleep(0.5)
        fsync(handle)

    monkeypatch.setattr(os, "fsync", slow)
    began = time.monotonic()
    for number in range(20):
        rename(document, f"Sill {number}")
    assert time.monotonic() - began < 0.4
    assert journal.wait(5)
    assert newest(journal).plan.place.name == "Sill 19"


def test_what_is_saved_undone_or_opened_is_in_no_journal(
    document: Document, journal: Journal, tmp_path: Path
) -> None:
    assert journals() == []
    for done in (
        lambda: document.save(tmp_path / "sill.gardenplot"),
        document.stack.undo,
        lambda: document.open(tmp_path / "sill.gardenplot"),
        lambda: document.start(metric_plan()),
    ):
        rename(document, "Sill" if document.plan.place.name != "Sill" else "Other")
        assert journal.wait(2)
        assert ENDS in journals()
        while not document.is_saved:
            done()
        assert journal.wait(2)
        assert ENDS not in journals()


def test_a_new_plan_is_written_down_before_it_is_first_saved(document: Document, journal: Journal) -> None:
    document.start(feet_plan(), kept=False)
    assert journal.wait(2)
    assert newest(journal).plan == feet_plan()


def test_a_finished_session_leaves_nothing_though_its_changes_were_discarded(document: Document) -> None:
    journal = Journal(document)
    rename(document, "Sill")
    assert journal.wait(2)
    journal.end()
    assert journals() == []


def test_sessions_side_by_side_keep_journals_of_their_own(document: Document, journal: Journal) -> None:
    other = Document()
    other.start(feet_plan())
    theirs = Journal(other)
    for one in (document, other):
        rename(one, "Mine" if one is document else "Theirs")
    assert journal.wait(2)
    assert theirs.wait(2)
    assert newest(journal).plan.place.name == "Mine"
    assert newest(theirs).plan.place.name == "Theirs"
    assert left_work() == [], "both are alive"
    theirs.end()
    assert newest(journal).plan.place.name == "Mine"


def test_a_full_disk_is_said_once_until_there_is_room_again(
    document: Document, journal: Journal, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def full(*_given: object) -> NoReturn:
        raise OSError(errno.ENOSPC, "No space left on device")

    told: list[str] = []
    journal.failed.connect(told.append)
    with monkeypatch.context() as failing:
        failing.setattr(os, "replace", full)
        for name in ("One", "Two"):
            rename(document, name)
            assert not journal.wait(2)
    qtbot.waitUntil(lambda: len(told) == 1)
    assert "the disk is full" in told[0]
    rename(document, "Three")
    assert journal.wait(2)
    assert newest(journal).plan.place.name == "Three"


def test_a_disk_that_takes_seconds_to_flush_keeps_nothing_from_being_written(
    document: Document, journal: Journal, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An attack found it: sessions that were killed on a busy machine had lost more than a second."""
    monkeypatch.setattr(os, "fsync", lambda _handle: time.sleep(1.5))
    for number in range(4):
        rename(document, f"Sill {number}")
        assert journal.wait(1)
        assert newest(journal).plan.place.name == f"Sill {number}"


def test_what_was_flushed_last_is_not_written_over(
    document: Document, journal: Journal, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    flushed: list[Path] = []
    monkeypatch.setattr("gardenplot.window.journal.flush_file", flushed.append)
    for number in range(4):
        rename(document, f"Sill {number}")
        assert journal.wait(2)
        qtbot.waitUntil(lambda: len(flushed) == document.stack.index())
        qtbot.wait(20)
        last = journal.paths[number % 2]
        assert flushed[-1] == last
        assert read_unsaved(last).plan.place.name == f"Sill {number}"
    assert read_unsaved(journal.paths[0]).plan.place.name == "Sill 2"


@pytest.mark.parametrize(
    "name", ["spring.gardenplot", "Frühling <b>.gardenplot", os.fsdecode(b"\xff\xfe.gardenplot")]
)
def test_what_is_written_down_is_read_back_the_same(tmp_path: Path, name: str) -> None:
    unsaved = Unsaved(feet_plan(), tmp_path / name, "mark", datetime(2027, 3, 1, 12, 30, tzinfo=UTC))
    (tmp_path / "journal").write_bytes(Pen().text(unsaved))
    assert read_unsaved(tmp_path / "journal") == unsaved


@given(st.data())
def test_one_pen_writes_any_plan_after_any_other(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    pen, path = Pen(), tmp_path_factory.getbasetemp() / "journal"
    plan = data.draw(plans())
    for name in ("", "one", "{two}"):
        unsaved = Unsaved(plan, None, None, datetime(2027, 3, 1, tzinfo=UTC))
        path.write_bytes(pen.text(unsaved))
        assert read_unsaved(path) == unsaved
        plan = change_place(data.draw(st.sampled_from((plan, metric_plan()))), name=name)


@pytest.mark.parametrize(
    "content",
    [b"", b"{", b"\xff", b"[]", b'{"gardenplot journal": 1}', b'{"gardenplot journal": 2, "path": null}',
     b'{"gardenplot journal": 1, "path": 3, "seen": null, "changed": "x", "plan": {"gardenplot": 1}}',
     b'{"gardenplot journal": 1, "path": null, "seen": null, "changed": "x", "plan": {"gardenplot": 1}}'],
)  # fmt: skip
def test_a_damaged_journal_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "journal").write_bytes(content)
    with pytest.raises(FileError):
        read_unsaved(tmp_path / "journal")


def leave(plan: Plan, path: Path | None = None, *, minute: int = 0) -> Path:
    """Leave work as a session does that is killed."""
    journal_folder().mkdir(parents=True, exist_ok=True)
    left = journal_folder() / f"left-{minute}.a{ENDS}"
    left.write_bytes(Pen().text(Unsaved(plan, path, "mark", datetime(2027, 3, 1, 12, minute, tzinfo=UTC))))
    return left


@pytest.fixture
def offered(window: MainWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot) -> Iterator[Callable[..., int]]:
    """Offer what is left in the window and answer each dialog in turn; how many were shown."""
    journal = Journal(window.document)

    def offer(*looks: Look) -> int:
        left = list(looks)

        def exec_(dialog: PlansDialog) -> int:
            dialog.show()
            qtbot.waitUntil(lambda: len(dialog.plans) == dialog.table.topLevelItemCount())
            left.pop(0)(dialog)
            return dialog.result()

        monkeypatch.setattr(PlansDialog, "exec", exec_)
        offer_left_work(window, journal)
        return len(looks) - len(left)

    yield offer
    journal.end()


def press(number: int) -> Look:
    return lambda dialog: QTest.mouseClick(dialog.buttons[number], Qt.MouseButton.LeftButton)


def test_work_that_was_left_is_offered_and_taken_up_as_it_was(
    window: MainWindow, offered: Callable[..., int], tmp_path: Path
) -> None:
    left = leave(feet_plan(), tmp_path / "feet.gardenplot")
    shown: list[list[str]] = []

    def look(dialog: PlansDialog) -> None:
        item = dialog.table.topLevelItem(0)
        assert item is not None
        shown.append([item.text(column) for column in range(4)])
        press(0)(dialog)

    assert offered(look) == 1
    document = window.document
    assert document.plan == feet_plan()
    assert (document.path, document.seen) == (tmp_path / "feet.gardenplot", "mark")
    assert not document.is_saved
    assert window.isWindowModified()
    assert not left.exists()
    assert shown[0][0] == feet_plan().place.name
    assert shown[0][1] == "feet.gardenplot"
    assert "1 Mar 2027" in shown[0][2]
    assert newest_of(journal_folder().glob(f"*{ENDS}")).plan == feet_plan(), "it is in this session's journal now"


def test_the_last_change_comes_first_and_what_is_not_taken_up_is_offered_again(
    window: MainWindow, offered: Callable[..., int]
) -> None:
    leave(metric_plan(), minute=1)
    leave(feet_plan(), minute=2)
    assert offered(press(0)) == 1
    assert window.document.plan == feet_plan()
    (again,) = left_work()
    assert again.unsaved is not None
    assert again.unsaved.plan == metric_plan()
    again.let_go()


def test_asked_next_time_all_of_it_stays(window: MainWindow, offered: Callable[..., int]) -> None:
    before, left = window.document.plan, leave(feet_plan())
    for _start in range(2):
        assert offered(PlansDialog.reject) == 1
    assert window.document.plan is before
    assert left.exists()


@pytest.mark.parametrize("sure", [True, False])
def test_it_is_thrown_away_only_after_a_question(
    offered: Callable[..., int], monkeypatch: pytest.MonkeyPatch, *, sure: bool
) -> None:
    asked: list[str] = []

    def answer(box: QMessageBox) -> int:
        asked.append(box.text())
        assert box.defaultButton().text().replace("&", "") == "Cancel"
        words = "Throw away" if sure else "Cancel"
        next(one for one in box.buttons() if one.text().replace("&", "") == words).click()
        return 0

    monkeypatch.setattr(QMessageBox, "exec", answer)
    left = leave(feet_plan())
    offered(press(1), PlansDialog.reject)
    assert left.exists() != sure
    assert "cannot be brought back" in asked[0]


def test_a_damaged_journal_can_only_be_thrown_away(offered: Callable[..., int]) -> None:
    left = leave(feet_plan())
    left.write_bytes(b"{")
    enabled: list[list[bool]] = []

    def look(dialog: PlansDialog) -> None:
        enabled.append([button.isEnabled() for button in dialog.buttons])
        dialog.reject()

    offered(look)
    assert enabled == [[False, True]]
    assert left.exists()


def test_what_reached_its_file_before_the_end_is_not_offered(tmp_path: Path) -> None:
    path = tmp_path / "feet.gardenplot"
    write_plan(path, feet_plan())
    leave(feet_plan(), path)
    assert left_work() == []
    assert journals() == []


def test_what_a_living_session_holds_is_not_offered() -> None:
    leave(feet_plan())
    held = hold(journal_folder() / f"left-0{HELD}")
    assert held is not None
    assert left_work() == []
    held.close()
    (found,) = left_work()
    found.remove()
    assert journals() == []
