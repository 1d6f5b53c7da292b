"""What stays where it is on the season map, and why: what came about, and trays that go with their planting."""

from collections.abc import Sequence

from gardenplot.drawing.days import day_words
from gardenplot.drawing.sayings import name_of
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Actual, Establish, Plan, Planting, crop_of, planting_of
from gardenplot.season import dates_of
from gardenplot.words import _


def is_raised(plan: Plan, planting: Planting) -> bool:
    """Whether a planting is raised and set out."""
    return crop_of(plan, planting.crop).establish is Establish.TRANSPLANT


def is_in_ground(plan: Plan, planting: Planting) -> bool:
    """Whether a planting has been set out or, if direct, sown."""
    came = planting.actual or Actual()
    return came.set_out is not None or (came.sown is not None and not is_raised(plan, planting))


def stays(plan: Plan, plantings: Sequence[str]) -> Trial | None:
    """The refusal to move plantings of which one is in the ground."""
    there = next((one for one in plantings if is_in_ground(plan, planting_of(plan, one))), None)
    if there is None:
        return None
    day = dates_of(plan, planting_of(plan, there)).in_ground
    words = _("{crop} has been in the ground since {day}: only the day on which it is out can be moved")
    return refused(plan, plantings, words.format(crop=name_of(plan, there), day=day_words(day) if day else ""))


def days_follow(plan: Plan, planting_id: str) -> Trial | None:
    """The refusal to move the days of trays, which harden off when their planting does."""
    hardens = planting_of(plan, planting_id).hardens
    if hardens is None:
        return None
    words = _("these trays harden off on the days of {crop}: move that")
    return refused(plan, (planting_id,), words.format(crop=name_of(plan, hardens)))


def cleared(plan: Plan, planting_id: str) -> Trial | None:
    """The refusal to move the day on which ground was cleared."""
    came = planting_of(plan, planting_id).actual
    if came is None or came.cleared is None:
        return None
    words = _("the ground of {crop} has been free since {day}")
    return refused(plan, (planting_id,), words.format(crop=name_of(plan, planting_id), day=day_words(came.cleared)))


def refused(plan: Plan, plantings: Sequence[str], words: str) -> Trial:
    """A trial that makes no plan, and why."""
    lead, *others = plantings
    return Trial(plan, planting_of(plan, lead).bed, lead, others=tuple(others), refusal=words)
