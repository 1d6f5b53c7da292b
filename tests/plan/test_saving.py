"""Saving leaves either the old plan or the new one, never a half and nothing beside it."""

import errno
import os
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO, NoReturn

import pytest

from gardenplot.errors import FileError
from gardenplot.plan.file import read_plan, write_plan, write_whole
from tests.plans import feet_plan, metric_plan


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A folder's only file, with a plan in it."""
    folder = tmp_path / "plans"
    folder.mkdir()
    path = folder / "spring.gardenplot"
    write_plan(path, metric_plan())
    return path


def full_disk(*_: object, **__: object) -> NoReturn:
    """What every call to a full disk comes to."""
    raise OSError(errno.ENOSPC, "No space left on device")


def interrupted(*_: object, **__: object) -> NoReturn:
    """What Ctrl+C comes to."""
    raise KeyboardInterrupt


class HalfWritten:
    """A file on a disk that is full after ten bytes."""

    def __init__(self, file: BinaryIO) -> None:
        self._file = file

    def __enter__(self) -> "HalfWritten":
        return self

    def __exit__(self, *_: object) -> None:
        self._file.close()

    def write(self, content: bytes) -> int:
        """Write ten bytes and fail."""
        self._file.write(content[:10])
        self._file.flush()
        full_disk()


def assert_untouched(path: Path) -> None:
    """The plan of before is there, and nothing else."""
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]
    assert read_plan(path).plan == metric_plan()


def test_a_saved_plan_replaces_the_old_one_and_leaves_nothing_beside_it(path: Path) -> None:
    write_plan(path, feet_plan())
    assert read_plan(path).plan == feet_plan()
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]


@pytest.mark.parametrize("step", ["replace", "fsync", "fdopen", "chmod"])
def test_whatever_step_fails_the_old_plan_stays_whole(path: Path, step: str, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as failing:
        failing.setattr(os, step, full_disk)
        with pytest.raises(FileError, match="cannot be written: the disk is full") as refused:
            write_plan(path, feet_plan())
    assert str(refused.value).startswith(f"{path}: ")
    assert_untouched(path)


def test_a_disk_that_is_full_half_way_leaves_the_old_plan_whole(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    fdopen: Any = os.fdopen
    with monkeypatch.context() as failing:
        failing.setattr(os, "fdopen", lambda *given: HalfWritten(fdopen(*given)))
        with pytest.raises(FileError, match="the disk is full"):
            write_plan(path, feet_plan())
    assert_untouched(path)


@pytest.mark.parametrize("step", ["replace", "fsync"])
def test_an_interrupted_save_leaves_the_old_plan_whole(
    path: Path, step: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as failing:
        failing.setattr(os, step, interrupted)
        with pytest.raises(KeyboardInterrupt):
            write_plan(path, feet_plan())
    assert_untouched(path)


def test_the_new_plan_is_on_the_disk_before_the_old_one_goes(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    steps: list[str] = []

    def noted(name: str) -> Callable[..., Any]:
        step: Callable[..., Any] = getattr(os, name)

        def note_and_step(*given: Any) -> Any:
            steps.append(name)
            return step(*given)

        return note_and_step

    for name in ("fsync", "replace"):
        monkeypatch.setattr(os, name, noted(name))
    write_plan(path, feet_plan())
    assert steps[:2] == ["fsync", "replace"]


@pytest.mark.parametrize("folder", ["missing", "spring.gardenplot"])
def test_a_plan_cannot_be_saved_where_there_is_no_folder(path: Path, folder: str) -> None:
    nowhere = path.parent / folder / "new.gardenplot"
    with pytest.raises(FileError) as refused:
        write_plan(nowhere, feet_plan())
    assert str(refused.value).startswith(f"{nowhere}: cannot be written: ")
    assert_untouched(path)


def test_a_plan_cannot_be_saved_over_a_folder(path: Path) -> None:
    path.rename(path.parent.parent / "moved")
    path.mkdir()
    with pytest.raises(FileError, match="cannot be written"):
        write_plan(path, feet_plan())
    assert list(path.parent.iterdir()) == [path]


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o664])
def test_a_saved_plan_keeps_its_permissions(path: Path, mode: int) -> None:
    path.chmod(mode)
    write_plan(path, feet_plan())
    assert stat.S_IMODE(path.stat().st_mode) == mode


def test_a_new_plan_has_the_permissions_of_any_new_file(path: Path) -> None:
    plain = path.with_name("plain")
    plain.touch()
    assert stat.S_IMODE(path.stat().st_mode) == stat.S_IMODE(plain.stat().st_mode)


def test_a_plan_behind_a_link_is_saved_where_it_lies(path: Path) -> None:
    link = path.with_name("link.gardenplot")
    link.symlink_to(path)
    write_plan(link, feet_plan())
    assert link.is_symlink()
    assert read_plan(path).plan == feet_plan()


def test_a_plan_saved_over_a_link_to_itself_takes_its_place(path: Path) -> None:
    link = path.with_name("link.gardenplot")
    link.symlink_to(link)
    write_plan(link, feet_plan())
    assert read_plan(link).plan == feet_plan()


@pytest.mark.parametrize("name", ["å" * 60, "豆" * 60, "🌱" * 62, "with blank", ".hidden"])
def test_a_plan_can_have_any_name_that_a_file_can(tmp_path: Path, name: str) -> None:
    write_whole(tmp_path / name, b"{}")
    assert (tmp_path / name).read_bytes() == b"{}"
