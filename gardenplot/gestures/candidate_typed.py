"""A candidate that is typed: a planting with another pattern, direction and lengths, and nothing else changed."""

from collections.abc import Mapping

from attrs import fields

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.typed import PLANTING_FIELDS
from gardenplot.layout.candidate import Changes
from gardenplot.plan import Direction, Pattern, Plan, Planting, bed_of, planting_of
from gardenplot.plan.edits import change_planting

_NAMES = ("rows", "in_row", "row_spacing", "edge")
CANDIDATE_FIELDS = tuple(field for name in _NAMES for field in PLANTING_FIELDS if field.name == name)
"""The fields of a planting that a candidate is typed with, as they are in the panel."""
"""Patterns whose rows may run across the bed."""


def patterns_for(plan: Plan, planting_id: str) -> tuple[Pattern, ...]:
    """The patterns that a planting can be given as it is: rings in a round bed, own offsets if it has some."""
    planting = planting_of(plan, planting_id)
    shown = {Pattern.RINGS: bed_of(plan, planting.bed).diameter is not None, Pattern.OFFSETS: bool(planting.offsets)}
    return tuple(pattern for pattern in Pattern if shown.get(pattern, True) or pattern is planting.pattern)


def typed_candidate(
    plan: Plan, planting_id: str, pattern: Pattern, direction: Direction, texts: Mapping[str, str]
) -> tuple[Plan, dict[str, str]]:
    """The plan with a planting as it is typed, and by the name of a field what is wrong there.

    Words for no single field stand under "". A text that is shown already changes nothing.
    """
    wrong: dict[str, str] = {}
    turned = direction if pattern.has_even_rows else Direction.ALONG
    after = plan
    try:
        after = change_planting(plan, planting_id, pattern=pattern, direction=turned)
    except PlanError as error:
        wrong[""] = error.says
    for field in CANDIDATE_FIELDS:
        try:
            after = field.apply(plan, planting_id, texts[field.name], after)
        except GardenplotError as error:
            wrong[field.name] = error.says
    return after, wrong


def changes_between(plan: Plan, after: Plan, planting_id: str) -> Changes:
    """The fields of a planting that differ between two plans, with their values in the second."""
    one, other = planting_of(plan, planting_id), planting_of(after, planting_id)
    names = (field.name for field in fields(Planting))
    return tuple((name, getattr(other, name)) for name in names if getattr(one, name) != getattr(other, name))
