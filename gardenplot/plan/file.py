"""Plan files: read with errors that name the place, written so that no half file is ever left."""

import os
import stat
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from hashlib import blake2b, sha256
from pathlib import Path

from attrs import frozen

from gardenplot.errors import FileError
from gardenplot.one_line import one_line
from gardenplot.plan.codec import plan_of
from gardenplot.plan.disk_words import why
from gardenplot.plan.in_ground import sown_in_bed
from gardenplot.plan.json_text import json_of
from gardenplot.plan.part_text import plan_text
from gardenplot.plan.valid import faults
from gardenplot.plan.value import Plan
from gardenplot.words import _

SUFFIX = ".gardenplot"
_NO_FILE_NAME = str.maketrans(dict.fromkeys('/\\:*?"<>|', "-"))
_DEVICES = frozenset({"CON", "PRN", "AUX", "NUL", *(f"{port}{n}" for port in ("COM", "LPT") for n in range(1, 10))})
"""Names that Windows keeps for devices, in every folder and with every ending."""
LARGEST = 16 * 1024 * 1024
_NEW = ".new"
"""How the name of a file ends that is being written beside another one."""
_OLD = 60.0
"""Seconds after which what is being written was given up."""


def file_name(name: str) -> str:
    """A name of a plan as the name of a file, without the signs that a path keeps for itself."""
    plain = one_line(name).translate(_NO_FILE_NAME).strip(" .")[:80].rstrip(" .") or "plan"
    stem, dot, rest = plain.partition(".")
    return f"{stem.rstrip()}-{dot}{rest}" if stem.rstrip().upper() in _DEVICES else plain


@frozen
class Opened:
    """A plan as read from a file, and a sentence for each thing in it that is not known."""

    plan: Plan
    problems: tuple[str, ...] = ()
    seen: str = ""
    """The mark of what stood in the file."""


def mark_of(content: bytes) -> str:
    """A mark that no other content of a file has."""
    return sha256(content).hexdigest()


def read_plan(path: Path) -> Opened:
    """Read a plan file; raises FileError with one line that names the file, the place and what is wrong."""
    try:
        return plan_of_content(content_of(path))
    except FileError as error:
        raise FileError(f"{path}: {error}") from None


def plan_of_content(content: bytes) -> Opened:
    """The plan in the bytes of a plan file; raises FileError with the place and what is wrong.

    Who writes a file by hand calls what was sown in its bed sown: it is in the ground all the same.
    """
    opened = plan_of_text(_text_of(content))
    return Opened(sown_in_bed(opened.plan), opened.problems, mark_of(content))


def plan_of_text(text: str) -> Opened:
    """The plan in the text of a plan file; raises FileError with the place and what is wrong."""
    plan, problems = plan_of(json_of(text))
    for fault in faults(plan):
        raise FileError(f"{fault.place}: {fault.says}")
    return Opened(plan, problems)


def text_of(plan: Plan) -> str:
    """The text of a plan file: stable order, one field a line, good to diff."""
    return plan_text(plan) + "\n"


def content_of(path: Path) -> bytes:
    """What stands in a file that could be a plan; raises FileError without the file's name."""
    try:
        # A pipe or a device would keep whoever reads it waiting for ever.
        if not stat.S_ISREG(path.stat().st_mode):
            raise FileError(_("cannot be read: that is no file"))
        with path.open("rb") as file:
            content = file.read(LARGEST + 1)
    except OSError as error:
        raise FileError(_("cannot be read: {why}").format(why=why(error))) from None
    except ValueError:
        raise FileError(_("cannot be read: that is no file name")) from None
    if len(content) > LARGEST:
        raise FileError(_("is larger than {most} MB, which no plan is").format(most=LARGEST >> 20))
    return content


def write_plan(path: Path, plan: Plan) -> None:
    """Write a plan file: beside it first, flushed to disk, then renamed over it. Raises FileError."""
    write_whole(path, text_of(plan).encode())


def write_whole(path: Path, content: bytes, *, flush: bool = True) -> None:
    """Write a file so that either the old or the new content is there, never a half; a link stays a link.

    What is not flushed outlives the program, but need not outlive the machine. Raises FileError.
    """
    with written_beside(path, content, flush=flush) as (beside, there):
        os.replace(beside, there)
        if flush:
            flush_folder(there.parent)


@contextmanager
def written_beside(path: Path, content: bytes, *, flush: bool = True) -> Iterator[tuple[Path, Path]]:
    """A new file beside another, flushed to disk, and where that other really lies; whoever asked renames it.

    What is left of it at the end is removed. Raises FileError, also for whatever the disk refuses meanwhile.
    """
    try:
        there = Path(os.path.realpath(path))
        if shut := read_only(there):
            raise FileError(_("{path}: cannot be written: {why}").format(path=path, why=shut))
        handle, name = tempfile.mkstemp(dir=there.parent, prefix=beside_name(there), suffix=_NEW)
        beside = Path(name)
        try:
            _fill(handle, content, flush=flush)
            _keep_mode(there, beside)
            yield beside, there
        finally:
            # What cannot be removed now is swept later; what was asked for is done or has failed by now.
            with suppress(OSError):
                beside.unlink(missing_ok=True)
    except OSError as error:
        raise FileError(_("{path}: cannot be written: {why}").format(path=path, why=why(error))) from None
    except ValueError:
        raise FileError(_("{path}: cannot be written: that is no file name").format(path=path)) from None


def beside_name(path: Path) -> str:
    """How the names begin of what is written beside a file, however long its own name is."""
    return f".gardenplot-{blake2b(os.fsencode(path.name), digest_size=4).hexdigest()}-"


def left_in(folder: Path, begins: str = ".gardenplot-") -> list[Path]:
    """What programs that were killed while they wrote a file have left in a folder; not what is being written now."""
    found = []
    for one in folder.glob(f"{begins}*{_NEW}"):
        with suppress(OSError):
            if time.time() - one.stat().st_mtime > _OLD:
                found.append(one)
    return found


def flush_file(path: Path) -> None:
    """Flush a file and its name to disk. Raises OSError."""
    with path.open("r+b") as file:
        os.fsync(file.fileno())
    flush_folder(path.parent)


def flush_folder(folder: Path) -> None:
    """Flush the names in a folder to disk, where the system lets a folder be opened. Raises OSError."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def read_only(path: Path) -> str:
    """Why a file cannot be written over, as far as can be told without trying; nothing where it can.

    Renaming would pass over the mark of a file that is not to be changed.
    """
    try:
        if path.is_file() and not path.stat().st_mode & 0o222:
            return _("the file is marked as read-only")
        if path.parent.is_dir() and not os.access(path.parent, os.W_OK):
            return _("nothing may be written in its folder")
    except OSError as error:
        return why(error)
    return ""


def _fill(handle: int, content: bytes, *, flush: bool) -> None:
    try:
        file = os.fdopen(handle, "wb")
    except BaseException:
        os.close(handle)
        raise
    with file:
        file.write(content)
        file.flush()
        if flush:
            os.fsync(file.fileno())


def _keep_mode(path: Path, beside: Path) -> None:
    """Give the new file the old one's permissions, or those that a plainly created file would have."""
    if path.exists():
        mode = path.stat().st_mode & 0o777
    else:
        mask = os.umask(0)
        os.umask(mask)
        mode = 0o666 & ~mask
    os.chmod(beside, mode)


def _text_of(content: bytes) -> str:
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(_("is no text in UTF-8")) from None
