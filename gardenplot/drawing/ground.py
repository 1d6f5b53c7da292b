"""The ground as marks and words: tunnels with their cold edge, paths, and beds where they lie, true to scale.

Marks of tunnels and paths are in mm on the ground, those of a bed in mm in its own frame; words know where they stand
on the ground and along which line they run, and keep their size on screen.
"""

from datetime import date
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.covers import Layer, over_bed
from gardenplot.drawing.detail import detail_at
from gardenplot.drawing.ground_placing import Box, Corners, box_of
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.marks import Hatch, Line, Mark, Outline, Pen, Point, Weight, box
from gardenplot.drawing.style import Ink
from gardenplot.findings import Finding, find_about, find_on_ground
from gardenplot.findings.ground import footprint
from gardenplot.layout import LaidOut, lay_out_plan, standing
from gardenplot.plan import Bed, Plan, Tunnel, Walk
from gardenplot.plan.ground import Frame, corners_on_ground, frame_of, frames_of
from gardenplot.units import MM
from gardenplot.words import _

_SLOPE_BESIDE = 225.0
"""How far in mm the arrow of a slope lies beside the base line."""


class Says(StrEnum):
    """What words on the ground are about."""

    BED = "bed"
    BLOCK = "block"
    STRIP = "tunnel or path"
    SLOPE = "slope"
    TROUBLE = "trouble"


@frozen(cache_hash=True)
class Stand:
    """Where words may stand: on a line through a place in mm, or so many pixels above it, or below it if less than 0.

    `side` is 0 for words centred on the place, 1 for those that begin there, -1 for those that end there.
    """

    at: Point
    side: int
    above: float = 0.0


@frozen(cache_hash=True)
class Sign:
    """Words on the ground, from the fullest to the shortest, and where they may stand, the best first.

    `turn` is how their line is turned in degrees clockwise, so that nothing stands on its head. `room` and `height`
    are those of what they are about, in mm. `about` is the id of the bed, or of the planting for a block; `bed` is
    the bed that they go with.
    """

    says: Says
    about: str
    words: tuple[str, ...]
    turn: float
    stands: tuple[Stand, ...]
    room: float = 0.0
    height: float = 0.0
    ink: Ink = Ink.INK
    bed: str | None = None


@frozen
class GroundBed:
    """A bed on the ground: its frame, its corners there in mm, and whether the plan says that it lies there."""

    laid: LaidOut
    frame: Frame
    corners: tuple[Point, ...]
    is_placed: bool

    @property
    def bed(self) -> str:
        """The bed's id."""
        return self.laid.bed.id


@frozen
class GroundFigure:
    """All that lies on the ground: marks below the beds, beds, marks over them, words, and the box round it in mm.

    Words keep clear of `solid`, and of `lines` too if they can; both in mm.
    """

    under: tuple[Mark, ...]
    beds: tuple[GroundBed, ...]
    over: tuple[Mark, ...]
    signs: tuple[Sign, ...]
    reach: Box
    solid: tuple[Corners, ...] = ()
    lines: tuple[Corners, ...] = ()

    def bed_of(self, bed: str) -> GroundBed | None:
        """A bed by its id."""
        return next((one for one in self.beds if one.bed == bed), None)


def draw_ground(plan: Plan, day: date | None, held: tuple[str, ...] = ()) -> GroundFigure:
    """Draw the ground as it is on a day, or with all that is ever planted; perhaps only the beds that are held."""
    return _drawn(plan, day, held)


@lru_cache(maxsize=16)
def _drawn(plan: Plan, day: date | None, held: tuple[str, ...]) -> GroundFigure:
    look, frames, placed = looks(plan), frames_of(plan), {one.bed for one in plan.ground}
    found = [each for one in held for each in find_about(plan, one)] if held else find_on_ground(plan)
    beds = tuple(
        _bed(laid, frames[laid.bed.id], laid.bed.id in placed)
        for laid in lay_out_plan(plan)
        if not held or laid.bed.id in held
    )
    strips: tuple[Tunnel | Walk, ...] = (*plan.paths, *plan.tunnels)
    under = [mark for strip in strips for mark in _strip(strip)]
    signs = [_strip_name(strip) for strip in strips]
    over: list[Mark] = []
    for one in beds:
        over += (_trouble(one, finding) for finding in found if finding.bed == one.bed)
        signs += [
            _bed_name(one),
            *_block_names(one, day, tuple(look[layout.planting] for layout in one.laid.layouts)),
        ]
        if one.laid.bed.slope is not None:
            over += _slope(one)
            signs.append(_slope_words(one))
    corners = [corner for one in beds for corner in one.corners]
    corners += [corner for strip in strips for corner in _corners(strip)]
    solid = (*(_around(one) for one in beds), *(wall for tunnel in plan.tunnels for wall in _walls(tunnel)))
    lines = tuple(wall for tunnel in plan.tunnels if tunnel.cold_edge for wall in _walls(tunnel, tunnel.cold_edge.nm))
    reach = box_of([(0.0, 0.0), *corners])
    return GroundFigure(tuple(under), beds, tuple(over), tuple(signs), reach, solid, lines)


def bed_marks(
    plan: Plan, look: dict[str, Look], one: GroundBed, day: date | None, scale: float, layers: frozenset[Layer]
) -> tuple[Mark, ...]:
    """The marks of a bed in its own frame at so many pixels per mm, without words: these have signs of their own."""
    over = over_bed(plan, one.bed, day, layers)
    return draw_bed(one.laid, day, look, plan.place.units, detail_at(one.laid, scale), over).unlabelled


def _around(one: GroundBed) -> Corners:
    """The rectangle round a bed."""
    bed = one.laid.bed
    return tuple(_on_ground(one, corner) for corner in box(0, 0, bed.length.nm / MM, bed.width.nm / MM))


def _walls(tunnel: Tunnel, inset: int = 0) -> tuple[Corners, ...]:
    """The four walls of a tunnel, or as many lines so far inside them."""
    corners = _corners(tunnel, inset)
    return tuple(zip(corners, (*corners[1:], *corners[:1]), strict=True))


@lru_cache(maxsize=1024)
def _bed(laid: LaidOut, frame: Frame, is_placed: bool) -> GroundBed:
    corners = tuple(_mm(frame.to_ground(x, y)) for x, y in footprint(laid.bed))
    return GroundBed(laid, frame, corners, is_placed)


def _mm(spot: tuple[float, float]) -> Point:
    return spot[0] / MM, spot[1] / MM


def _corners(strip: Tunnel | Walk, inset: int = 0) -> tuple[Point, ...]:
    frame = frame_of(strip)
    x, y = frame.to_ground(inset, inset)
    inner = Frame(round(x), round(y), frame.turn)
    size = strip.length.nm - 2 * inset, strip.width.nm - 2 * inset
    return tuple(_mm(spot) for spot in corners_on_ground(inner, *size))


def _strip(strip: Tunnel | Walk) -> list[Mark]:
    """A path as a tinted strip; a tunnel as its walls, with its cold edge tinted inside a dashed line."""
    corners = _corners(strip)
    if isinstance(strip, Walk):
        return [Outline(corners, fill=Ink.RULE, tint=0.5, pen=Pen(Ink.RULE, Weight.ROW))]
    if strip.cold_edge is None:
        return [Outline(corners, pen=Pen(Ink.INK, Weight.STAKE))]
    inner = _corners(strip, strip.cold_edge.nm)
    return [
        Outline(corners, fill=Ink.EDGE, tint=0.18),
        Outline(inner, fill=Ink.PAPER, pen=Pen(Ink.SECOND, Weight.ROW, dashed=True)),
        Outline(corners, pen=Pen(Ink.INK, Weight.STAKE)),
    ]


def _trouble(one: GroundBed, finding: Finding) -> Mark:
    """The stretch of a bed that lies where it cannot."""
    bed = one.laid.bed
    short = max(0.0, 200 - (finding.end - finding.start) / MM) / 2
    start, end = max(0.0, finding.start / MM - short), min(bed.length.nm / MM, finding.end / MM + short)
    corners = tuple(_on_ground(one, corner) for corner in box(start, 0, end, bed.width.nm / MM))
    return Outline(corners, pen=Pen(Ink.ACCENT, Weight.STAKE), hatch=Hatch.CROSSED)


def upright(turn: Fraction) -> tuple[float, bool]:
    """The turn of words along a line, and whether they run against it; upright ones are read from the right."""
    flipped = 90 <= turn < 270
    return float((turn + (180 if flipped else 0) + 180) % 360 - 180), flipped


@lru_cache(maxsize=1024)
def _bed_name(one: GroundBed) -> Sign:
    """The name of a bed beyond its head, on the line of the bed, else along an edge; never at its foot."""
    turn, flipped = upright(one.frame.turn)
    bed = one.laid.bed
    length, width = bed.length.nm / MM, bed.width.nm / MM
    upper, lower = (width, 0.0) if flipped else (0.0, width)
    side = -1 if flipped else 1
    stands = (
        Stand(_on_ground(one, (0, width / 2)), -side),
        Stand(_on_ground(one, (0, upper)), side, above=2.0),
        Stand(_on_ground(one, (0, lower)), side, above=-2.0),
        Stand(_on_ground(one, (length / 2, upper)), 0, above=2.0),
        Stand(_on_ground(one, (length / 2, lower)), 0, above=-2.0),
    )
    return Sign(Says.BED, bed.id, (bed.name,), turn, stands, length, width, bed=bed.id)


@lru_cache(maxsize=1024)
def _block_names(one: GroundBed, day: date | None, looks: tuple[Look, ...]) -> tuple[Sign, ...]:
    """The letter of each block, with its crop's name where there is room."""
    look = {each.planting: each for each in looks}
    turn, _flipped = upright(one.frame.turn)
    names = {grown.planting.id: grown.crop.name for grown in one.laid.grown}
    across = one.laid.bed.width.nm
    return tuple(
        Sign(
            Says.BLOCK, layout.planting,
            (f"{look[layout.planting].letter}  {names[layout.planting]}", look[layout.planting].letter), turn,
            (Stand(_mm(one.frame.to_ground((layout.start + layout.end) / 2, across / 2)), 0),),
            layout.length / MM, across / MM, ink=look[layout.planting].ink, bed=one.bed,
        )
        for layout in standing(one.laid, day)
    )  # fmt: skip


def _strip_name(strip: Tunnel | Walk) -> Sign:
    """The name of a tunnel above its upper left corner, as one reads it, or at another; of a path inside it."""
    frame, (length, width) = frame_of(strip), (strip.length.nm, strip.width.nm)
    turn, flipped = upright(frame.turn)

    def stand(along: float, across: float, side: int, above: float = 0.0) -> Stand:
        along, across = (1 - along, 1 - across) if flipped else (along, across)
        return Stand(_mm(frame.to_ground(along * length, across * width)), side, above)

    beside = (stand(0, 0, 1, 6.0), stand(1, 0, -1, 6.0), stand(0, 1, 1, -6.0), stand(1, 1, -1, -6.0))
    ends = stand(1, 0.5, 1), stand(0, 0.5, -1)
    if isinstance(strip, Walk):
        inside = tuple(stand(share, 0.5, 0) for share in (0.5, 0.25, 0.75))
        stands, ink = (*inside, *ends, *beside), Ink.SECOND
    else:
        stands, ink = (*beside, *ends), Ink.INK
    return Sign(Says.STRIP, strip.id, (strip.name,), turn, stands, length / MM, width / MM, ink)


def _slope(one: GroundBed) -> list[Mark]:
    """An arrow down the slope, beside the base line: a bed rises from its head to its foot."""
    high, low = _slope_ends(one.laid.bed)
    beside = -_SLOPE_BESIDE
    barbs = ((low + 180, beside - 80), (low + 180, beside + 80))
    tip, pen = _on_ground(one, (low, beside)), Pen(Ink.INK, Weight.EDGE)
    starts = ((high, beside), *barbs)
    return [Line(_on_ground(one, start), tip, pen) for start in starts]


def _on_ground(one: GroundBed, place: Point) -> Point:
    """A place in the frame of a bed as one on the ground, both in mm."""
    return _mm(one.frame.to_ground(place[0] * MM, place[1] * MM))


def _slope_ends(bed: Bed) -> tuple[float, float]:
    """Where on the tape the arrow of a slope begins and ends, in mm."""
    length = bed.length.nm / MM
    reach = min(3000.0, length * 0.4)
    return length / 2 + reach / 2, length / 2 - reach / 2


def _slope_words(one: GroundBed) -> Sign:
    turn, flipped = upright(one.frame.turn)
    high, low = _slope_ends(one.laid.bed)
    words, side = _("{slope} down").format(slope=one.laid.bed.slope), -1 if flipped else 1
    stands = (
        Stand(_on_ground(one, (high + 100, -_SLOPE_BESIDE)), side),
        Stand(_on_ground(one, (low - 100, -_SLOPE_BESIDE)), -side),
    )
    return Sign(Says.SLOPE, one.bed, (words, str(one.laid.bed.slope)), turn, stands, bed=one.bed)
