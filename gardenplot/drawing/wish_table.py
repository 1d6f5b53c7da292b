"""Wishes as rows of words, each with what the plan lacks of it as it stands."""

from attrs import frozen

from gardenplot.drawing.days import day_words
from gardenplot.drawing.tables import order_rows
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
    _("crop"), _("least"), _("most"), _("planted"), "", _("days"), _("from"), _("to"), _("worth each"), _("beds"),
    _("pieces of"), _("repeated"),
)  # fmt: skip
WISH_NUMBERS = (1, 2, 3, 5, 8)


def wish_rows(plan: Plan) -> tuple[WishRow, ...]:
    """A row for each wish, in the plan's order."""
    planted = planted_for_wishes(lay_out_plan(plan)) if plan.wishes else {}
    return tuple(WishRow(wish.id, _cells(plan, wish, _planted(wish, planted))) for wish in plan.wishes)


def lacks_anything(plan: Plan) -> bool:
    """Whether a wish or an order of a plan lacks plants as it stands."""
    if plan.wishes:
        planted = planted_for_wishes(lay_out_plan(plan))
        if any(has < _wanted(wish) for wish in plan.wishes for has in _planted(wish, planted)):
            return True
    return bool(plan.orders) and any(row.planted < row.stand for row in order_rows(plan))


def _wanted(wish: Wish) -> int:
    """Of a wish that may be any size, all is met by its least."""
    return max(1, wish.least) if wish.most is None else wish.most


def _planted(wish: Wish, planted: dict[tuple[str, int], int]) -> tuple[int, ...]:
    """The plants that stand for each time of a wish."""
    return tuple(planted.get((wish.id, time), 0) for time in range(1, wish.times + 1))


def _cells(plan: Plan, wish: Wish, planted: tuple[int, ...]) -> tuple[str, ...]:
    return (
        crop_of(plan, wish.crop).name,
        grouped(wish.least),
        "" if wish.most is None else grouped(wish.most),
        grouped(sum(planted)),
        _met(wish, planted),
        "" if wish.days is None else grouped(wish.days),
        "" if wish.earliest is None else day_words(wish.earliest),
        "" if wish.latest is None else day_words(wish.latest),
        f"{wish.worth:g}",
        ", ".join(bed_of(plan, bed).name for bed in wish.beds) or _("any"),
        "" if wish.piece is None else _("{count} or more").format(count=grouped(wish.piece)),
        _repeated(wish),
    )


def _repeated(wish: Wish) -> str:
    if wish.times == 1:
        return ""
    words = ngettext("{times} times, every day", "{times} times, every {days} days", wish.every_days)
    return words.format(times=grouped(wish.times), days=grouped(wish.every_days))


def _met(wish: Wish, planted: tuple[int, ...]) -> str:
    short = sum(max(0, _wanted(wish) - has) for has in planted)
    if not short:
        return _("met")
    if not any(planted):
        return _("not planted")
    return ngettext("short by {count} plant", "short by {count} plants", short).format(count=grouped(short))
