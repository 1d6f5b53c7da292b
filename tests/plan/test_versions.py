"""Earlier versions of a plan file: the last ten besides the present one, whatever the clock and the disk do."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from gardenplot.errors import FileError
from gardenplot.plan import Plan, versions
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import text_of
from gardenplot.plan.versions import MOST, Versions
from tests.plans import metric_plan


@pytest.fixture
def kept(tmp_path: Path) -> Versions:
    """Versions in a folder that is not there yet."""
    return Versions(tmp_path / "own" / "versions")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "spring.gardenplot"


def content(number: int) -> bytes:
    return text_of(named(number)).encode()


def named(number: int) -> Plan:
    return change_place(metric_plan(), name=f"Sill {number}")


def numbers(kept: Versions, path: Path) -> list[int]:
    return [int(one.read().plan.place.name.split()[-1]) for one in kept.of(path)]


def test_the_last_ten_and_the_present_one_are_kept_the_newest_first(kept: Versions, path: Path) -> None:
    for number in range(25):
        kept.keep(path, content(number))
    assert numbers(kept, path) == list(range(24, 24 - MOST - 1, -1))
    assert MOST == 10


def test_saving_the_same_again_pushes_nothing_out(kept: Versions, path: Path) -> None:
    for number in (1, 2, 2, 2, 3, 3, 1):
        kept.keep(path, content(number))
    assert numbers(kept, path) == [1, 3, 2]


def test_each_file_has_versions_of_its_own_by_where_it_lies(kept: Versions, tmp_path: Path) -> None:
    one, other = (tmp_path / folder / "spring.gardenplot" for folder in ("north", "south"))
    kept.keep(one, content(1))
    kept.keep(other, content(2))
    (tmp_path / "link").symlink_to(tmp_path / "north")
    assert numbers(kept, one) == numbers(kept, tmp_path / "link" / "spring.gardenplot") == [1]
    assert numbers(kept, other) == [2]


@pytest.mark.parametrize("hours", [-48, 0])
def test_a_clock_that_is_put_back_or_stands_still_does_not_make_the_newest_old(
    kept: Versions, path: Path, hours: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    noon = datetime(2027, 3, 1, 12, tzinfo=UTC)

    class Clock(datetime):
        """Stands still where it was put."""

        at = noon

        @classmethod
        def now(cls, tz: Any = None) -> datetime:  # type: ignore[override]  # a clock of the tests gives a plain datetime
            return cls.at.astimezone(tz)

    monkeypatch.setattr(versions, "datetime", Clock)
    kept.keep(path, content(1))
    Clock.at = noon + timedelta(hours=hours)
    kept.keep(path, content(2))
    kept.keep(path, content(3))
    assert numbers(kept, path) == [3, 2, 1]


def test_nobody_else_may_look_into_them(kept: Versions, path: Path) -> None:
    kept.keep(path, content(1))
    folder = kept.of(path)[0].path.parent
    assert folder.stat().st_mode & 0o077 == 0


def test_a_strange_file_among_them_is_no_version(kept: Versions, path: Path) -> None:
    kept.keep(path, content(1))
    (kept.of(path)[0].path.parent / "notes.gardenplot").write_text("mine")
    assert numbers(kept, path) == [1]


def test_where_no_folder_can_be_made_it_says_why(path: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(FileError, match="there is no such folder"):
        Versions(tmp_path / "file").keep(path, content(1))
