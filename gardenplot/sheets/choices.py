"""What a grower chooses of a print: which sheets, which beds, which days, against which older plan."""

from datetime import date
from enum import StrEnum

from attrs import frozen

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.sheets.label_sizes import STAKES, LabelSize
from gardenplot.words import _


class Kind(StrEnum):
    """The kinds of sheet, in the order in which they are bound."""

    BEDS = "beds"
    DRAWING = "drawing"
    STRIPS = "strips"
    COUNTS = "counts"
    LABELS = "labels"
    CHANGED = "changed"
    SOWING = "sowing"
    DATES = "dates"
    LIST = "list"
    CARDS = "cards"
    WORKINGS = "workings"


NAMES = {
    Kind.BEDS: _("Bed sheets"),
    Kind.DRAWING: _("Drawing to scale"),
    Kind.STRIPS: _("Spacing strips"),
    Kind.COUNTS: _("Count sheet"),
    Kind.LABELS: _("Labels"),
    Kind.CHANGED: _("What changed"),
    Kind.SOWING: _("Sowing list"),
    Kind.DATES: _("Dates by week"),
    Kind.LIST: _("Shopping list"),
    Kind.CARDS: _("Door cards"),
    Kind.WORKINGS: _("Workings"),
}
"""What each kind is called."""


class Labelled(StrEnum):
    """What labels are for."""

    BOTH = "both"
    BLOCKS = "blocks"
    TRAYS = "trays"


@frozen
class Choices:
    """What is printed and how.

    The ids of the beds, all of them where none is named; for lists and labels the first and last day for which
    things are needed, or sown, or planted; for the sheet of what changed the plan by which the stakes stand; for the
    drawing one to how many, else the largest usual scale; for the bed sheets how far beside the rows strings are
    drawn, in nm; for spacing strips how long a board is in nm, else 1.2 m or 4 ft; for labels their size, the first
    free one on a sheet that was begun, from 1, what they are for, and whether the first of a sheet that has no margin
    says of which plan it is.
    """

    beds: frozenset[str] = frozenset()
    first: date | None = None
    last: date | None = None
    before: Plan | None = None
    scale: int | None = None
    string: int = 0
    board: int | None = None
    label: LabelSize = STAKES
    labels_from: int = 1
    labelled: Labelled = Labelled.BOTH
    slip: bool = True


USUAL = Choices()
"""What is printed where nobody chose."""


def chosen(plan: Plan, choices: Choices) -> tuple[LaidOut, ...]:
    """The beds to print, laid out, in the order of the plan."""
    return tuple(laid for laid in lay_out_plan(plan) if not choices.beds or laid.bed.id in choices.beds)
