"""One finding: what is wrong or worth knowing, where, and by how much."""

from enum import StrEnum

from attrs import frozen


class Kind(StrEnum):
    """What a finding is about."""

    OVERLAP = "overlap"
    OUTSIDE = "outside"
    NO_ROW = "no row fits"
    NO_CELL = "no cell fits"
    NO_PLANT = "no plant fits"
    ROWS = "too many rows"
    DATES = "dates the wrong way round"
    SOWN_AFTER = "sown after it is set out"
    ON_ANOTHER_BED = "on another bed"
    THROUGH_A_WALL = "through a tunnel's wall"
    IN_THE_WAY = "in the way of what follows"
    NO_MARKET = "no such market day"
    LATE = "late for its market"
    BED_LATE = "before its bed can be used"
    SOIL_COLD = "soil too cold"
    SOIL_WARM = "soil too warm"
    FROST = "out before the last freeze"
    AUTUMN_FROST = "still there after the first freeze"
    OUT_UNREADY = "out before it is ready"
    OVER_AGE = "too old when set out"
    FAMILY = "family back too soon"
    HARDENED_FIRST = "hardened off before it is sown"
    TOO_FEW_SEEDS = "too few seeds in a cell"
    NO_EMERGENCE = "no such name in the table of days to emerge"
    COVER_BEYOND = "cover beyond its bed"
    JUGS_BEYOND = "jugs beyond their bed"
    ODDS = "odds of frost the wrong way round"
    TRAYS = "not as many trays as are raised"
    COLD_EDGE = "in the cold edge of a tunnel"
    SOWING_PAST = "sowing day past"
    POTTING_PAST = "potting-up day past"
    SETTING_PAST = "setting-out day past"
    NOT_YET = "recorded before its day"
    ORDER_PAST = "market day past"
    ORDER_SHORT = "order short"
    ORDER_UNPLANTED = "order not planted"
    EDGE = "near the edge"
    CLOSER_IN_ROW = "closer in the row"
    CLOSER_ROWS = "closer rows"
    NOT_MARKABLE_IN_ROW = "not markable in the row"
    NOT_MARKABLE_ROWS = "rows not markable"
    NOT_MARKABLE_PAIR = "rows of a pair not markable"
    SHADE = "in the shadow of a taller one"
    ON_DRIP_LINE = "on a drip line"
    FROST_NOTE = "hardy or covered before the last freeze"
    PLAN_PAST = "plan of a season that is over"
    OTHER_CROP = "for an order of another crop"
    ORDER_TWICE = "order taken more than once"
    LEFTOVER = "left over"


ON_THE_GROUND = frozenset({Kind.ON_ANOTHER_BED, Kind.THROUGH_A_WALL})
"""Findings about the place of a bed, whatever grows in it."""
CANNOT_BE_DONE = frozenset(
    {
        Kind.OVERLAP,
        Kind.OUTSIDE,
        Kind.NO_ROW,
        Kind.NO_CELL,
        Kind.NO_PLANT,
        Kind.ROWS,
        Kind.DATES,
        Kind.SOWN_AFTER,
        *ON_THE_GROUND,
    }
)
"""Findings that no amount of goodwill at the bed can put right."""


@frozen(cache_hash=True)
class Finding:
    """A finding of one kind at one place.

    `start` and `end` are tape readings in nm, `amount` and `limit` what is and what should be, in nm, things or days;
    of a shadow `limit` is its day by number. `pieces` counts leftover stretches; `other` is the second planting of an
    overlap or for an order, or throws the shadow, `lies_on` the bed or the tunnel that a bed lies on; `plants` is
    what a markable spacing, which is then the limit, gives more or fewer: the nearest, or with `pieces` one of the
    packet's range; `market` is the number of an order's market day, from 1, and `pieces` then how many of them
    nothing is planted for. `came` is what of the planting's actual it is about, `pieces` then how many plantings it
    stands for; or which odds of the place.
    """

    kind: Kind
    bed: str | None = None
    planting: str | None = None
    other: str | None = None
    order: str | None = None
    start: int = 0
    end: int = 0
    amount: int = 0
    limit: int = 0
    pieces: int = 0
    plants: int = 0
    lies_on: str | None = None
    market: int = 1
    came: str | None = None

    @property
    def cannot_be_done(self) -> bool:
        """Whether the plan cannot be carried out as it stands."""
        return self.kind in CANNOT_BE_DONE

    @property
    def is_note(self) -> bool:
        """Whether it is only worth knowing."""
        return self.kind in (Kind.LEFTOVER, Kind.FROST_NOTE, Kind.SHADE, Kind.PLAN_PAST, Kind.ON_DRIP_LINE,
                             Kind.OTHER_CROP, Kind.ORDER_TWICE, Kind.NO_EMERGENCE)  # fmt: skip
