"""Every call that a save makes to the system fails in turn: one of the plans is whole, and it is said."""

import errno
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from gardenplot.errors import FileError
from gardenplot.plan import file, saving
from gardenplot.plan.exchange import exchange
from gardenplot.plan.file import read_plan, text_of, write_plan
from gardenplot.plan.saving import Saved, save_plan, sweep
from gardenplot.plan.versions import Versions
from tests.attack import turns
from tests.plans import feet_plan, metric_plan

CALLS = ("open", "fdopen", "write", "fsync", "chmod", "replace", "rename", "link", "unlink", "mkdir", "stat", "lstat",
         "scandir", "close")  # fmt: skip
"""Calls of `os` that saving, keeping versions and sweeping could make."""
NUMBERS = (errno.ENOSPC, errno.EACCES, errno.EINTR, errno.EIO, errno.EROFS, errno.EDQUOT)
WITH_AND_WITHOUT = [True, False]
MOST = 80
"""More calls of one kind than a save makes."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A file with the old plan."""
    path = tmp_path / "plans" / "spring.gardenplot"
    path.parent.mkdir()
    write_plan(path, metric_plan())
    return path


class Failing:
    """Lets the call of a number fail, of one name or of `exchange`, and remembers whether it came to that."""

    def __init__(self, name: str, turn: int, number: int, *, for_good: bool) -> None:
        self._turn, self._number, self._for_good = turn, number, for_good
        self.came = False
        self._count = 0
        self.real: Callable[..., Any] = exchange if name == "exchange" else getattr(os, name)

    def __call__(self, *given: Any, **named: Any) -> Any:
        """The real call, or its failure."""
        self._count += 1
        if self._count == self._turn or (self._for_good and self._count > self._turn):
            self.came = True
            raise OSError(self._number, os.strerror(self._number), str(given[0]) if given else "")
        return self.real(*given, **named)


def save_with(
    failing: Failing, name: str, path: Path, folder: Path, seen: str, monkeypatch: pytest.MonkeyPatch
) -> Saved | FileError:
    """Save the new plan while a call fails; what came of it."""
    with monkeypatch.context() as patched:
        patched.setattr(saving if name == "exchange" else os, name, failing)
        try:
            return save_plan(path, feet_plan(), seen, Versions(folder))
        except FileError as error:
            return error


def looked_at(path: Path, came: Saved | FileError, *, exchanges: bool) -> None:
    """Whatever failed, the file holds the old plan and that is said, or it holds the new one."""
    plan = read_plan(path).plan
    if isinstance(came, Saved):
        assert plan == feet_plan()
        assert came.aside is None
    else:
        assert str(came).count("\n") == 0
        assert "Errno" not in str(came)
        if exchanges:
            assert plan == metric_plan(), str(came)
        else:
            assert plan in (metric_plan(), feet_plan())


ROUNDS = [(name, number) for name in (*CALLS, "exchange") for number in NUMBERS[: turns(2, len(NUMBERS))]]


@pytest.mark.parametrize("exchanges", WITH_AND_WITHOUT, ids=["exchanged", "renamed"])
@pytest.mark.parametrize("for_good", [False, True], ids=["once", "for good"])
@pytest.mark.parametrize(("name", "number"), ROUNDS, ids=lambda one: errno.errorcode.get(one, str(one)))
def test_a_call_that_fails_loses_no_plan_and_is_said(
    path: Path,
    tmp_path: Path,
    name: str,
    number: int,
    for_good: bool,
    exchanges: bool,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    if not exchanges:
        monkeypatch.setattr(saving, "exchange", lambda _one, _other: False)
        if name == "exchange":
            return
    seen, failed = read_plan(path).seen, 0
    for turn in range(1, MOST):
        failing = Failing(name, turn, number, for_good=for_good)
        came = save_with(failing, name, path, tmp_path / f"own{turn}", seen, monkeypatch)
        if not failing.came:
            break
        failed += 1
        looked_at(path, came, exchanges=exchanges)
        write_plan(path, metric_plan())
    else:
        raise AssertionError("a save never ends")
    assert isinstance(came, Saved)
    assert not came.not_kept
    left = [one for one in path.parent.iterdir() if one != path]
    assert name in ("unlink", "close") or not left, "nothing lies beside it"
    if name in ("fsync", "replace", "exchange"):
        assert failed, "a save makes that call"


def test_a_disk_that_is_full_in_the_middle_of_a_write_is_said(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = os.fdopen

    class Narrow:
        """A file on a disk with room for so many bytes."""

        def __init__(self, *given: Any) -> None:
            self._file: Any = real(*given)

        def __enter__(self) -> "Narrow":
            return self

        def __exit__(self, *_error: object) -> None:
            self._file.close()

        def write(self, content: bytes) -> int:
            """Write what there is room for."""
            self._file.write(content[:room])
            if len(content) > room:
                raise OSError(errno.ENOSPC, "No space left on device")
            return len(content)

        def __getattr__(self, name: str) -> Any:
            return getattr(self._file, name)

    told: list[str] = []
    size, seen = len(text_of(feet_plan()).encode()), read_plan(path).seen
    monkeypatch.setattr(os, "fdopen", Narrow)
    for room in range(0, size + 200, turns(97, 7)):
        try:
            saved = save_plan(path, feet_plan(), seen, Versions(tmp_path / f"own{room}"))
        except FileError as error:
            told.append(str(error))
            assert read_plan(path).plan == metric_plan()
        else:
            assert room >= size or saved.not_kept
            break
    assert room >= size - 200
    assert all("the disk is full" in words for words in told)
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_sweeping_never_fails(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    left = path.with_name(f"{file.beside_name(path)}left.new")
    left.write_bytes(path.read_bytes())
    os.utime(left, (0, 0))
    for name in ("open", "unlink", "scandir", "stat"):
        with monkeypatch.context() as patched:
            patched.setattr(os, name, Failing(name, 1, errno.EIO, for_good=True))
            sweep(path, Versions(tmp_path / "own"))
    sweep(path, Versions(tmp_path / "own"))
    assert not left.exists()
