"""The power fails at any moment of a save or of the journal: the old plan or the new one is there, never neither."""

import threading
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from gardenplot.errors import FileError
from gardenplot.plan import Plan, file
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import flush_file, plan_of_content, read_plan, text_of, write_plan, write_whole
from gardenplot.plan.saving import save_plan
from gardenplot.plan.unsaved import newest_of
from gardenplot.plan.versions import Versions
from gardenplot.window.document import Document
from gardenplot.window.journal import Journal, journal_folder
from gardenplot.window.own_folder import VARIABLE
from tests.attack import turns
from tests.attack.killing import number_of
from tests.attack.power import Disk, Held
from tests.plans import feet_plan, metric_plan

OLD, NEW = (text_of(plan).encode() for plan in (metric_plan(), feet_plan()))


def numbered(number: int) -> Plan:
    """The plan of a number."""
    return change_place(metric_plan(), name=f"Plan {number}")


def saved(path: Path, patch: pytest.MonkeyPatch, *, exchanges: bool = True) -> tuple[set[bytes], set[bytes]]:
    """What may lie under a file's name if the power fails while it is saved, and after that."""
    found: set[bytes] = set()
    disk = Disk(path.parent.parent, lambda state: found.add(state.get(str(path), b"")))
    seen = read_plan(path).seen if path.exists() else None
    with patch.context() as followed:
        disk.follow(followed, exchanges=exchanges)
        save_plan(path, feet_plan(), seen, Versions(path.parent.parent / "own"))
        meanwhile = set(found)
        found.clear()
        disk.look_anew()
    return meanwhile, found


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Where a plan is to be saved."""
    (tmp_path / "plans").mkdir()
    return tmp_path / "plans" / "spring.gardenplot"


@pytest.mark.parametrize("exchanges", [True, False], ids=["exchanged", "renamed"])
def test_a_cut_while_a_plan_is_saved_leaves_the_old_one_or_the_new_one_and_then_the_new_one(
    path: Path, exchanges: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_plan(path, metric_plan())
    meanwhile, afterwards = saved(path, monkeypatch, exchanges=exchanges)
    assert meanwhile == {OLD, NEW}
    assert afterwards == {NEW}
    assert {plan_of_content(content).plan for content in meanwhile} == {metric_plan(), feet_plan()}


def test_a_cut_while_a_plan_is_saved_for_the_first_time_leaves_it_or_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    meanwhile, afterwards = saved(path, monkeypatch)
    assert meanwhile == {b"", NEW}
    assert afterwards == {NEW}


@pytest.mark.parametrize("left_out", ["the file", "the folder"])
def test_a_save_that_does_not_flush_is_found_out(path: Path, left_out: str, monkeypatch: pytest.MonkeyPatch) -> None:
    write_plan(path, metric_plan())
    if left_out == "the file":
        fill = file._fill
        monkeypatch.setattr(file, "_fill", lambda handle, content, flush: fill(handle, content, flush=not flush))
    else:
        monkeypatch.setattr("gardenplot.plan.saving.flush_folder", lambda _folder: None)
    meanwhile, afterwards = saved(path, monkeypatch)
    if left_out == "the file":
        assert bytes(len(NEW)) in meanwhile
    else:
        assert OLD in afterwards


@pytest.mark.usefixtures("dressed")
def test_a_cut_while_the_journal_follows_leaves_the_last_state_that_was_flushed_or_a_later_one(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(VARIABLE, str(tmp_path / "own"))
    monkeypatch.setattr("gardenplot.window.journal._GATHER", 0.0)
    journal_folder().mkdir(parents=True)
    laid, journals, worst = tmp_path / "cut", list[Journal](), list[str]()
    laid.mkdir()

    def look(state: Held) -> None:
        """Whether a state has a plan no older than the one that the journal holds to be safe."""
        journal = journals[-1]
        safe = journal._flushed
        least = number_of(newest_of([safe]).plan) if safe is not None else 0
        try:
            came = newest(state, journal, laid)
        except FileError as error:
            worst.extend([f"{error} where {least} was safe"] if safe is not None else [])
            return
        worst.extend([f"{came} where {least} was safe"] if came < least else [])

    document, states = Document(), turns(6, 60)
    document.start(numbered(0))
    journal = Journal(document)
    journals.append(journal)
    with monkeypatch.context() as followed:
        disk = Disk(tmp_path / "own", look)
        disk.follow(followed)
        for number in range(1, states):
            document.change("Edit", numbered(number))
            assert journal.wait()
            if number % 3 != 1:
                qtbot.waitUntil(lambda: journal._flushed is not None)
            disk.look_anew()
        assert newest({str(one): one.read_bytes() for one in journal.paths if one.exists()}, journal, laid) == number
        assert worst == []
    journal.end()


@pytest.mark.usefixtures("dressed")
def test_what_is_written_over_while_it_is_flushed_is_not_taken_for_flushed(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(VARIABLE, str(tmp_path / "own"))
    is_written, may_go_on, is_flushed = (threading.Event() for _each in range(3))
    safe: list[Path | None] = []
    document = Document()
    document.start(numbered(0))
    journal = Journal(document)
    document.change("Edit", numbered(1))
    qtbot.waitUntil(lambda: journal._flushed == journal.paths[0])

    def flush(path: Path) -> None:
        is_written.set()
        may_go_on.wait(5)
        flush_file(path)
        is_flushed.set()

    def write(path: Path, content: bytes, *, flush: bool) -> None:
        if is_written.is_set():
            may_go_on.set()
            is_flushed.wait(5)
            with journal._turn:
                journal._turn.wait(0.1)
            safe.append(journal._flushed)
        write_whole(path, content, flush=flush)

    monkeypatch.setattr("gardenplot.window.journal.flush_file", flush)
    monkeypatch.setattr("gardenplot.window.journal.write_whole", write)
    document.change("Edit", numbered(2))
    qtbot.waitUntil(is_written.is_set)
    document.change("Edit", numbered(3))
    assert journal.wait()
    journal.end()
    assert safe == [journal.paths[0]]


def newest(state: Held, journal: Journal, folder: Path) -> int:
    """The number of the plan that a start after the cut would offer; raises FileError."""
    paths = []
    for path in journal.paths:
        one = folder / path.name
        one.write_bytes(state.get(str(path), b""))
        paths.append(one)
    return number_of(newest_of(paths).plan)
