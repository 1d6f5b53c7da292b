"""Letters of places that are kept for crops which follow, beside a ring, so that what stands in it is seen."""

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import Mark, Plants
from gardenplot.layout import LaidOut, Layout, kept_for
from gardenplot.layout.reserved import Follower
from gardenplot.sheets.free_paper import Box, is_free, on_page, standing
from gardenplot.sheets.paper import BOLD
from gardenplot.sheets.render import Frame, kept_radius
from gardenplot.units import MM

_SIZE = 9
_HIGH = 0.73 * _SIZE
"""Points that a capital letter is high."""
_CLEAR = 1.5
"""Points between a letter and what stands beside it."""
BELOW_KEPT = _HIGH + 2 * _CLEAR
"""Points that letters below a bed take."""
_APART = 14.0
"""Points from one letter below a bed to the next at least."""


def with_kept(laid: LaidOut, layouts: tuple[Layout, ...]) -> list[Follower]:
    """What places are kept for in some blocks."""
    return [one for one in kept_for(laid, layouts) if one.layout.plants]


def draw_below(page: Canvas, kept: list[Follower], look: dict[str, Look], frame: Frame, top: float) -> float:
    """Draw each letter under its first ring, on a line below the bed; gives the points of height that this takes."""
    taken = list[float]()
    page.setFont(BOLD, _SIZE)
    for one in kept:
        rings = (float(x) for x, _y in on_page(one.layout, frame))
        x = next((x for x in rings if all(abs(x - other) >= _APART for other in taken)), None)
        if x is not None:
            taken.append(x)
            page.drawCentredString(x, top - _CLEAR - _HIGH, look[one.layout.planting].letter)
    return BELOW_KEPT if kept else 0.0


def draw_at_rings(
    page: Canvas, kept: list[Follower], look: dict[str, Look], marks: tuple[Mark, ...], frame: Frame
) -> None:  # fmt: skip
    """Draw each letter below or above the first ring in sight where nothing else stands; none where all is full."""
    page.setFont(BOLD, _SIZE)
    plants = [standing(mark, frame) for mark in marks if isinstance(mark, Plants)] if kept else []
    for one in kept:
        letter, radius = look[one.layout.planting].letter, kept_radius(2 * one.keep_clear / MM, frame)
        half = max(pdfmetrics.stringWidth(letter, BOLD, _SIZE), _HIGH) / 2 + _CLEAR
        for place in on_page(one.layout, frame):
            beside = ((place[0], place[1] + side * (radius + half + _CLEAR)) for side in (-1, 1))
            at = next((at for at in beside if is_free(_around(at, half), plants, frame)), None)
            if at is not None:
                page.drawCentredString(at[0], at[1] - _HIGH / 2, letter)
                break


def _around(at: tuple[float, float], half: float) -> Box:
    return at[0] - half, at[1] - half, at[0] + half, at[1] + half
