"""Goods, feeds and jugs as they are typed: texts into their fields and back."""

from collections.abc import Callable, Mapping
from typing import Any

from attrs import evolve, frozen

from gardenplot.errors import PlanError, at_field
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.reading import length_from, needed_length, text_of, whole_from
from gardenplot.plan import Feed, Good, GoodKind, Jugs, Plan, bed_of
from gardenplot.plan.goods_edits import Part, add_supply, change_supply
from gardenplot.supplies.shopping import Item
from gardenplot.units import (
    Units,
    length_of,
    parse_amount,
    parse_heat_loss,
    parse_length,
    parse_mass_rate,
    parse_price,
    parse_share,
    parse_temperature,
    parse_volume,
)
from gardenplot.words import _

Texts = Mapping[str, str]


@frozen
class SupplyField:
    """A line of a dialog: its field, its label, how its text is read, what holds while it is empty, an example."""

    name: str
    label: str
    read: Callable[[str, Units], Any]
    empty: str = ""
    example: str = ""


def _plain(parse: Callable[[str], Any]) -> Callable[[str, Units], Any]:
    return lambda text, _units: parse(text) if text else None


def _length(text: str, units: Units) -> Any:
    return length_from(text, "", units)


_STORE = SupplyField("in_store", _("In store"), _plain(parse_amount), _("none"))
_PACK = SupplyField("pack", _("A shop sells"), _plain(parse_amount), _("any amount"))
_PRICE = SupplyField("price", _("Price of that"), _plain(parse_price), _("not known"))
_SIDES = (
    SupplyField("length", _("Length outside"), _length, "54 cm"),
    SupplyField("width", _("Width outside"), _length, "28 cm"),
)
_SHEETING = (_STORE, SupplyField("width", _("Width"), _length, _("not known")), _PACK, _PRICE)
_MARKS = SupplyField("length", _("Marks"), _length, _("not known"))
GOOD_FIELDS: Mapping[GoodKind, tuple[SupplyField, ...]] = {
    **dict.fromkeys(GoodKind, (_STORE, _PACK, _PRICE)),
    GoodKind.SEED: (
        _STORE,
        SupplyField("germination", _("Its germination"), _plain(parse_share), _("as on the packet")),
        SupplyField("year", _("Packed in"), lambda text, _units: whole_from(text), _("not known"), "2026"),
        _PACK,
        _PRICE,
    ),
    GoodKind.TRAY: (
        _STORE,
        SupplyField("mix", _("Mix in a tray"), _plain(parse_volume), _("not known")),
        *_SIDES,
        _PACK,
        _PRICE,
    ),
    GoodKind.CLOTH: _SHEETING,
    GoodKind.FILM: _SHEETING,
    GoodKind.TAPE: (_STORE, SupplyField("length", _("Length"), _length, _("not known")), _PACK, _PRICE),
    **dict.fromkeys((GoodKind.ROW_MARKER, GoodKind.SPACER), (_STORE, _MARKS, _PACK, _PRICE)),
}
"""The lines of each kind of good."""

FEED_FIELDS = (
    SupplyField("name", _("What"), lambda text, _units: text, _("compost")),
    SupplyField("depth", _("To a depth of"), _length, _("by weight")),
    SupplyField("rate", _("By weight"), _plain(parse_mass_rate), _("to a depth"), "50 g / m2"),
)


def _needed(parse: Callable[[str], Any], wants: str) -> Callable[[str, Units], Any]:
    def read(text: str, _units: Units) -> Any:
        if not text:
            raise PlanError(wants)
        return parse(text)

    return read


JUG_FIELDS = (
    SupplyField("start", _("From"), lambda text, units: needed_length(text, "", units)),
    SupplyField("end", _("To"), lambda text, units: needed_length(text, "", units)),
    SupplyField("volume", _("A jug holds"), _needed(parse_volume, _("a volume is needed, for example 5 l or 1 gal"))),
    SupplyField("diameter", _("A jug is across"), lambda text, units: needed_length(text, "", units)),
    SupplyField("count", _("Jugs"), lambda text, _units: whole_from(text), _("all that find room round it")),
    SupplyField("warm", _("Water at dusk"), _plain(parse_temperature), _("not known"), "13 °C"),
    SupplyField("cold", _("Water at dawn"), _plain(parse_temperature), _("not known"), "4 °C"),
    SupplyField("loss", _("The bed loses on a clear night"), _plain(parse_heat_loss), _("not known"), "60 W / m2"),
)  # fmt: skip


def texts_of_supply(part: Good | Feed | Jugs, fields: tuple[SupplyField, ...]) -> dict[str, str]:
    """What stands in the lines of a part."""
    return {field.name: text_of(getattr(part, field.name)) for field in fields}


def good_of(item: Item, units: Units) -> Good:
    """The good that a line of the list is about, or one as the plan could have it."""
    if item.good is not None:
        return item.good
    match item.kind:
        case GoodKind.SEED:
            return Good(f"seed-{item.crop}", item.kind, crop=item.crop)
        case GoodKind.PLANT:
            return Good(f"plants-{item.crop}", item.kind, crop=item.crop)
        case GoodKind.TRAY:
            return Good(f"tray-{item.size}", item.kind, cells=item.size)
        case GoodKind.TAPE | GoodKind.ROW_MARKER | GoodKind.SPACER:
            length = None if item.size is None else length_of(item.size, units)
            return Good(str(item.kind).replace(" ", "-"), item.kind, length=length)
        case GoodKind.AMENDMENT:
            return Good("amendment", item.kind, name=item.name)
        case _:
            return Good(str(item.kind).replace(" ", "-"), item.kind)


def usual_jugs(plan: Plan, bed_id: str, planting_id: str | None) -> Jugs:
    """Jugs of a usual size round a block, or round all of a bed: common practice, no source."""
    units, bed = plan.place.units, bed_of(plan, bed_id)
    volume, across = ("5 l", "16 cm") if units is Units.METRIC else ("1 gal", "6 in")
    first, last = bed.zone
    if planting_id is not None:
        layout = layout_in(plan, planting_id)
        first, last = max(0, layout.start), max(0, layout.end)
    start, end = (length_of(at, units) for at in (first, last))
    return Jugs("jugs", bed_id, start, end, parse_volume(volume), parse_length(across))


def with_supply(plan: Plan, part: Part, fields: tuple[SupplyField, ...], texts: Texts, **more: Any) -> Plan:
    """The plan with a part as typed, a new one or one of its own with changes. Raises LengthError, PlanError."""
    values: dict[str, Any] = dict(more)
    for field in fields:
        with at_field(field.name):
            values[field.name] = field.read(texts.get(field.name, "").strip(), plan.place.units)
    if any(one is part for one in (*plan.goods, *plan.feeds, *plan.jugs)):
        return change_supply(plan, part, **values)
    return add_supply(plan, evolve(part, **values))
