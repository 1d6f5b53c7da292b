"""A bed's outline and its obstacles as lines of text that are typed and shown.

An outline is "0 m by 0 m; 8 m by 0 m; ...": tape reading by offset from the base line. Obstacles are "post at 5 m by
50 cm, 12 cm round, 20 cm clear; box at 1 m by 1.5 m, 30 cm by 20 cm, rows 1 2".
"""

import re
from typing import Any

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.outline_drawn import with_outline
from gardenplot.plan import Bed, Obstacle, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.units import Length, Units, length_of, parse_length
from gardenplot.words import _

_BY = " by "


def outline_text(plan: Plan, bed_id: str) -> str:
    """A bed's outline as it is typed; empty for a rectangle."""
    return "; ".join(f"{x}{_BY}{y}" for x, y in bed_of(plan, bed_id).outline)


def type_outline(plan: Plan, bed_id: str, text: str) -> Plan:
    """Give a bed another outline; an empty text makes it the rectangle that the outline reached.

    Raises LengthError or PlanError.
    """
    bed = bed_of(plan, bed_id)
    if not text.strip():
        return change_bed(plan, bed_id, **_as_rectangle(bed, plan.place.units))
    return with_outline(plan, bed_id, tuple(_point(part) for part in text.split(";") if part.strip()))


def _as_rectangle(bed: Bed, units: Units) -> dict[str, Any]:
    return {"outline": (), "length": length_of(bed.length.nm, units), "width": length_of(bed.width.nm, units)}


def _point(text: str) -> tuple[Length, Length]:
    x, by, y = text.partition(_BY)
    if not by:
        raise PlanError(_("“{typed}” is no point: write it like 8 m by 0 m").format(typed=text.strip()[:40]))
    return parse_length(x.strip()), parse_length(y.strip())


def obstacles_text(plan: Plan, bed_id: str) -> str:
    """A bed's obstacles as they are typed."""
    return "; ".join(_obstacle_text(one) for one in bed_of(plan, bed_id).obstacles)


def _obstacle_text(obstacle: Obstacle) -> str:
    round_one = obstacle.diameter is not None
    parts = [
        _("{name} at {x} by {y}").format(name=obstacle.name, x=obstacle.x, y=obstacle.y),
        _("{size} round").format(size=obstacle.diameter) if round_one else f"{obstacle.length}{_BY}{obstacle.width}",
    ]
    if obstacle.keep_clear is not None:
        parts.append(_("{length} clear").format(length=obstacle.keep_clear))
    if obstacle.rows:
        parts.append(_("rows {rows}").format(rows=" ".join(map(str, obstacle.rows))))
    return ", ".join(parts)


def type_obstacles(plan: Plan, bed_id: str, text: str) -> Plan:
    """Give a bed other obstacles; fields of a file that are not known stay with the obstacle of the same name.

    Raises LengthError or PlanError.
    """
    kept = {one.name: one.unknown for one in bed_of(plan, bed_id).obstacles}
    found = (_obstacle(part.strip()) for part in text.split(";") if part.strip())
    return change_bed(plan, bed_id, obstacles=tuple(evolve(one, unknown=kept.get(one.name, ())) for one in found))


def _obstacle(text: str) -> Obstacle:
    where, *more = (part.strip() for part in text.split(", "))
    match = re.fullmatch(r"(?P<name>.+) at (?P<place>.+)", where)
    if match is None or not more:
        raise PlanError(
            _("“{typed}” is no obstacle: write it like post at 5 m by 50 cm, 12 cm round, 20 cm clear").format(
                typed=text[:40]
            )
        )
    x, y = _point(match["place"])
    obstacle = Obstacle(match["name"], x, y)
    for part in more:
        obstacle = evolve(obstacle, **_detail(part))
    return obstacle


def _detail(text: str) -> dict[str, Any]:
    """What one part says: its size, what is kept clear, or the rows that it is in the way of."""
    if text.endswith(" round"):
        return {"diameter": parse_length(text.removesuffix(" round"))}
    if text.endswith(" clear"):
        return {"keep_clear": parse_length(text.removesuffix(" clear"))}
    if re.fullmatch(r"rows( \d{1,4})+", text, re.ASCII):
        return {"rows": tuple(int(number) for number in text.split()[1:])}
    length, width = _point(text)
    return {"length": length, "width": width}
