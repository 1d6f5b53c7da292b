"""The shopping list on paper: a line a thing with a box to tick, what to buy large, upright, in black."""

from datetime import date

from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.shopping_list import ShopGroup, ShopRow, cost_words, shop_groups
from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted, list_head
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, Paper, Sheets
from gardenplot.sheets.ticked_list import BOX, ROW, Part, ticked_list
from gardenplot.supplies.shopping import EVERYTHING, Asked
from gardenplot.words import _

_SHARES = (0.38, 0.28, 0.22, 0.12)
"""What the thing, what to buy, what is needed and its cost take of the width."""
_CAUTION = _("Packets and labels come before these sums. Treated seed is no food: gloves on, and keep its packet.")


def shopping_sheet(
    plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None, asked: Asked = EVERYTHING,
    told: Told = untold,
) -> Sheets:  # fmt: skip
    """The list of what to buy and carry; the same plan, paper and day give the same bytes.

    Raises PlanError where nothing is needed.
    """
    groups = shop_groups(plan, asked)
    if not groups:
        raise PlanError(_("nothing is needed yet, so there is no list"))
    cost = cost_words(plan, groups)
    parts = [Part(group.name, _counted(group), group.rows) for group in groups]
    title = _("Shopping list: {name}").format(name=name or plan.place.name)
    caution = _("Cost: {cost}. {caution}").format(cost=cost, caution=_CAUTION) if cost else _CAUTION

    def head(pages: int) -> ListHead:
        return list_head(plan, _("Shopping list"), name, printed, caution, pages)

    return ticked_list(parts, _draw_row, paper, title, head, told)


def _counted(group: ShopGroup) -> str:
    """What its columns are, at the right of a group's heading, where there are more than what to buy."""
    return _("to buy · of what is needed · cost") if any(row.cells[4] for row in group.rows) else ""


def _draw_row(page: Canvas, row: ShopRow, top: float, right: float) -> None:
    base = top - ROW / 2 - 4
    what, needed, _stored, to_buy, cost = row.cells
    is_in_store = row.item.lacking.value == 0
    draw_box(page, MARGIN + 2, top - ROW / 2, BOX, ticked=is_in_store)
    left = MARGIN + BOX + 10
    spare = right - left
    words = _("of {needed}").format(needed=needed) if to_buy and to_buy != needed else ""
    cells = ((what, FACE, 12), (to_buy or needed, BOLD, 14), (words, FACE, 11), (cost, FACE, 11))
    for share, (text, face, size) in zip(_SHARES, cells, strict=True):
        draw_fitted(page, text, (left, base), share * spare - 6, face, size)
        left += share * spare
