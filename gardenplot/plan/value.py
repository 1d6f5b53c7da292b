"""The plan: one frozen value, from the place down to each planting."""

from datetime import date

from attrs import field, frozen

from gardenplot.plan.choices import (
    DaysFrom,
    Direction,
    Establish,
    Frost,
    HoopShape,
    Pattern,
    Phase,
    Remainder,
    Reserved,
    Sheeting,
)
from gardenplot.plan.goods import Feed, Good, Jugs, Watering
from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.plan.unknown import Unknown
from gardenplot.units import AreaRate, Degrees, Length, Rate, Share, Temperature, Units


@frozen(cache_hash=True)
class MonthDay:
    """A day of any year, for example 18 May."""

    month: int
    day: int


Odds = tuple[tuple[Share, MonthDay], ...]
"""Chances, each with the day that it holds for."""


@frozen(cache_hash=True)
class Place:
    """The holding: where it is, how it measures, and which spacings its own tools can mark (none named means any).

    `north` is where north lies on the drawing of the ground, clockwise from straight up. `last_freeze` (32 °F, 0 °C)
    and `last_hard_freeze` (28 °F, −2.2 °C) are chances that it still freezes after a day, the two first ones that it
    has frozen before it. `short_days_count` where days of less than ten hours of light are to count as others do.
    `family_gap` is how many seasons the grower leaves between crops of one family in a bed, `cover_before` how many
    minutes before sunset covers are to be on. `money` is the sign of what prices are in.
    """

    name: str = ""
    latitude: float | None = None
    longitude: float | None = None
    time_zone: str | None = None
    units: Units = Units.METRIC
    last_freeze: Odds = ()
    unknown: Unknown = ()
    markable_in_row: tuple[Length, ...] = ()
    markable_rows: tuple[Length, ...] = ()
    north: Degrees | None = None
    last_hard_freeze: Odds = ()
    first_freeze: Odds = ()
    first_hard_freeze: Odds = ()
    short_days_count: bool = False
    family_gap: int | None = None
    cover_before: int | None = None
    watering: Watering | None = None
    money: str = ""


@frozen(cache_hash=True)
class Obstacle:
    """Something that stands in a bed, round or square, with the distance that plants keep from it.

    `x` and `y` are its middle, from the head and from the base line. `rows` are the numbers of the rows that it is in
    the way of, counted from 1 at the base line; none means all.
    """

    name: str
    x: Length
    y: Length
    diameter: Length | None = None
    length: Length | None = None
    width: Length | None = None
    keep_clear: Length | None = None
    rows: tuple[int, ...] = ()
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Box:
    """A frame of boards: its size outside, the boards' thickness, the side of square posts inside its corners."""

    length: Length
    width: Length
    board: Length
    post: Length | None = None
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Past:
    """A family that grew in a bed in an earlier season, a season being named by its year."""

    season: int
    family: str
    crop: str = ""
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Bed:
    """A piece of ground to plant, with margins at head and foot: a rectangle, an outline, a disc or a boarded box.

    Length and width are the reach of whatever shape was given, and have no text where they only follow from it
    (`plan/shapes.py`). The outline's points are tape readings and offsets from the base line. `slope` is rise over
    map distance along the bed; every length is ground distance but `map_length`, which may be given in place of the
    length. `edge` is the least distance from the bed's edge to an outer row, measured across the bed; `gap` is what
    the grower leaves between blocks. `drip_lines` lie along the bed, at these offsets from the base line. `history`
    is what grew there in seasons that the plan has no plantings of. Before the day `usable_from` nothing can go in,
    because of snow, wet or what is still there.
    """

    id: str
    name: str
    length: Length
    width: Length
    head_margin: Length | None = None
    foot_margin: Length | None = None
    edge: Length | None = None
    gap: Length | None = None
    note: str = ""
    unknown: Unknown = ()
    outline: tuple[tuple[Length, Length], ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    diameter: Length | None = None
    box: Box | None = None
    slope: Share | None = None
    map_length: Length | None = None
    drip_lines: tuple[Length, ...] = ()
    history: tuple[Past, ...] = ()
    usable_from: date | None = None

    @property
    def zone(self) -> tuple[int, int]:
        """First and last tape reading that may be planted, in nm."""
        head = self.head_margin.nm if self.head_margin else 0
        foot = self.foot_margin.nm if self.foot_margin else 0
        return head, self.length.nm - foot


@frozen(cache_hash=True)
class Crop:
    """What a seed packet tells about one thing to grow; what it does not tell is None.

    `field_days` begin where `days_from` says, else in the ground: at setting out, or at sowing where it is sown
    there. `cool_days` are added to them for cool or early weather, `harvest_days` is how long it can be cut after the
    first day that it is ready, `pot_up_days` when seedlings are moved on after sowing, `oldest_days` the age at which
    they should be set out at the latest. `emerges_like` is its name in the table of days to emerge, `height` how
    high it stands when it is grown. `clump` plants are left in each place, else one: a clump from one cell stands as
    one place in every layout. A seed that is a cluster, as of beet and chard, gives `seedlings_per_seed`.
    """

    id: str
    name: str
    in_row: Length
    row_spacing: tuple[Length, ...]
    family: str | None = None
    establish: Establish = Establish.TRANSPLANT
    edge: Length | None = None
    plants_per_area: AreaRate | None = None
    spread: Length | None = None
    field_loss: Share | None = None
    spare: Share | None = None
    germination: Share | None = None
    seeds_per_cell: int | None = None
    tray_cells: int | None = None
    field_days: int | None = None
    raising_days: int | None = None
    hardening_days: int | None = None
    seeds_per_row: Rate | None = None
    seeder_slack: Share | None = None
    seeds_per_gram: float | None = None
    note: str = ""
    unknown: Unknown = ()
    days_from: DaysFrom | None = None
    cool_days: int | None = None
    harvest_days: int | None = None
    pot_up_days: int | None = None
    oldest_days: int | None = None
    frost: Frost | None = None
    emerges_like: str | None = None
    height: Length | None = None
    clump: int | None = None
    seedlings_per_seed: float | None = None

    @property
    def stand(self) -> int:
        """The plants that are left in each place in the end."""
        return self.clump or 1

    @property
    def is_drilled(self) -> bool:
        """Whether it is sown by the row in its bed, so that no place of a plant is marked."""
        return self.establish is Establish.DIRECT and self.seeds_per_row is not None


@frozen(cache_hash=True)
class Actual:
    """What came about of a planting, as it did: days, the seedlings that stood, the plants that were set out.

    `set_out` is the day of sowing too where a crop is sown in its bed; `cleared` the first day its ground was free.
    `cells` were sown, and so many plants `bought` in beside them. `stand` may have been counted in a length of row,
    `stand_row`. `standing` plants were left in the bed when they were `counted`; `failed_rows` are the numbers of
    rows without any, from 1 at the base line.
    """

    sown: date | None = None
    emerged: date | None = None
    stand: int | None = None
    potted_up: date | None = None
    hardened: date | None = None
    set_out: date | None = None
    planted: int | None = None
    harvested: date | None = None
    cleared: date | None = None
    unknown: Unknown = ()
    cells: int | None = None
    stand_row: Length | None = None
    standing: int | None = None
    counted: date | None = None
    failed_rows: tuple[int, ...] = ()
    bought: int | None = None


CAME = ("sown", "emerged", "potted_up", "hardened", "set_out", "harvested", "cleared")
"""The days of an `Actual`, in the order in which they come about."""


@frozen(cache_hash=True, slots=False)  # a plan is handed to other processes in half the time without slots
class Planting:
    """One crop in one block of one bed; sized by plants, by length, by its order, or by the gap it fills.

    A planting with a `keep_clear` has its places reserved: what grows there before it may stay beside them.
    `reserved` is what a planting does about the places that are reserved in its own block. `end_margin` is kept free
    at both ends of the block, nothing for plants on the mark; without one it is half a spacing. `twin_spacing` lies
    between the two rows of a pair, `offsets` are the row lines of the grower's own, from the base line; `cell` is the
    side of a square cell with `plants_per_cell` plants in it. `sow`, `in_ground`, `ready` and `out` are days that
    were typed; the others follow from them. `market` is which of its order's market days it is for, or which time
    of its wish, from 1; plantings
    of one `series` are changed together. `cool_days` are its own instead of its crop's, `soil` is the temperature of
    its soil at sowing; so many cells as `sow_cells` are to be sown for it, whatever its packet says. `clump` and
    `seeds_per_cell` stand in place of its crop's. With `hardens` it is a block of trays: those of another planting,
    which stand there from the day that they harden off until they are set out; `plants` are then trays. With
    `gaps_of` it stands in the places of another planting that are empty, and needs no ground of its own. `wish` is
    what it was planted for. `letter` is the one that it has on stakes and paper in somebody's hand, and keeps;
    without one letters run along the plan.
    """

    id: str
    bed: str
    crop: str
    start: Length | None = None
    plants: int | None = None
    length: Length | None = None
    order: str | None = None
    pattern: Pattern = Pattern.STRAIGHT
    rows: int | None = None
    in_row: Length | None = None
    row_spacing: tuple[Length, ...] = ()
    edge: Length | None = None
    slack: Length | None = None
    round_up_to: Length | None = None
    in_ground: date | None = None
    out: date | None = None
    note: str = ""
    unknown: Unknown = ()
    keep_clear: Length | None = None
    reserved: Reserved = Reserved.CUT_FIRST
    end_margin: Length | None = None
    direction: Direction = Direction.ALONG
    twin_spacing: Length | None = None
    offsets: tuple[Length, ...] = ()
    cell: Length | None = None
    plants_per_cell: int | None = None
    remainder: Remainder = Remainder.FOOT
    phase: Phase = Phase.CENTRED
    sow: date | None = None
    ready: date | None = None
    cool_days: int | None = None
    soil: Temperature | None = None
    market: int | None = None
    series: str | None = None
    actual: Actual | None = None
    hardens: str | None = None
    wish: str | None = None
    gaps_of: str | None = None
    sow_cells: int | None = None
    clump: int | None = None
    seeds_per_cell: int | None = None
    letter: str | None = None


@frozen(cache_hash=True)
class Order:
    """So many units of a crop wanted on a market day, or on several, `every_days` apart.

    A unit is `plants_per_unit` plants, or so many units come from a plant (`units_per_plant`), or a unit is cut from
    `row_per_unit` of row. An order of no unit was withdrawn.
    """

    id: str
    crop: str
    units: int
    on: date
    plants_per_unit: int = 1
    lead_days: int = 1
    note: str = ""
    unknown: Unknown = ()
    times: int = 1
    every_days: int = 7
    units_per_plant: int | None = None
    row_per_unit: Length | None = None


@frozen(cache_hash=True)
class Wish:
    """A crop to fill free ground with, in one block or, with a `piece`, in several of at least so many plants.

    It may be wished for several times, each time with its first and last day `every_days` later.
    """

    id: str
    crop: str
    least: int = 1
    most: int | None = None
    days: int | None = None
    earliest: date | None = None
    latest: date | None = None
    worth: float = 1.0
    beds: tuple[str, ...] = ()
    pattern: Pattern = Pattern.STRAIGHT
    rows: int | None = None
    unknown: Unknown = ()
    piece: int | None = None
    times: int = 1
    every_days: int = 7


@frozen(cache_hash=True)
class Cover:
    """Hoops with cloth or film over a stretch of bed between two days; half an ellipse has its `rise` above ground.

    `buried` is how much of a film lies in the ground at each side and at each end. `layers` are those of the cloth,
    of film where there is no cloth.
    """

    id: str
    bed: str
    start: Length
    end: Length
    on: date | None = None
    off: date | None = None
    hoop_spacing: Length | None = None
    hoop_shape: HoopShape = HoopShape.HALF_ROUND
    leg: Length | None = None
    apron: Length | None = None
    cloth_end: Length | None = None
    layers: int = 1
    unknown: Unknown = ()
    rise: Length | None = None
    sheeting: Sheeting = Sheeting.CLOTH
    buried: Length | None = None


@frozen(cache_hash=True)
class Plan:
    """The document: one place, its beds, its crops, its plantings, its orders, and what lies where on the ground."""

    place: Place = field(factory=Place)
    beds: tuple[Bed, ...] = ()
    crops: tuple[Crop, ...] = ()
    plantings: tuple[Planting, ...] = ()
    orders: tuple[Order, ...] = ()
    wishes: tuple[Wish, ...] = ()
    covers: tuple[Cover, ...] = ()
    unknown: Unknown = ()
    ground: tuple[Standing, ...] = ()
    tunnels: tuple[Tunnel, ...] = ()
    paths: tuple[Walk, ...] = ()
    goods: tuple[Good, ...] = ()
    feeds: tuple[Feed, ...] = ()
    jugs: tuple[Jugs, ...] = ()
