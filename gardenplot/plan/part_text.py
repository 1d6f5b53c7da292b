"""The text of a part of a plan as it stands in its file, made once: an edit changes few parts of thousands."""

import json
from functools import lru_cache
from typing import Any

from gardenplot.plan.codec import LISTS, VERSION, raw_part
from gardenplot.plan.value import Plan

_STEP = "  "


@lru_cache(maxsize=16_384)
def part_text(part: Any) -> str:
    """The JSON text of a bed, a planting, the place: one field a line."""
    return _dumped(raw_part(part))


def plan_text(plan: Plan) -> str:
    """The JSON text of a plan, in the order in which the file is written."""
    fields = [f'"gardenplot": {VERSION}', f'"place": {part_text(plan.place)}']
    for name in LISTS:
        parts = [part_text(part) for part in getattr(plan, name)]
        if parts or name in ("beds", "crops", "plantings"):
            fields.append(f'"{name}": {_within("[", parts, "]")}')
    fields += (f"{_dumped(name)}: {_dumped(json.loads(text))}" for name, text in plan.unknown)
    return _within("{", fields, "}")


def _dumped(raw: Any) -> str:
    return json.dumps(raw, ensure_ascii=False, indent=len(_STEP), allow_nan=False)


def _within(opens: str, parts: list[str], closes: str) -> str:
    """Parts between brackets, each beginning a line; brackets of nothing stand together."""
    if not parts:
        return opens + closes
    within = f",\n{_STEP}".join(map(_inside, parts))
    return f"{opens}\n{_STEP}{within}\n{closes}"


def _inside(text: str) -> str:
    """A text a step further in; words of a plan have no line breaks in it, since JSON writes them as signs."""
    return text.replace("\n", f"\n{_STEP}")
