"""Hoops and cloth over a stretch of bed.

Intervals = ceil(length / most spacing); hoops = intervals + 1; true spacing = length / intervals. A half-round hoop
over width w has the arc pi w / 2 (circumference of a circle); one of half an ellipse half the perimeter of an ellipse
with half axes w / 2 and its rise (`supplies/ellipse.py`). Hoop = arc + both legs; cloth width = arc + both aprons;
cloth length = stretch + both ends. One weight at each foot of a hoop and one more at each end: common practice, no
source.
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
class CoverCut:
    """What to cut and carry for one cover; a number is not known where the cover does not say enough."""

    count: Number
    apart: Number
    hoop: Number
    width: Number
    length: Number
    area: Number
    weights: Number

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
    def cloth_width(self) -> int | None:
        """Width of the cloth, in nm."""
        return self.width.whole

    @property
    def cloth_length(self) -> int | None:
        """Length of the cloth, in nm."""
        return self.length.whole

    @property
    def numbers(self) -> tuple[Number, ...]:
        """All of them, in the order in which they are used."""
        return self.count, self.apart, self.hoop, self.width, self.length, self.area, self.weights


def cover_cut(bed: Bed, cover: Cover) -> CoverCut:
    """Hoops and cloth for a cover over a bed."""
    stretch = known("stretch", cover.end.nm - cover.start.nm, Unit.LENGTH, source=TYPED)
    most = _given("hoop_spacing_most", cover.hoop_spacing)
    intervals = worked("intervals", Unit.COUNT, "stretch ÷ hoop_spacing_most", stretch, most, rounding=Rounding.UP,
                       source=RULES)  # fmt: skip
    hoops = worked("hoops", Unit.COUNT, "intervals + 1", intervals, source=RULES)
    arc = _arc(bed, cover)
    width = worked("cloth_width", Unit.LENGTH, "arc + 2 × apron", arc, _given("apron", cover.apron), source=RULES)
    end = _given("cloth_end", cover.cloth_end)
    length = worked("cloth_length", Unit.LENGTH, "stretch + 2 × cloth_end", stretch, end, source=RULES)
    layers = known("layers", cover.layers, Unit.COUNT, source=TYPED)
    return CoverCut(
        hoops,
        worked("hoop_spacing", Unit.LENGTH, "stretch ÷ intervals", stretch, intervals, source=RULES),
        worked("hoop_length", Unit.LENGTH, "arc + 2 × leg", arc, _given("leg", cover.leg), source=RULES),
        width,
        length,
        worked("cloth_area", Unit.AREA, "cloth_width × cloth_length × layers", width, length, layers, source=RULES),
        worked("weights", Unit.COUNT, "2 × hoops + 2", hoops, trust=Trust.FAIR, source=RULES),
    )


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


def stock_width(cut: CoverCut, goods: tuple[Good, ...], kind: GoodKind = GoodKind.CLOTH) -> Good | None:
    """The narrowest cloth that is sold and wide enough; None where there is none, or the width is not known."""
    needed = cut.cloth_width
    if needed is None:
        return None
    wide = [good for good in goods if good.kind is kind and good.width is not None and good.width.nm >= needed]
    return min(wide, key=lambda good: good.width.nm if good.width else 0, default=None)
