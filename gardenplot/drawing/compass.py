"""On which side of its foot the head of a bed lies, told by the eight winds."""

from fractions import Fraction
from math import floor

from gardenplot.plan import Plan
from gardenplot.plan.ground import frame_of, standing_of
from gardenplot.words import _

_WINDS = (
    _("head in the north"), _("head in the north-east"), _("head in the east"), _("head in the south-east"),
    _("head in the south"), _("head in the south-west"), _("head in the west"), _("head in the north-west"),
)  # fmt: skip


def head_words(plan: Plan, bed_id: str) -> str:
    """Where the head of a bed lies: "head in the west"; nothing where north or the bed's place is not known."""
    standing, north = standing_of(plan, bed_id), plan.place.north
    if standing is None or north is None:
        return ""
    # Beds are turned from straight to the right, north from straight up; the head lies opposite to the foot.
    away = (frame_of(standing).turn + 270 - north.turn) % 360
    return _WINDS[floor(away / 45 + Fraction(1, 2)) % len(_WINDS)]
