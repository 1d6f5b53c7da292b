"""What the grower buys, has in store and works with: parts of a plan that supplies are worked out from."""

from enum import StrEnum

from attrs import frozen

from gardenplot.plan.unknown import Unknown
from gardenplot.units import Amount, Flow, HeatLoss, Length, LineFlow, MassRate, Price, Share, Temperature, Volume


class GoodKind(StrEnum):
    """What is bought and kept."""

    SEED = "seed"
    PLANT = "plant"
    TRAY = "tray"
    MIX = "mix"
    HOOP = "hoop"
    CLOTH = "cloth"
    FILM = "film"
    WEIGHT = "weight"
    JUG = "jug"
    COMPOST = "compost"
    AMENDMENT = "amendment"
    DRIP_LINE = "drip line"
    STAKE = "stake"
    STRING = "string"
    PEG = "peg"
    TAPE = "tape"
    ROW_MARKER = "row marker"
    SPACER = "spacing tool"
    DIBBLE = "dibble"


@frozen(cache_hash=True)
class Good:
    """Something that a shop sells by the `pack`, and how much of it is in store.

    Plants that are bought in have their `crop`; seed has it too, the `year` in which it was packed and its own
    `germination`; a tray its `cells`, its sides outside and the `mix` that it holds; cloth and film their `width`; an
    amendment its name; a tape how long it is, a row marker and a spacing tool the spacing that they mark, as their
    `length`.
    """

    id: str
    kind: GoodKind
    name: str = ""
    crop: str | None = None
    pack: Amount | None = None
    in_store: Amount | None = None
    price: Price | None = None
    year: int | None = None
    germination: Share | None = None
    cells: int | None = None
    length: Length | None = None
    width: Length | None = None
    mix: Volume | None = None
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Feed:
    """What is given to beds, all or some: so much by weight on their area, or to a depth.

    `name` is that of the amendment; what has a `depth` is compost.
    """

    id: str
    name: str = ""
    rate: MassRate | None = None
    depth: Length | None = None
    beds: tuple[str, ...] = ()
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Jugs:
    """Water jugs round a stretch of bed, as many as find room or `count`; they cool from `warm` to `cold`."""

    id: str
    bed: str
    start: Length
    end: Length
    volume: Volume
    diameter: Length
    count: int | None = None
    warm: Temperature | None = None
    cold: Temperature | None = None
    loss: HeatLoss | None = None
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Watering:
    """How the place waters: what its drip lines give, what its supply gives, its tank, and a depth for each week."""

    line_flow: LineFlow | None = None
    supply: Flow | None = None
    tank: Volume | None = None
    weekly_depth: Length | None = None
    efficiency: Share | None = None
    unknown: Unknown = ()
