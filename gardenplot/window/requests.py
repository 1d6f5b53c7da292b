"""What the menus ask for through dialogs: beds, crops and orders, each one edit of the document."""

from collections.abc import Mapping

from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError, PlanError, at_field
from gardenplot.gestures.bed_typed import SIZES, name_for, type_bed, usual
from gardenplot.gestures.examples import example_for
from gardenplot.gestures.packet import PACKET, PacketField, crop_from, texts_of, values_from
from gardenplot.gestures.reading import date_from, whole_from
from gardenplot.plan import Crop, Establish, Order, Plan, crop_of, order_of
from gardenplot.plan.catalogue import found_crops
from gardenplot.plan.edits import add_crop, add_order, carry_crop, change_crop, change_order
from gardenplot.window.document import Document
from gardenplot.window.forms import Ask, AskDialog
from gardenplot.words import _

Texts = Mapping[str, object]
_PACKET_FIRST = _("The seed packet and local advice come before this program's numbers.")


def _strings(texts: Texts) -> dict[str, str]:
    return {name: str(value) if value is not None else "" for name, value in texts.items()}


def ask_bed(document: Document, parent: QWidget) -> bool:
    """Ask for a bed and add it."""
    plan = document.plan
    size = SIZES[plan.place.units]

    def take(texts: Texts) -> Mapping[str, str]:
        after, wrong = type_bed(plan, _strings(texts))
        if after is not None:
            document.change(_("Add bed {name}").format(name=after.beds[-1].name), after)
        return wrong

    asks = (
        Ask("name", _("Name"), name_for(plan), default=name_for(plan)),
        Ask("length", _("Length"), default=usual(size.length)),
        Ask("width", _("Width"), default=usual(size.width)),
        Ask("margin", _("End margins"), default=_("nothing")),
        Ask("gap", _("Gap between blocks"), default=_("none")),
    )
    note = _("True inside sizes, as the tape will read them at the bed.")
    return _asked(AskDialog(_("Add bed"), asks, take, _("Add bed"), note=note, parent=parent))


def ask_crop(document: Document, parent: QWidget, crop_id: str | None = None) -> bool:
    """Ask for a crop as its packet reads, or for changes to one of the plan."""
    plan = document.plan
    crop = crop_of(plan, crop_id) if crop_id else None
    texts = texts_of(crop) if crop else {}

    def take(typed: Texts) -> Mapping[str, str]:
        values, wrong = values_from(_strings(typed), plan.place.units)
        if wrong:
            return wrong
        try:
            after = _with_packet(plan, crop, values, Establish(str(typed["establish"])))
            document.change(_("Crop {name}").format(name=values["name"]), after)
        except GardenplotError as error:
            return {error.field: error.says}
        return {}

    ways = ((_("raised and set out"), Establish.TRANSPLANT), (_("sown where it grows"), Establish.DIRECT))
    lines = [
        Ask(one.attribute, one.label, texts.get(one.attribute, ""), _example(one, plan), one.default)
        for one in PACKET
    ]
    lines.insert(1, Ask("establish", _("It is"), choices=ways, chosen=crop.establish if crop else None))
    title = _("From a seed packet") if crop is None else _("Crop {name}").format(name=crop.name)
    does = _("Add crop") if crop is None else _("Change crop")
    return _asked(AskDialog(title, tuple(lines), take, does, note=_PACKET_FIRST, parent=parent))


def _example(field: PacketField, plan: Plan) -> str:
    return example_for(field.attribute, field.example, plan.place.units)


def _with_packet(plan: Plan, crop: Crop | None, values: Mapping[str, object], establish: Establish) -> Plan:
    if crop is None:
        return add_crop(plan, crop_from(values, establish))
    return change_crop(plan, crop.id, establish=establish, **values)


def ask_order(document: Document, parent: QWidget, order_id: str | None = None) -> bool:
    """Ask for an order, or for changes to one of the plan; its crop may come from the catalogue."""
    plan = document.plan
    order = order_of(plan, order_id) if order_id else None
    crops, _own = found_crops(plan, "")

    def take(typed: Texts) -> Mapping[str, str]:
        try:
            document.change(_("Order"), _with_order(plan, order, _strings(typed), crops))
        except GardenplotError as error:
            return {error.field: error.says}
        return {}

    names = tuple((crop.name, crop.id) for crop in crops)
    asks = (
        Ask("crop", _("Crop"), choices=names, chosen=order.crop if order else None),
        Ask("units", _("Units"), str(order.units) if order else "", "120"),
        Ask("plants_per_unit", _("Plants in a unit"), str(order.plants_per_unit) if order else "1", default="1"),
        Ask("on", _("Market day"), order.on.isoformat() if order else "", "2027-05-15"),
        Ask("lead_days", _("Days from cutting to market"), str(order.lead_days) if order else "1", default="1"),
    )
    does = _("Add order") if order is None else _("Change order")
    return _asked(AskDialog(_("Order"), asks, take, does, parent=parent))


def _with_order(plan: Plan, order: Order | None, typed: dict[str, str], crops: tuple[Crop, ...]) -> Plan:
    with at_field("units"):
        units = whole_from(typed["units"])
        if units is None:
            raise PlanError(_("how many units are wanted, for example 120?"))
    with at_field("on"):
        on = date_from(typed["on"])
        if on is None:
            raise PlanError(_("a market day is needed, for example 2027-05-15"))
    wanted = Order(
        id=order.id if order else f"{typed['crop']}-{on.isoformat()}",
        crop=typed["crop"],
        units=units,
        on=on,
        plants_per_unit=_whole(typed, "plants_per_unit", 1),
        lead_days=_whole(typed, "lead_days", 1),
    )
    plan = carry_crop(plan, next(crop for crop in crops if crop.id == typed["crop"]))
    if order is None:
        return add_order(plan, wanted)
    changes = {name: getattr(wanted, name) for name in ("crop", "units", "on", "plants_per_unit", "lead_days")}
    return change_order(plan, order.id, **changes)


def _whole(typed: Texts, name: str, default: int) -> int:
    with at_field(name):
        number = whole_from(str(typed[name]))
    return default if number is None else number


def _asked(dialog: AskDialog) -> bool:
    return dialog.exec() == AskDialog.DialogCode.Accepted
