"""What is printed from the menu: which sheets, the name of their file, what to beware of, the page shown first."""

from datetime import date

from attrs import frozen

from gardenplot.plan import Plan
from gardenplot.sheets.choices import NAMES, USUAL, Choices, Kind
from gardenplot.words import _

_TRUE_SIZE = _("Print at 100 %, not fitted to the page, and measure the bar.")
_CAUTIONS = {
    Kind.DATES: _("What came about is ticked already."),
    Kind.LIST: _("What is in store already is ticked."),
    Kind.CHANGED: _("Only what moved since the plan was saved last."),
    Kind.CARDS: _("A page for each week: hang it where the covers are put on."),
    Kind.COUNTS: _("A box for each row: what is planted stands beside it."),
    Kind.SOWING: _("What was sown already is ticked."),
    Kind.WORKINGS: _("How each number came about, to be followed on paper."),
    Kind.LABELS: _("Print at 100 %, not fitted to the page, and cut along the lines."),
}
_SET = (Kind.BEDS, Kind.COUNTS, Kind.SOWING, Kind.DATES, Kind.LIST, Kind.CARDS)
"""What a season is worked by; what takes many pages is left to be chosen."""


@frozen
class Print:
    """What is printed, opened at the page of a bed or of a day."""

    kinds: tuple[Kind, ...]
    choices: Choices = USUAL
    bed: str | None = None
    day: date | None = None

    @property
    def name(self) -> str:
        """What it is called."""
        return NAMES[self.kinds[0]] if len(self.kinds) == 1 else _("Sheets")

    @property
    def file(self) -> str:
        """The end of a file's name for it."""
        return f"{self.name.lower()}.pdf"

    @property
    def caution(self) -> str:
        """What to beware of or to know in printing it."""
        return _CAUTIONS.get(self.kinds[0], _TRUE_SIZE) if len(self.kinds) == 1 else _TRUE_SIZE


def print_of(kind: Kind, bed: str | None = None) -> Print:
    """Sheets of one kind, opened at the page of a bed."""
    return Print((kind,), bed=bed)


def print_of_all() -> Print:
    """The set of sheets that a season is worked by."""
    return Print(_SET)


def print_of_changes(before: Plan) -> Print:
    """Only the stakes that are not where an earlier plan had them."""
    return Print((Kind.CHANGED,), Choices(before=before))


def print_of_cards(day: date | None) -> Print:
    """Door cards, opened at the week of a day."""
    return Print((Kind.CARDS,), day=day)
