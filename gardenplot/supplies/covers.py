"""Hoops with cloth or film over a stretch of bed.

Intervals = ceil(length / most spacing); hoops = intervals + 1; true spacing = length / intervals. A half-round hoop
over width w has the arc pi w / 2 (circumference of a circle); one of half an ellipse half the perimeter of an ellipse
with half axes w / 2 and its rise (`supplies/ellipse.py`). Hoop = arc + both legs; cloth width = arc + both aprons;
cloth length = stretch + both ends. Film has in place of the aprons what is buried at each side, and the same more at
each end; where it is buried it needs no weights. One weight at each foot of a hoop and one more at each end: common
practice, no source.
"""

from fractions import Fraction

from attrs import frozen

from gardenplot.plan import Bed, Cover, Good, GoodKind, HoopShape
from gardenplot.supplies.ellipse import PI, half_perimeter
from gardenplot.units import Length
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, worked

TYPED = Source.OF_COVER
_CIRCLE = Source.CIRCLE
_ELLIPSE = Source.ELLIPSE


@frozen
class SheetCut:
    """A sheet of cloth or film to cut: its width, its length, the area of all its layers."""

    kind: GoodKind
    width: Number
    length: Number
    area: Number
    layers: Number

    @property
    def numbers(self) -> tuple[Number, ...]:
        """What there is to cut."""
        return self.width, self.length, self.area


@frozen
class CoverCut:
    """What to cut and carry for one cover; a number is not known where the cover does not say enough.

    There is no cloth, no film or no weights where it takes none. `start` is the tape reading in nm where it begins.
    """

    count: Number
    apart: Number
    hoop: Number
    cloth: SheetCut | None
    film: SheetCut | None
    weights: Number | None
    start: int

    @property
    def hoops(self) -> int | None:
        """How many hoops."""
        return self.count.whole

    @property
    def hoop_spacing(self) -> Fraction | None:
        """From hoop to hoop, in nm."""
        return self.apart.value

    @property
    def hoop_length(self) -> int | None:
        """Length to cut a hoop to, in nm."""
        return self.hoop.whole

    @property
    def hoop_readings(self) -> tuple[int, ...]:
        """The tape readings of the hoops in nm, each rounded by itself so that the last stands at the very end."""
        if self.hoops is None or self.hoop_spacing is None:
            return ()
        return tuple(self.start + round(number * self.hoop_spacing) for number in range(self.hoops))

    @property
    def cloth_width(self) -> int | None:
        """Width of the cloth, in nm."""
        return self.cloth.width.whole if self.cloth else None

    @property
    def cloth_length(self) -> int | None:
        """Length of the cloth, in nm."""
        return self.cloth.length.whole if self.cloth else None

    @property
    def sheets(self) -> tuple[SheetCut, ...]:
        """The cloth, then the film over it."""
        return tuple(sheet for sheet in (self.cloth, self.film) if sheet is not None)

    @property
    def numbers(self) -> tuple[Number, ...]:
        """All of them, in the order in which they are used."""
        sheets = (number for sheet in self.sheets for number in sheet.numbers)
        return self.count, self.apart, self.hoop, *sheets, *((self.weights,) if self.weights else ())


def cover_cut(bed: Bed, cover: Cover) -> CoverCut:
    """Hoops, cloth and film for a cover over a bed."""
    stretch = known("stretch", cover.end.nm - cover.start.nm, Unit.LENGTH, source=TYPED)
    most = _given("hoop_spacing_most", cover.hoop_spacing)
    intervals = worked("intervals", Unit.COUNT, "stretch ÷ hoop_spacing_most", stretch, most, rounding=Rounding.UP,
                       source=RULES)  # fmt: skip
    hoops = worked("hoops", Unit.COUNT, "intervals + 1", intervals, source=RULES)
    arc = _arc(bed, cover)
    weights = worked("weights", Unit.COUNT, "2 × hoops + 2", hoops, trust=Trust.FAIR, source=RULES)
    return CoverCut(
        hoops,
        worked("hoop_spacing", Unit.LENGTH, "stretch ÷ intervals", stretch, intervals, source=RULES),
        worked("hoop_length", Unit.LENGTH, "arc + 2 × leg", arc, _given("leg", cover.leg), source=RULES),
        _cloth(cover, stretch, arc) if cover.sheeting.has_cloth else None,
        _film(cover, stretch, arc) if cover.sheeting.has_film else None,
        weights if cover.sheeting.has_cloth or not _is_buried(cover) else None,
        cover.start.nm,
    )


def _is_buried(cover: Cover) -> bool:
    return cover.buried is not None and cover.buried.nm > 0


def _cloth(cover: Cover, stretch: Number, arc: Number) -> SheetCut:
    width = worked("cloth_width", Unit.LENGTH, "arc + 2 × apron", arc, _given("apron", cover.apron), source=RULES)
    end = _given("cloth_end", cover.cloth_end)
    length = worked("cloth_length", Unit.LENGTH, "stretch + 2 × cloth_end", stretch, end, source=RULES)
    layers = known("layers", cover.layers, Unit.COUNT, source=TYPED)
    area = worked("cloth_area", Unit.AREA, "cloth_width × cloth_length × layers", width, length, layers, source=RULES)
    return SheetCut(GoodKind.CLOTH, width, length, area, layers)


def _film(cover: Cover, stretch: Number, arc: Number) -> SheetCut:
    """The film, with what lies in the ground at its sides and ends; over cloth there is one."""
    buried, end = _given("buried", cover.buried), _given("cover_end", cover.cloth_end)
    width = worked("film_width", Unit.LENGTH, "arc + 2 × buried", arc, buried, source=RULES)
    length = worked("film_length", Unit.LENGTH, "stretch + 2 × (cover_end + buried)", stretch, end, buried,
                    source=RULES)  # fmt: skip
    many = 1 if cover.sheeting.has_cloth else cover.layers
    layers = known("layers", many, Unit.COUNT, source=RULES if cover.sheeting.has_cloth else TYPED)
    area = worked("film_area", Unit.AREA, "film_width × film_length × layers", width, length, layers, source=RULES)
    return SheetCut(GoodKind.FILM, width, length, area, layers)


def _arc(bed: Bed, cover: Cover) -> Number:
    over = known("bed_width", bed.width.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    if cover.hoop_shape is HoopShape.HALF_ROUND:
        pi = known("pi", PI, Unit.COUNT, source=_CIRCLE)
        return worked("arc", Unit.LENGTH, "pi × bed_width ÷ 2", pi, over, source=_CIRCLE)
    rise = _given("rise", cover.rise)
    using = {"half_ellipse": half_perimeter}
    return worked("arc", Unit.LENGTH, "half_ellipse(bed_width ÷ 2, rise)", over, rise, source=_ELLIPSE, using=using)


def _given(name: str, length: Length | None) -> Number:
    return known(name, None if length is None else length.nm, Unit.LENGTH, source=TYPED)


def stock_width(sheet: SheetCut, goods: tuple[Good, ...]) -> Good | None:
    """The narrowest of its kind that is sold and wide enough; None where there is none, or the width is not known."""
    needed = sheet.width.whole
    if needed is None:
        return None
    wide = [good for good in goods if good.kind is sheet.kind and good.width is not None and good.width.nm >= needed]
    return min(wide, key=lambda good: good.width.nm if good.width else 0, default=None)


def spare_width(sheet: SheetCut, goods: tuple[Good, ...]) -> Number | None:
    """How much wider than it must be the sheet is that is sold; None where none is wide enough."""
    sold = stock_width(sheet, goods)
    if sold is None or sold.width is None:
        return None
    stock = known("stock_width", sold.width.nm, Unit.LENGTH, source=Source.SHOP)
    return worked("width_over", Unit.LENGTH, f"stock_width − {sheet.width.name}", stock, sheet.width, source=RULES)
