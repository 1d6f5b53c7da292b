"""The plan as JSON values and back; the classes of the plan say which fields there are."""

import json
import math
import re
import types
import typing
from collections.abc import Callable, Mapping
from datetime import date
from enum import StrEnum
from functools import lru_cache
from typing import Any, TypeVar

import attrs

from gardenplot.errors import FileError, LengthError
from gardenplot.plan.goods import Feed, Good, Jugs, Watering
from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.plan.measured import MEASURES, PARSERS
from gardenplot.plan.shapes import FOLLOWS, reach_of
from gardenplot.plan.value import (
    Actual,
    Bed,
    Box,
    Cover,
    Crop,
    MonthDay,
    Obstacle,
    Order,
    Past,
    Place,
    Plan,
    Planting,
    Wish,
)
from gardenplot.units import Length, Share, parse_length, parse_place
from gardenplot.words import _

VERSION = 1
_KEYS: Mapping[type, Mapping[str, str]] = {
    Planting: {"start": "from"},
    Cover: {"start": "from", "end": "to", "cloth_end": "end"},
    Jugs: {"start": "from", "end": "to"},
}
"""Where a field's name in the file is a word that Python keeps for itself."""
LISTS: Mapping[str, type] = {
    "beds": Bed,
    "crops": Crop,
    "plantings": Planting,
    "orders": Order,
    "wishes": Wish,
    "covers": Cover,
    "ground": Standing,
    "tunnels": Tunnel,
    "paths": Walk,
    "goods": Good,
    "feeds": Feed,
    "jugs": Jugs,
}
"""The lists of a plan, in the order in which they are written."""
_ALWAYS = {"units", "establish", "pattern"}
"""Written even where they are the default, since a reader would have to know it."""

Json = Any
T = TypeVar("T")


def plan_of(raw: Json) -> tuple[Plan, tuple[str, ...]]:
    """The plan in a JSON value, and a sentence for each field that is not known but kept.

    Raises FileError with the place and what is wrong.
    """
    if not isinstance(raw, dict) or "gardenplot" not in raw:
        raise FileError(_('this is no plan: it does not begin with "gardenplot": 1'))
    _check_version(raw["gardenplot"])
    problems: list[str] = []
    place = _read(Place, raw.get("place", {}), "place", problems)
    parts: dict[str, tuple[Any, ...]] = {}
    for name, kind in LISTS.items():
        parts[name] = _read_list(kind, raw.get(name, []), name, problems)
    unknown = _unknown(raw, {"gardenplot", "place", *LISTS}, "", problems)
    return Plan(place=place, unknown=unknown, **parts), tuple(problems)


def _check_version(version: Json) -> None:
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise FileError(
            _('"gardenplot": {version} is no format version: write 1').format(version=json.dumps(version))
        )
    if version > VERSION:
        raise FileError(
            _("the file has format {version}, this program reads up to {known}: a newer gardenplot made it").format(
                version=version, known=VERSION
            )
        )


def _read_list(kind: type[T], raw: Json, name: str, problems: list[str]) -> tuple[T, ...]:
    if not isinstance(raw, list):
        raise FileError(_("{place}: a list in square brackets is needed").format(place=name))
    parts = []
    for number, one in enumerate(raw):
        parts.append(_read(kind, one, f"{name}[{number}]", problems))
    return tuple(parts)


def _read(kind: type[T], raw: Json, place: str, problems: list[str]) -> T:
    """One part of the plan from a JSON object; what is not known in it is added to the problems."""
    if not isinstance(raw, dict):
        raise FileError(_("{place}: an object in curly brackets is needed").format(place=place))
    values: dict[str, Any] = {}
    fields = _fields(typing.cast(Any, kind))
    for one in fields:
        key = one.key
        if raw.get(key) is not None:
            values[one.name] = _value(one.hint, raw[key], f"{place}.{key}", problems)
        elif kind is Bed and _follows(raw, key):
            values[one.name] = Length(0, "")
        elif one.default is attrs.NOTHING:
            raise FileError(_("{place}.{key}: is missing").format(place=place, key=key))
    values["unknown"] = _unknown(raw, {one.key for one in fields}, f"{place}.", problems)
    part = kind(**values)
    return typing.cast(T, _reached(part)) if isinstance(part, Bed) else part


def _follows(raw: Mapping[str, Json], key: str) -> bool:
    """Whether a bed's field, which the file does not have, follows from one that it has."""
    return any(key in said and raw.get(name) not in (None, []) for name, said in FOLLOWS.items())


def _reached(bed: Bed) -> Bed:
    """A bed with the length and width that follow from its shape; without text, so that they are not written."""
    length, width = (Length(nm, "") for nm in reach_of(bed))
    return attrs.evolve(
        bed, length=bed.length if bed.length.text else length, width=bed.width if bed.width.text else width
    )


@attrs.frozen(eq=False)
class _Field:
    """A field of a part of the plan: its name, what it is called in the file, its type and what it is by default."""

    name: str
    key: str
    hint: Any
    default: Any


@lru_cache(maxsize=64)
def _fields(kind: type) -> tuple[_Field, ...]:
    """The fields of a part, in order; asked of the class once, not of each of thousands of plantings."""
    hints, renamed = typing.get_type_hints(kind, include_extras=True), _KEYS.get(kind, {})
    return tuple(
        _Field(one.name, renamed.get(one.name, one.name), hints[one.name], one.default)
        for one in attrs.fields(typing.cast(Any, kind))
        if one.name != "unknown"
    )


def _unknown(
    raw: Mapping[str, Json], known: set[str], place: str, problems: list[str]
) -> tuple[tuple[str, str], ...]:
    kept = []
    for key, value in raw.items():
        if key not in known:
            problems.append(_("{place}{key}: is not known; it is kept as it is").format(place=place, key=key))
            kept.append((key, json.dumps(value, ensure_ascii=False)))
    return tuple(kept)


def _value(hint: Any, raw: Json, place: str, problems: list[str]) -> Any:
    reader = _reader_of(hint)
    if reader is not None:
        return reader(raw, place)
    for kind in (Box, Actual, Watering):
        if hint in (kind, kind | None):
            return _read(kind, raw, place, problems)
    origin = typing.get_origin(hint)
    if origin is types.UnionType:
        return _value(next(one for one in typing.get_args(hint) if one is not type(None)), raw, place, problems)
    if origin is tuple:
        return _items(typing.get_args(hint)[0], raw, place, problems)
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return _choice(hint, raw, place)
    raise AssertionError(hint)


@lru_cache(maxsize=128)
def _reader_of(hint: Any) -> Callable[[Json, str], Any] | None:
    """What reads a plain value of a type, or None for a type that is made of others."""
    return next((reader for kind, reader in _READERS.items() if hint in (kind, kind | None)), None)


def _items(kind: Any, raw: Json, place: str, problems: list[str]) -> tuple[Any, ...]:
    if kind == tuple[Share, MonthDay]:
        return _frost_odds(raw, place)
    if isinstance(raw, str) and kind is Length:
        return (_value(kind, raw, place, problems),)
    if not isinstance(raw, list):
        raise FileError(_("{place}: a list in square brackets is needed").format(place=place))
    if kind == tuple[Length, Length]:
        return tuple(_point(one, f"{place}[{number}]") for number, one in enumerate(raw))
    if kind in (Obstacle, Past):
        return _read_list(kind, raw, place, problems)
    return tuple(_value(kind, one, f"{place}[{number}]", problems) for number, one in enumerate(raw))


def _point(raw: Json, place: str) -> tuple[Length, Length]:
    """Read ["1 m", "0 m"]: a tape reading and an offset from the base line."""
    if not isinstance(raw, list) or len(raw) != 2:
        raise FileError(_('{place}: write a point like ["1 m", "0 m"]').format(place=place))
    read = _READERS[Length]
    return read(raw[0], f"{place}[0]"), read(raw[1], f"{place}[1]")


def _choice(kind: type[StrEnum], raw: Json, place: str) -> StrEnum:
    if raw in [str(member) for member in kind]:
        return kind(raw)
    choices = ", ".join(f"“{member}”" for member in kind)
    raise FileError(
        _("{place}: {typed} is none of {choices}").format(place=place, typed=_shown(raw), choices=choices)
    )


def _shown(raw: Json) -> str:
    text = json.dumps(raw, ensure_ascii=False)
    return text if len(text) <= 60 else text[:59] + "…"


def _frost_odds(raw: Json, place: str) -> tuple[tuple[Share, MonthDay], ...]:
    """Read {"50%": "05-18"}: a chance, and the day of the year that it holds for."""
    if not isinstance(raw, dict):
        raise FileError(_('{place}: write it like {{"50%": "05-18"}}').format(place=place))
    if len({share.strip() for share in raw}) < len(raw):
        raise FileError(_("{place}: a share stands twice").format(place=place))
    return tuple((_READERS[Share](share, place), _month_day(day, f"{place}.{share}")) for share, day in raw.items())


def _month_day(raw: Json, place: str) -> MonthDay:
    try:
        day = _iso_date(f"2000-{raw}")
    except ValueError:
        raise FileError(
            _('{place}: {typed} is no day of the year: write it like "05-18"').format(place=place, typed=_shown(raw))
        ) from None
    return MonthDay(day.month, day.day)


def _iso_date(text: str) -> date:
    """A date in the one form that a plan file has; ISO 8601 has others."""
    if re.fullmatch(r"\d{4}-\d\d-\d\d", text, re.ASCII) is None:
        raise ValueError(text)
    return date.fromisoformat(text)


def _measured(parse: Callable[[str], T]) -> Callable[[Json, str], T]:
    def reader(raw: Json, place: str) -> T:
        try:
            return parse(raw)
        except LengthError as error:
            if isinstance(raw, str) or parse in (parse_length, parse_place):
                raise FileError(f"{place}: {error}") from None
            raise FileError(_("{place}: {says}, as text in quotes").format(place=place, says=error)) from None

    return reader


def _text(raw: Json, place: str) -> str:
    if not isinstance(raw, str):
        raise FileError(_("{place}: {typed} is no text in quotes").format(place=place, typed=_shown(raw)))
    return raw


def _whole(raw: Json, place: str) -> int:
    if isinstance(raw, bool) or not isinstance(raw, int):
        raise FileError(_("{place}: {typed} is no whole number").format(place=place, typed=_shown(raw)))
    return raw


def _yes_or_no(raw: Json, place: str) -> bool:
    if not isinstance(raw, bool):
        raise FileError(_("{place}: {typed} is neither true nor false").format(place=place, typed=_shown(raw)))
    return raw


def _number(raw: Json, place: str) -> float:
    try:
        number = math.nan if isinstance(raw, bool) or not isinstance(raw, int | float) else float(raw)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise FileError(_("{place}: {typed} is no number").format(place=place, typed=_shown(raw)))
    return number


def _date(raw: Json, place: str) -> date:
    try:
        return _iso_date(_text(raw, place))
    except ValueError:
        raise FileError(
            _('{place}: {typed} is no date: write it like "2027-04-09"').format(place=place, typed=_shown(raw))
        ) from None


_READERS: Mapping[Any, Callable[[Json, str], Any]] = {
    str: _text,
    int: _whole,
    bool: _yes_or_no,
    float: _number,
    date: _date,
    **{kind: _measured(parse) for kind, parse in PARSERS.items()},
}


def raw_part(part: Any) -> dict[str, Json]:
    """The JSON value of a part of the plan: a bed, a planting, the place."""
    raw: dict[str, Json] = {}
    for one in _fields(typing.cast(Any, type(part))):
        value = getattr(part, one.name)
        if isinstance(value, Length) and not value.text:
            continue
        if one.name in _ALWAYS or value != one.default:
            raw[one.key] = _raw_value(value)
    raw.update((name, json.loads(text)) for name, text in part.unknown)
    return raw


def _raw_value(value: Any) -> Json:
    match value:
        case _ if isinstance(value, MEASURES):
            return value.text
        case date():
            return value.isoformat()
        case StrEnum():
            return str(value)
        case float() if value.is_integer():
            return int(value)
        case (Length(text=text),):
            return text
        case ((Share(), MonthDay()), *_others):
            return {share.text: f"{day.month:02}-{day.day:02}" for share, day in value}
        case Obstacle() | Box() | Past() | Actual() | Watering():
            return raw_part(value)
        case tuple():
            return [_raw_value(one) for one in value]
        case _:
            return value
