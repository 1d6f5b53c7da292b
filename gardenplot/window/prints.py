"""What is printed from the menu: which sheets, the name of their file, what to beware of, the page shown first."""

from datetime import date

from attrs import frozen

from gardenplot.plan import Plan
from gardenplot.sheets.choices import NAMES, USUAL, Choices, Kind
from gardenplot.words import _


@frozen
class Print:
    """What is printed, opened at the page of a bed or of a day."""

    kinds: tuple[Kind, ...]
    file: str
    caution: str
    choices: Choices = USUAL
    bed: str | None = None
    day: date | None = None

    @property
    def name(self) -> str:
        """What it is called."""
        return NAMES[self.kinds[0]] if len(self.kinds) == 1 else _("Sheets")


def beds_print(bed: str | None) -> Print:
    """Bed sheets, opened at the page of a bed."""
    caution = _("Print at 100 %, not fitted to the page, and measure the bar.")
    return Print((Kind.BEDS,), _("{name} bed sheets.pdf"), caution, bed=bed)


def dates_print() -> Print:
    """The dates by week."""
    return Print((Kind.DATES,), _("{name} dates.pdf"), _("What came about is ticked already."))


def list_print() -> Print:
    """What to buy and carry."""
    return Print((Kind.LIST,), _("{name} shopping list.pdf"), _("What is in store already is ticked."))


def changed_print(before: Plan) -> Print:
    """Only the stakes that are not where an earlier plan had them."""
    caution = _("Only what moved since the plan was saved last.")
    return Print((Kind.CHANGED,), _("{name} what changed.pdf"), caution, Choices(before=before))


def cards_print(day: date | None) -> Print:
    """Door cards, opened at the week of a day."""
    caution = _("A page for each week: hang it where the covers are put on.")
    return Print((Kind.CARDS,), _("{name} door cards.pdf"), caution, day=day)
