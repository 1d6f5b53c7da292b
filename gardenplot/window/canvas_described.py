"""What the canvas shows as a whole, in words for a screen reader: what is selected, or what the hand measures."""

from typing import TYPE_CHECKING

from gardenplot.drawing import hand_words, handle_words
from gardenplot.drawing.captions import captions
from gardenplot.drawing.letters import looks
from gardenplot.gestures import measure
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of
from gardenplot.window import hand_lines
from gardenplot.window.sight import Sight

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Trial


def described(plan: Plan, sight: Sight, trial: "Trial | None") -> str:
    """The selection in words, or what is measured; nothing where nothing is selected."""
    if trial is not None and trial.measured is not None:
        return "\n".join(measure.readings(plan, trial.measured))
    if trial is not None and trial.gap is not None:
        lines = hand_lines.hand_lines(plan, trial, sight.day)
        return "\n".join(words for words, _ink in lines)
    if sight.bed is None:
        return ""
    bed = bed_of(plan, sight.bed)
    if sight.others:
        return hand_words.several_line(plan, sight.chosen, sight.day)
    if sight.handle is not None:
        return handle_words.handle_words(plan, bed.id, sight.handle)
    for caption in captions(plan, lay_out_bed(plan, bed), sight.day, looks(plan)):
        if caption.planting == sight.planting:
            return f"{bed.name}: {caption.look.letter} {caption.words[0]}"
    return bed.name
