"""Plan files: read with errors that name the place, written so that no half file is ever left."""

import json
import os
import tempfile
from collections import Counter
from collections.abc import Iterable
from math import isfinite
from pathlib import Path
from typing import Any

from attrs import frozen

from gardenplot.errors import FileError
from gardenplot.one_line import one_line
from gardenplot.plan.codec import plan_of, raw_of
from gardenplot.plan.valid import faults
from gardenplot.plan.value import Plan
from gardenplot.words import _

SUFFIX = ".gardenplot"
_NO_FILE_NAME = str.maketrans(dict.fromkeys('/\\:*?"<>|', "-"))
LARGEST = 64 * 1024 * 1024
DEEPEST = 100


def file_name(name: str) -> str:
    """A name of a plan as the name of a file, without the signs that a path keeps for itself."""
    return one_line(name).translate(_NO_FILE_NAME).strip(" .")[:80] or "plan"


@frozen
class Opened:
    """A plan as read from a file, and a sentence for each thing in it that is not known."""

    plan: Plan
    problems: tuple[str, ...] = ()


def read_plan(path: Path) -> Opened:
    """Read a plan file; raises FileError with one line that names the file, the place and what is wrong."""
    try:
        return plan_of_text(_text_of(path))
    except FileError as error:
        raise FileError(f"{path}: {error}") from None


def plan_of_text(text: str) -> Opened:
    """The plan in the text of a plan file; raises FileError with the place and what is wrong."""
    plan, problems = plan_of(_json_of(text))
    for fault in faults(plan):
        raise FileError(f"{fault.place}: {fault.says}")
    return Opened(plan, problems)


def text_of(plan: Plan) -> str:
    """The text of a plan file: stable order, one field a line, good to diff."""
    return json.dumps(raw_of(plan), ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def write_plan(path: Path, plan: Plan) -> None:
    """Write a plan file: beside it first, flushed to disk, then renamed over it. Raises FileError."""
    write_whole(path, text_of(plan).encode())


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that either the old or the new content is there, never a half; a link stays a link.

    Raises FileError.
    """
    try:
        path = Path(os.path.realpath(path))
        handle, beside = tempfile.mkstemp(dir=path.parent, prefix=".gardenplot-", suffix=".new")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            _keep_mode(path, beside)
            os.replace(beside, path)
        except BaseException:
            Path(beside).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise FileError(_("{path}: cannot be written: {why}").format(path=path, why=error.strerror)) from None


def _keep_mode(path: Path, beside: str) -> None:
    """Give the new file the old one's permissions, or those that a plainly created file would have."""
    if path.exists():
        mode = path.stat().st_mode & 0o777
    else:
        mask = os.umask(0)
        os.umask(mask)
        mode = 0o666 & ~mask
    os.chmod(beside, mode)


def _text_of(path: Path) -> str:
    try:
        if path.stat().st_size > LARGEST:
            raise FileError(_("is larger than 64 MB, which no plan is"))
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise FileError(_("is no text in UTF-8")) from None
    except OSError as error:
        raise FileError(_("cannot be read: {why}").format(why=error.strerror)) from None
    except ValueError:
        raise FileError(_("cannot be read: that is no file name")) from None


def _json_of(text: str) -> Any:
    try:
        raw = json.loads(text, object_pairs_hook=_once_each, parse_constant=_no_constant, parse_float=_finite)
    except json.JSONDecodeError as error:
        raise FileError(
            _("line {line}, column {column}: {what}").format(line=error.lineno, column=error.colno, what=error.msg)
        ) from None
    except RecursionError:
        raise FileError(_("is nested deeper than any plan")) from None
    except ValueError as error:
        raise FileError(str(error)) from None
    _check_parts(raw)
    return raw


def _check_parts(raw: Any) -> None:
    """Refuse what could be read but not be written again: endless nesting, and halves of letters."""
    level = [raw]
    for _depth in range(DEEPEST):
        for text in (text for part in level for text in _texts(part)):
            if any("\ud800" <= sign <= "\udfff" for sign in text):
                raise FileError(_("“{text}” holds half of a letter").format(text=text[:40]))
        level = [inner for part in level if isinstance(part, dict | list) for inner in _inner(part)]
        if not level:
            return
    raise FileError(_("is nested deeper than any plan"))


def _texts(part: Any) -> list[str]:
    if isinstance(part, dict):
        return list(part)
    return [part] if isinstance(part, str) else []


def _inner(part: dict[str, Any] | list[Any]) -> Iterable[Any]:
    return part.values() if isinstance(part, dict) else part


def _once_each(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    once = dict(pairs)
    if len(once) < len(pairs):
        name = next(name for name, count in Counter(name for name, _value in pairs).items() if count > 1)
        raise FileError(_("“{name}” stands twice in one object").format(name=name))
    return once


def _finite(digits: str) -> float:
    number = float(digits)
    if not isfinite(number):
        raise FileError(_("{number} is no number that a plan can hold").format(number=digits[:40]))
    return number


def _no_constant(name: str) -> Any:
    raise FileError(_("{name} is no number that a plan can hold").format(name=name))
