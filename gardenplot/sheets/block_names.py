"""Letters and names over the blocks of a drawing."""

from attrs import evolve, frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import name_of
from gardenplot.layout import LaidOut, Layout
from gardenplot.layout.positions import positions
from gardenplot.layout.staked import beyond, staked
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.sheets.kept_letters import with_kept
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, fitted
from gardenplot.sheets.render import Frame
from gardenplot.units import MM
from gardenplot.units.figures import span
from gardenplot.words import _

_LARGE, _SMALL = 12, 9
"""Sizes in points of names, and of letters that lack room for more."""
_ABOVE = 9.0
"""Points from letters to those that stand above them, since they lack room beside each other."""
_LETTER, _LEAST_NAME = 13.0, 40.0
"""Points that a single letter takes at most, and that a name needs at least."""
_BETWEEN = 6.0
"""Points between two names, where one of them is longer than its block."""
_AROUND = 120.0
"""Points that a name may take over a bed of one block."""
_RING = "\N{WHITE CIRCLE}"


@frozen
class _Name:
    """Words with their middle at an x in points, in a size, so many lines above the drawing.

    Where they are cut to the length of their block, they are `whole` if there is room beside it.
    """

    middle: float
    words: str
    size: int
    line: int = 0
    whole: str = ""

    @property
    def half(self) -> float:
        return float(pdfmetrics.stringWidth(self.words, BOLD, self.size)) / 2

    @property
    def span(self) -> tuple[float, float]:
        """From where to where it stands."""
        return self.middle - self.half, self.middle + self.half


def draw_names(
    page: Canvas, plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], frame: Frame,
    base: float,
) -> None:  # fmt: skip
    """Draw letter and name over what is seen of each block; the letter alone where there is no room for more.

    What stands in the gaps of another planting is named beside it, and so is what places in a block are kept for,
    with a ring before its letter. Letters that lack room stand on two lines by turns; only one that would still stand
    upon another is left out: the stakes below have it.
    """
    kept = [one.layout for one in with_kept(laid, layouts)]
    names = _placed(_names(plan, laid, layouts, kept, look, frame))
    for name in _whole(names, page._pagesize[0]):
        page.setFont(BOLD, name.size)
        page.drawCentredString(name.middle, base + _ABOVE * name.line, name.words)


def _names(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], kept: list[Layout], look: dict[str, Look],
    frame: Frame,
) -> list[_Name]:  # fmt: skip
    """What is written over each block that is seen."""
    found = []
    whose = {one.id: one.gaps_of for one in plan.plantings if one.gaps_of is not None}
    shown = {layout.planting for layout in layouts}
    for layout in (one for one in layouts if whose.get(one.planting) not in shown):
        start, end = (at / MM for at in staked(laid.bed, layout))
        if frame.window is not None:
            start, end = max(start, frame.window.left), min(end, frame.window.right)
        if start >= end or not _is_seen(layout, frame):
            continue
        room = (end - start) * frame.along
        if len(layouts) == 1 and frame.window is None:
            room = max(room, _AROUND)
        own = [one.planting for one in layouts if layout.planting in (one.planting, whose.get(one.planting))]
        names = [f"{look[one].letter}  {name_of(plan, one)}" for one in own]
        lacking = sum(beyond(laid.bed, layout))
        if lacking:
            names.append(_("{length} do not fit").format(length=span(lacking, plan.place.units)))
        names += [
            f"{_RING} {look[one.planting].letter}  {name_of(plan, one.planting)}"
            for one in kept
            if _is_in(one, layout)
        ]
        words = whole = one_line(" · ".join(names))
        if pdfmetrics.stringWidth(words, BOLD, _LARGE) > room:
            words = look[layout.planting].letter if room < _LEAST_NAME else fitted(words, BOLD, _LARGE, room)
        is_large = pdfmetrics.stringWidth(words, BOLD, _LARGE) <= max(room, _LETTER)
        middle, size = frame.place((start + end) / 2, 0)[0], _LARGE if is_large else _SMALL
        found.append(_Name(middle, words, size, whole=whole if lacking or room >= _LEAST_NAME else ""))
    return found


def _is_seen(layout: Layout, frame: Frame) -> bool:
    """Whether rows of a block lie across the part of the bed that is seen; one without places lies all across it."""
    across = positions(layout)[:, 1] / MM
    if frame.window is None or not len(across):
        # A sown band has plants and no places.
        return True
    return bool(across.min() <= frame.window.bottom and frame.window.top <= across.max())


def _is_in(kept: Layout, layout: Layout) -> bool:
    """Whether kept places begin in a block."""
    return kept.first_plant is not None and layout.start <= kept.first_plant <= layout.end


def _placed(names: list[_Name]) -> list[_Name]:
    """Names beside each other on one line or, where some lack room, small and on two."""
    one_line_high = _on_lines(names, 1)
    if len(one_line_high) == len(names):
        return one_line_high
    return _on_lines([evolve(name, size=_SMALL) for name in names], 2)


def _on_lines(names: list[_Name], lines: int) -> list[_Name]:
    free_from, found = [0.0] * lines, []
    for name in names:
        for line in range(lines):
            if name.middle - name.half >= free_from[line]:
                free_from[line] = name.middle + name.half + 1
                found.append(evolve(name, line=line))
                break
    return found


def _whole(names: list[_Name], width: float) -> list[_Name]:
    """The names, those that are cut in whole where the others on their line and the paper leave room above them."""
    found = list(names)
    for number, name in enumerate(names):
        if name.whole in ("", name.words):
            continue
        beside = [other.span for at, other in enumerate(found) if at != number and other.line == name.line]
        low = max((right + _BETWEEN for _left, right in beside if right <= name.middle), default=MARGIN)
        high = min((left - _BETWEEN for left, _right in beside if left >= name.middle), default=width - MARGIN)
        for whole in (evolve(name, words=name.whole, size=size) for size in (name.size, _SMALL)):
            moved = evolve(whole, middle=min(max(name.middle, low + whole.half), high - whole.half))
            # It still stands over its block.
            if low <= moved.span[0] <= name.middle <= moved.span[1]:
                found[number] = moved
                break
    return found
