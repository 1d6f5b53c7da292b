"""The shopping list on paper: a line a thing with a box to tick, what to buy large, upright, in black."""

from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.cautions import cautions_of
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.shopping_list import ShopGroup, ShopRow, cost_words, shop_groups
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.sheets.ticked_list import BOX, ROW, Part, add_list
from gardenplot.supplies.shopping import Asked
from gardenplot.words import _

_SHARES = (0.38, 0.28, 0.24, 0.1)
"""What the thing, what to buy, what is needed and its cost take of the width."""


def add_shopping_list(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the list of what to buy and carry; raises NothingToPrintError where nothing is needed."""
    groups = shop_groups(plan, Asked(choices.beds, choices.first, choices.last))
    if not groups:
        raise NothingToPrintError(_("nothing is needed yet, so there is no list"))
    cost = cost_words(plan, groups)
    parts = [Part(group.name, _beside(group), group.rows) for group in groups]
    said_too = " ".join(cautions_of(row.item.kind for group in groups for row in group.rows))
    caution = _("Cost: {cost}. {caution}").format(cost=cost, caution=said_too) if cost else said_too
    add_list(book, parts, _draw_row, ListHead(_("Shopping list"), said, caution), told)


def _beside(group: ShopGroup) -> str:
    """What stands over the last column, where there is one."""
    return _("cost") if any(row.cells[4] for row in group.rows) else ""


def _draw_row(page: Canvas, row: ShopRow, top: float, right: float) -> None:
    base = top - ROW / 2 - 4
    what, needed, stored, to_buy, cost = row.cells
    is_in_store = row.item.lacking.value == 0
    draw_box(page, MARGIN + 2, top - ROW / 2, BOX, ticked=is_in_store)
    left = MARGIN + BOX + 10
    spare = right - left
    more = _more(needed, stored, to_buy)
    cells = ((what, FACE, 12), (to_buy or needed, BOLD, 14), (more[0] if more else "", FACE, 10), (cost, FACE, 11))
    last = max(number for number, (text, _face, _size) in enumerate(cells) if text)
    for number, (text, face, size) in enumerate(cells[: min(last + 1, 3)]):
        share = sum(_SHARES[number:]) if number == last else _SHARES[number]
        for line, words in enumerate(more if number == 2 else (text,)):
            y = base + 5 - 10 * line if number == 2 and len(more) > 1 else base
            draw_fitted(page, words, (left, y), share * spare - 6, face, size)
        left += share * spare
    page.setFont(FACE, 11)
    page.drawRightString(right, base, cost)


def _more(needed: str, stored: str, to_buy: str) -> tuple[str, ...]:
    """What is needed, where that is not what is bought, and what of it is in store."""
    if not to_buy or needed in (to_buy, "1") or to_buy.startswith(f"{needed}, "):
        return ()
    found = [_("needed: {needed}").format(needed=needed)]
    if stored:
        found.append(_("in store: {stored}").format(stored=stored))
    return tuple(found)
