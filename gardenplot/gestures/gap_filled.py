"""Filling gaps: over the gap that the hand goes to stand the best blocks of what is wanted; a click takes them."""

from gardenplot.drawing.gap_words import gap_words, nothing_words
from gardenplot.drawing.letters import looks_in_hand
from gardenplot.filling.now import GapNow, fill_now, gap_at
from gardenplot.filling.offers import gaps_on
from gardenplot.gestures.stage import Finished, Gesture, Pointer, Pressed, Stage, Stepped, Trial
from gardenplot.gestures.together import against
from gardenplot.layout.cold_edge import Stretch
from gardenplot.plan import Crop, Plan
from gardenplot.plan.edits import carry_crop
from gardenplot.words import _

FILL = _("Fill a gap in {bed}: {crop}")


def fill_gaps(stage: Stage, crop: Crop | None, first: tuple[str, int] | None) -> Gesture:
    """Fill gaps until the hand gives up, with one crop or with what the plan wishes for and its orders lack.

    It begins at the gap round `first`, a bed and a reading in nm, or else the next one.
    """
    at = _nearest(stage, first)
    while True:
        found = _found(stage, crop, at)
        trial = _trial(stage.plan, found) if found is not None else None
        stage.show(trial)
        event = yield
        match event:
            case Pointer():
                at = (event.bed, event.x) if event.bed is not None else None
            case Stepped():
                at = _stepped(stage, at, event)
            case Pressed() | Finished() if trial is not None and found is not None:
                if trial.can_be:
                    stage.commit(trial, FILL)
                else:
                    stage.refuse(trial)


def _found(stage: Stage, crop: Crop | None, at: tuple[str, int] | None) -> GapNow | None:
    if at is None:
        return None
    plan = stage.plan if crop is None else carry_crop(stage.plan, crop)
    return fill_now(plan, *at, stage.day, crop.id if crop is not None else None)


def _trial(before: Plan, found: GapNow) -> Trial:
    """The blocks of a gap, the first of which leads; without any, why nothing comes into it."""
    ids = tuple(one.planting for one in found.blocks)
    says = gap_words(found, looks_in_hand(before, found.plan))
    if not ids:
        return Trial(before, found.bed, refusal=nothing_words(found), gap=found.gap, says=says)
    wrong = against(found.plan, ids)
    return Trial(found.plan, found.bed, ids[0], against=wrong, others=ids[1:], gap=found.gap, says=says)


def _nearest(stage: Stage, first: tuple[str, int] | None) -> tuple[str, int] | None:
    """The gap round a place, else the first one of its bed or of the beds after it."""
    if first is not None and gap_at(stage.plan, *first, stage.day) is not None:
        return first
    gaps = _gaps(stage)
    own = [gap for gap in gaps if first is not None and gap[0] == first[0]]
    return next(((bed, start) for bed, (start, _end) in (*own, *gaps)), None)


def _gaps(stage: Stage) -> list[tuple[str, Stretch]]:
    return [(bed.id, gap) for bed in stage.plan.beds for gap in gaps_on(stage.plan, bed.id, stage.day)]


def _stepped(stage: Stage, at: tuple[str, int] | None, step: Stepped) -> tuple[str, int] | None:
    """The gap before or after this one along its bed, or the first one of the bed before or after; else this one."""
    gaps = _gaps(stage)
    if at is None:
        return _nearest(stage, None)
    if step.along:
        ahead = [
            (bed, gap) for bed, gap in gaps if bed == at[0] and (gap[0] > at[1] if step.along > 0 else gap[1] < at[1])
        ]
        ahead = ahead if step.along > 0 else ahead[::-1]
    else:
        order = [bed.id for bed in stage.plan.beds]
        beds = order[order.index(at[0]) + 1 :] if step.across > 0 else order[: order.index(at[0])][::-1]
        ahead = [
            (bed, gap) for bed in beds for gap in [next((one for each, one in gaps if each == bed), None)] if gap
        ]
    return next(((bed, start) for bed, (start, _end) in ahead), at)
