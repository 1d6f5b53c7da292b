"""Saving over a plan file that others write too: nobody's plan is written over unseen, and no lock is held."""

import os
from collections.abc import Container
from contextlib import suppress
from errno import ELOOP
from itertools import count
from pathlib import Path

from attrs import frozen

from gardenplot.errors import ChangedError, FileError
from gardenplot.plan.disk_words import why
from gardenplot.plan.exchange import exchange
from gardenplot.plan.file import (
    beside_name,
    content_of,
    flush_folder,
    left_in,
    mark_of,
    plan_of_content,
    text_of,
    written_beside,
)
from gardenplot.plan.value import Plan
from gardenplot.plan.versions import Versions
from gardenplot.words import _


@frozen
class Saved:
    """What came of saving: the mark of the file as it is now, and what else there is to say."""

    seen: str
    aside: Path | None = None
    """Where a plan was put that somebody else saved in the very moment."""
    not_kept: str = ""
    """Why earlier versions cannot be kept; nothing where they are."""


def save_plan(path: Path, plan: Plan, seen: str | None, versions: Versions) -> Saved:
    """Write a plan file, and keep as a version what stood in it.

    `seen` is the mark of what the file is known to hold; None writes over whatever it holds. Raises ChangedError
    where the file holds anything else, and FileError where it cannot be written; then it is as it was.
    """
    content, found = text_of(plan).encode(), _found(path)
    known = {mark_of(content), mark_of(found) if found is not None else ""}
    if found is not None and seen is not None and mark_of(found) not in (seen, mark_of(content)):
        raise ChangedError(_("{path}: was changed since it was opened here; nothing was written").format(path=path))
    not_kept = _kept(versions, path, found) if found else ""
    with written_beside(path, content) as (beside, there):
        aside = _put(beside, there, known)
    return Saved(mark_of(content), aside, not_kept or _kept(versions, path, content))


def changed_on_disk(path: Path, seen: str) -> bool:
    """Whether a file that can be read holds anything but what it is known to hold."""
    try:
        found = _found(path)
    except FileError:
        return False
    return found is not None and mark_of(found) != seen


def free_name(path: Path) -> Path:
    """The first name like "spring (2).gardenplot" that is free, taken by an empty file. Raises OSError."""
    for number in count(2):
        free = path.with_name(f"{path.stem} ({number}){path.suffix}")
        with suppress(FileExistsError):
            os.close(os.open(free, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666))
            return free
    raise AssertionError(path)


def sweep(path: Path, versions: Versions) -> None:
    """Clear away what programs that were killed left beside a file; a whole plan among it is kept as a version."""
    with suppress(OSError):
        for left in left_in(path.parent, beside_name(path)):
            with suppress(FileError):
                content = content_of(left)
                plan_of_content(content)
                versions.keep(path, content)
            left.unlink(missing_ok=True)


def _found(path: Path) -> bytes | None:
    """What stands in a file, None where there is none; raises FileError where that cannot be told."""
    try:
        path.stat()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        if error.errno == ELOOP:
            return None
        raise FileError(_("{path}: cannot be written: {why}").format(path=path, why=why(error))) from None
    except ValueError:
        raise FileError(_("{path}: cannot be written: that is no file name").format(path=path)) from None
    try:
        return content_of(path)
    except FileError as error:
        raise FileError(f"{path}: {error}") from None


def _kept(versions: Versions, path: Path, content: bytes) -> str:
    try:
        versions.keep(path, content)
    except FileError as error:
        return str(error)
    return ""


def _put(beside: Path, there: Path, known: Container[str]) -> Path | None:
    """Put a new file in another's place; where a plan came in between that is not known, where that is put aside.

    Raises OSError and FileError; then what was there is there again.
    """
    # One more exchange: a file may have come where there was none a moment ago.
    if not (exchange(beside, there) or _placed_first(beside, there) or exchange(beside, there)):
        os.replace(beside, there)
        flush_folder(there.parent)
        return None
    try:
        flush_folder(there.parent)
        if mark_of(content_of(beside)) in known:
            return None
        aside = free_name(there)
        os.replace(beside, aside)
    except BaseException:
        exchange(beside, there)
        raise
    return aside


def _placed_first(beside: Path, there: Path) -> bool:
    """Give a file a second name that was free; False where it is taken, or the disk knows no second names."""
    try:
        os.link(beside, there)
    except OSError:
        return False
    return True
