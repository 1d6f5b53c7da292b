"""The text of a plan file as JSON values, with all refused that could be read but not written again."""

import json
from collections import Counter
from collections.abc import Iterable
from math import isfinite
from typing import Any

from gardenplot.errors import FileError
from gardenplot.words import _

DEEPEST = 100
MOST_PARTS = 200_000
"""So many values are let in; 200 beds with 2,000 plantings, every field of which is written, are some 50,000."""


def json_of(text: str) -> Any:
    """The JSON value of a text; raises FileError with the place and what is wrong."""
    # Counted before anything is made of them: an empty list takes three letters in the file and sixty in the memory.
    if sum(map(text.count, ",[{")) > MOST_PARTS:
        raise FileError(_("holds more than any plan"))
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
