"""A cover as it is typed: its place, its dates, its hoops, cloth and film; hoops with a height are half-ellipses."""

from collections.abc import Callable, Mapping
from typing import Any

from attrs import evolve

from gardenplot.errors import PlanError, at_field
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.reading import length_from, needed_length, text_of, whole_from
from gardenplot.plan import Cover, HoopShape, Plan, Sheeting, bed_of, planting_of
from gardenplot.plan.edits import add_cover, change_cover
from gardenplot.season import dates_of
from gardenplot.units import Length, Units, length_of, parse_length
from gardenplot.words import _

Texts = Mapping[str, str]
LENGTHS = ("hoop_spacing", "rise", "leg", "apron", "cloth_end", "buried")
_USUAL = {Units.METRIC: ("1.2 m", "25 cm", "25 cm", "1 m")}
"""Hoops apart, leg in the ground, apron and cloth beyond each end: common practice, no source; else in feet."""
_USUAL_IN_FEET = ("4 ft", "10 in", "10 in", "3 ft")


def usual_cover(plan: Plan, bed_id: str, planting_id: str | None) -> Cover:
    """A cover over a block from the day that it is in the ground, or over a whole bed."""
    units, bed = plan.place.units, bed_of(plan, bed_id)
    spacing, leg, apron, end = (parse_length(text) for text in _USUAL.get(units, _USUAL_IN_FEET))
    first, last = (length_of(at, units) for at in bed.zone)
    cover = Cover("cover", bed_id, first, last, hoop_spacing=spacing, leg=leg, apron=apron, cloth_end=end)
    if planting_id is None:
        return cover
    layout, dates = layout_in(plan, planting_id), dates_of(plan, planting_of(plan, planting_id))
    start, stop = (length_of(max(0, at), units) for at in (layout.start, layout.end))
    return evolve(cover, start=start, end=stop, on=dates.in_ground)


def cover_texts(cover: Cover) -> dict[str, str]:
    """The fields of a cover as they are typed, by name."""
    names = ("start", "end", "on", "off", "sheeting", *LENGTHS, "layers")
    return {name: text_of(getattr(cover, name)) for name in names}


def with_cover(plan: Plan, cover: Cover, texts: Texts) -> Plan:
    """The plan with a cover as typed, a new one or one of its own with changes. Raises LengthError, PlanError."""
    units, shown = plan.place.units, cover_texts(cover)
    reads: dict[str, Callable[[str, str], Any]] = {
        **dict.fromkeys(("start", "end"), lambda text, before: needed_length(text, before, units)),
        **dict.fromkeys(LENGTHS, lambda text, before: length_from(text, before, units)),
        **dict.fromkeys(("on", "off"), lambda text, _before: date_from(text)),
        "layers": lambda text, _before: whole_from(text) or 1,
        "sheeting": lambda text, _before: Sheeting(text),
    }
    changes: dict[str, Any] = {}
    for name, read in reads.items():
        with at_field(name):
            changes[name] = read(texts[name], shown[name])
    changes["hoop_shape"] = HoopShape.HALF_ROUND if changes["rise"] is None else HoopShape.HALF_ELLIPSE
    with at_field("end"):
        _check_end(plan, cover, changes["end"])
    if cover in plan.covers:
        return change_cover(plan, cover.id, **changes)
    return add_cover(plan, evolve(cover, **changes))


def _check_end(plan: Plan, cover: Cover, end: object) -> None:
    """A cover ends where its bed does, at the latest."""
    bed = bed_of(plan, cover.bed)
    if isinstance(end, Length) and end.nm > bed.length.nm:
        raise PlanError(
            _("{end} is beyond the foot of {bed}, which is {length} long").format(
                end=end, bed=bed.name, length=length_of(bed.length.nm, plan.place.units)
            )
        )
