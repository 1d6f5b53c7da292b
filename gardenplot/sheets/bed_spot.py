"""How large a bed is drawn on its sheet: by the room that stakes and columns leave, and the numbers over it."""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.covers import on_paper
from gardenplot.drawing.stakes import Stake
from gardenplot.plan import Bed, Plan
from gardenplot.sheets.corner_marks import BELOW_CORNERS, labels_above
from gardenplot.sheets.page_parts import FOOT_AT, GUTTER, MARGIN, SIDE_WIDTH
from gardenplot.sheets.paper import DrawingScale, scale_for
from gardenplot.sheets.stake_row import StakeRow, stake_row
from gardenplot.units import MM, Units

SCALE_LINE = 26.0
"""Points that the scale and its bar take above the bed."""
_HIGHEST: float = 62 * mm
"""A bed is drawn no higher than this, so that its stakes stand on the same page."""
_STILL_READ = 8 * mm
"""A bed is drawn lower than the highest where that keeps all of it on one page, but not lower than this."""
_STILL_SEEN = 3 * mm
"""What is left of that where the numbers of stakes need lines that lead to their places."""
_BESIDE = 8.0
"""Points by which the label of a stake at the very end of the room stands out of it."""
_NUMBERS = 10.0
"""Points above a bed for the numbers of its stakes on one line, which stand between it and the names."""
_ROUND_ABOUT = 81.0 + _NUMBERS
"""Points above and below a bed for its scale, its letters, its stakes and its tape."""
_AROUND = 120.0
"""Points left and right of a bed for its name and the words at the ends of its tape."""


@frozen
class Fit:
    """A bed on its page: the scale, where it begins and where its room ends in points, and the row of numbers."""

    scale: DrawingScale
    left: float
    right: float
    row: StakeRow


@frozen
class Spot:
    """A bed on its page, before it is drawn below y `top`, with a rim in nm round it and what is told `above` it.

    So many points `below` it are for the letters of places that are kept.
    """

    page: Canvas
    bed: Bed
    units: Units
    rim: int
    above: tuple[tuple[str, int], ...]
    top: float
    below: float = 0.0

    @property
    def side(self) -> float:
        """Points of height of a column beside the bed."""
        return float(self.top - SCALE_LINE - FOOT_AT)

    def is_compact(self) -> bool:
        """Whether the bed leaves room for the side column, however large it is drawn."""
        room = _width(self.page, 0), _HIGHEST
        scale = scale_for(self.bed.length.nm, self.bed.width.nm, room, self.units)
        return scale.on_paper(self.bed.length.nm) <= _width(self.page, 1)

    def is_larger_beside(self, needed: float, beside: float) -> bool:
        """Whether the bed is drawn larger where it leaves room for the side column beside it.

        So much height is needed below it where that stands there as well, and so much where it does not.
        """
        whole, slim = self.ratio(needed, 0), self.ratio(beside, 1)
        return slim is not None and (whole is None or slim < whole)

    def ratio(self, needed: float, columns: int) -> int | None:
        """One to how many the bed is drawn with so many columns beside it, and so much height needed below it.

        None where that leaves too little height for it.
        """
        free = self._free(needed)
        if free < _STILL_READ:
            return None
        fit = self.fit(needed, columns)
        is_in = fit.scale.on_paper(self._sides[1]) <= _height_for(free) - fit.row.height + _NUMBERS
        return fit.scale.ratio if is_in else None

    def fit(self, needed: float, columns: int) -> Fit:
        """The bed as large as the height that is left lets it be, also below numbers that need more than a line."""
        wide, high = columns_left(self.page, columns) - (0 if columns else 2), _height_for(self._free(needed))
        fit = None
        while fit is None or fit.scale.on_paper(self._sides[1]) > high - fit.row.height + _NUMBERS >= _STILL_SEEN:
            lower = high if fit is None else high - fit.row.height + _NUMBERS
            scale = scale_for(*self._sides, (_width(self.page, columns), lower), self.units)
            left, right = MARGIN + 1 + (wide - scale.on_paper(self.bed.length.nm)) / 2, MARGIN + 1 + wide
            fit = Fit(scale, left, right, self.row(left, scale.on_paper(MM), right))
        return fit

    def row(self, left: float, along: float, right: float) -> StakeRow:
        """What is told over a bed that begins at an x, so many points to the millimetre."""
        places = [(words, left + at / MM * along) for words, at in self.above]
        return stake_row(places, MARGIN - _BESIDE, right + _BESIDE)

    @property
    def _sides(self) -> tuple[int, int]:
        """Length and width in nm with the rim."""
        return self.bed.length.nm + 2 * self.rim, self.bed.width.nm + 2 * self.rim

    def _free(self, needed: float) -> float:
        """Points of height for the bed alone where so much is needed below it."""
        corners = BELOW_CORNERS if self.bed.outline else 0.0
        return float(self.top - FOOT_AT - needed - _ROUND_ABOUT - corners - self.below)


def spot_of(page: Canvas, plan: Plan, bed: Bed, driven: tuple[Stake, ...], top: float, below: float) -> Spot:
    """A bed with its stakes on a page, below a y in points, with so many points below it for kept places' letters."""
    boards = bed.box.board.nm if bed.box else 0
    rim = max(boards, round(on_paper(plan, bed.id).rim * MM))
    return Spot(page, bed, plan.place.units, rim, tuple(labels_above(bed, driven)), top, below)


def columns_left(page: Canvas, columns: int) -> float:
    """Points of width that so many columns at the right of a page leave."""
    return float(page._pagesize[0] - 2 * MARGIN - columns * (SIDE_WIDTH + GUTTER))


def _width(page: Canvas, columns: int) -> float:
    """Points along which a bed has room with so many columns beside it, its name and its tape with it."""
    return columns_left(page, columns) - (_AROUND if columns else 2)


def _height_for(free: float) -> float:
    """How high a bed may be drawn, in points, where so much is free for it."""
    return min(_HIGHEST, free) if free >= _STILL_READ else _HIGHEST
