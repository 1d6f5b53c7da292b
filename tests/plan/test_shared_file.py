"""A plan file that several write: whatever anybody saved is in the file, beside it or among its versions."""

import errno
import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from gardenplot.errors import ChangedError, FileError
from gardenplot.plan import Plan, file, saving
from gardenplot.plan.edits import change_place
from gardenplot.plan.exchange import exchange
from gardenplot.plan.file import beside_name, mark_of, read_plan, text_of, write_plan
from gardenplot.plan.saving import free_name, save_plan, sweep
from gardenplot.plan.versions import Versions
from tests.plans import feet_plan, metric_plan

MINE, THEIRS = feet_plan(), change_place(metric_plan(), name="Theirs")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A folder's only file, with a plan in it."""
    path = tmp_path / "plans" / "spring.gardenplot"
    path.parent.mkdir()
    write_plan(path, metric_plan())
    return path


@pytest.fixture
def versions(tmp_path: Path) -> Versions:
    return Versions(tmp_path / "versions")


def seen(path: Path) -> str:
    return read_plan(path).seen


def names(path: Path) -> list[str]:
    return sorted(one.name for one in path.parent.iterdir())


def kept(versions: Versions, path: Path) -> list[Plan]:
    return [one.read().plan for one in versions.of(path)]


def test_saving_keeps_what_was_there_and_what_is_there_now(path: Path, versions: Versions) -> None:
    saved = save_plan(path, MINE, seen(path), versions)
    assert read_plan(path).plan == MINE
    assert saved.seen == seen(path)
    assert saved.aside is None
    assert kept(versions, path) == [MINE, metric_plan()]
    assert names(path) == ["spring.gardenplot"]


def test_a_file_that_was_changed_is_not_written_over(path: Path, versions: Versions) -> None:
    before = seen(path)
    write_plan(path, THEIRS)
    with pytest.raises(ChangedError, match=r"spring\.gardenplot: was changed since it was opened"):
        save_plan(path, MINE, before, versions)
    assert read_plan(path).plan == THEIRS
    assert names(path) == ["spring.gardenplot"]


def test_a_change_that_keeps_size_and_time_is_noticed(path: Path, versions: Versions) -> None:
    before, stat = seen(path), path.stat()
    path.write_bytes(path.read_bytes().replace(b"Upper", b"Lower"))
    os.utime(path, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    assert path.stat().st_size == stat.st_size
    with pytest.raises(ChangedError):
        save_plan(path, MINE, before, versions)


def test_a_file_that_was_only_touched_is_saved_without_a_question(path: Path, versions: Versions) -> None:
    before = seen(path)
    path.write_bytes(path.read_bytes())
    save_plan(path, MINE, before, versions)
    assert read_plan(path).plan == MINE


def test_a_file_that_already_holds_the_plan_is_no_conflict(path: Path, versions: Versions) -> None:
    before = seen(path)
    write_plan(path, MINE)
    save_plan(path, MINE, before, versions)
    assert read_plan(path).plan == MINE


def test_saving_over_keeps_the_other_plan_as_a_version(path: Path, versions: Versions) -> None:
    write_plan(path, THEIRS)
    save_plan(path, MINE, None, versions)
    assert kept(versions, path) == [MINE, THEIRS]


def test_a_file_that_is_gone_is_written_anew(path: Path, versions: Versions) -> None:
    before = seen(path)
    path.unlink()
    save_plan(path, MINE, before, versions)
    assert read_plan(path).plan == MINE


def at_the_last_moment(monkeypatch: pytest.MonkeyPatch, deed: Callable[[], object]) -> None:
    """Let somebody else act between the look at the file and the renaming."""
    done: list[object] = []

    def late(one: Path, other: Path) -> bool:
        if not done:
            done.append(deed())
        return exchange(one, other)

    monkeypatch.setattr(saving, "exchange", late)


needs_exchange = pytest.mark.skipif(os.name == "nt", reason="this system cannot exchange two names")


@needs_exchange
def test_a_plan_saved_in_the_very_moment_is_put_aside(
    path: Path, versions: Versions, monkeypatch: pytest.MonkeyPatch
) -> None:
    at_the_last_moment(monkeypatch, lambda: write_plan(path, THEIRS))
    saved = save_plan(path, MINE, seen(path), versions)
    assert saved.aside == path.with_name("spring (2).gardenplot")
    assert read_plan(saved.aside).plan == THEIRS
    assert read_plan(path).plan == MINE


@needs_exchange
def test_a_plan_that_comes_first_where_there_was_none_is_put_aside(
    path: Path, versions: Versions, monkeypatch: pytest.MonkeyPatch
) -> None:
    new, link = path.with_name("new.gardenplot"), os.link

    def come_first(one: Path, other: Path) -> None:
        write_plan(new, THEIRS)
        link(one, other)

    monkeypatch.setattr(os, "link", come_first)
    saved = save_plan(new, MINE, None, versions)
    assert saved.aside is not None
    assert read_plan(saved.aside).plan == THEIRS
    assert read_plan(new).plan == MINE


@needs_exchange
def test_where_the_folder_cannot_be_flushed_the_old_plan_is_back(
    path: Path, versions: Versions, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_folder: Path) -> None:
        raise OSError(errno.EIO, "Input/output error")

    for module in (file, saving):
        monkeypatch.setattr(module, "flush_folder", refuse)
    with pytest.raises(FileError, match="the disk reports a fault"):
        save_plan(path, MINE, seen(path), versions)
    assert read_plan(path).plan == metric_plan()
    assert names(path) == ["spring.gardenplot"]


def test_without_an_exchange_it_is_saved_all_the_same(
    path: Path, versions: Versions, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(saving, "exchange", lambda _one, _other: False)
    save_plan(path, MINE, seen(path), versions)
    assert read_plan(path).plan == MINE
    assert names(path) == ["spring.gardenplot"]


def test_a_file_marked_as_read_only_is_not_written_over(path: Path, versions: Versions) -> None:
    path.chmod(0o444)
    with pytest.raises(FileError, match="cannot be written: the file is marked as read-only"):
        save_plan(path, MINE, seen(path), versions)
    assert read_plan(path).plan == metric_plan()


def test_where_versions_cannot_be_kept_the_plan_is_saved_and_that_is_said(path: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    saved = save_plan(path, MINE, seen(path), Versions(tmp_path / "file"))
    assert read_plan(path).plan == MINE
    assert "there is no such folder" in saved.not_kept


def test_what_a_killed_program_left_is_kept_as_a_version_if_it_is_whole(path: Path, versions: Versions) -> None:
    begins = beside_name(path)
    whole, half, now = (path.with_name(f"{begins}{name}.new") for name in ("whole", "half", "now"))
    for left in (whole, now):
        left.write_text(text_of(MINE), encoding="utf-8")
    half.write_text(text_of(MINE)[:99], encoding="utf-8")
    old = time.time() - 3600
    for left in (whole, half):
        os.utime(left, (old, old))
    sweep(path, versions)
    assert names(path) == sorted([now.name, path.name])
    assert kept(versions, path) == [MINE]


def test_free_names_are_counted_up(path: Path) -> None:
    assert [free_name(path).name for _turn in range(2)] == ["spring (2).gardenplot", "spring (3).gardenplot"]


def test_two_files_exchange_their_names(tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "other"
    one.write_text("1")
    assert not exchange(one, other)
    other.write_text("2")
    if exchange(one, other):
        assert (one.read_text(), other.read_text()) == ("2", "1")


def test_a_mark_is_of_the_content_alone() -> None:
    assert mark_of(b"a") == mark_of(b"a") != mark_of(b"b")
