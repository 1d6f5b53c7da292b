"""Wishes as rows of words, each with what the plan lacks of it as it stands."""

from attrs import frozen

from gardenplot.drawing.days import day_words
from gardenplot.layout import lay_out_plan, planted_for_wishes
from gardenplot.plan import Plan, Wish, bed_of, crop_of
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


@frozen
class WishRow:
    """A wish: its cells in the order of `WISH_COLUMNS`."""

    wish: str
    cells: tuple[str, ...]


WISH_COLUMNS = (
    _("crop"), _("least"), _("most"), _("days"), _("from"), _("to"), _("worth each"), _("planted"), "", _("beds"),
)  # fmt: skip
WISH_NUMBERS = (1, 2, 3, 6, 7)


def wish_rows(plan: Plan) -> tuple[WishRow, ...]:
    """A row for each wish, in the plan's order."""
    planted = planted_for_wishes(lay_out_plan(plan)) if plan.wishes else {}
    return tuple(WishRow(wish.id, _cells(plan, wish, planted.get(wish.id, 0))) for wish in plan.wishes)


def _cells(plan: Plan, wish: Wish, planted: int) -> tuple[str, ...]:
    return (
        crop_of(plan, wish.crop).name,
        grouped(wish.least),
        "" if wish.most is None else grouped(wish.most),
        "" if wish.days is None else grouped(wish.days),
        "" if wish.earliest is None else day_words(wish.earliest),
        "" if wish.latest is None else day_words(wish.latest),
        f"{wish.worth:g}",
        grouped(planted),
        _met(wish, planted),
        ", ".join(bed_of(plan, bed).name for bed in wish.beds) or _("any"),
    )


def _met(wish: Wish, planted: int) -> str:
    most = wish.most if wish.most is not None else max(1, wish.least)
    if planted >= most:
        return _("met")
    if not planted:
        return _("not planted")
    short = most - planted
    return ngettext("short by {count} plant", "short by {count} plants", short).format(count=grouped(short))
