"""What the menus ask for through dialogs: beds, crops and orders, each one edit of the document."""

from collections.abc import Mapping

from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError
from gardenplot.gestures.bed_typed import SIZES, name_for, type_bed, usual
from gardenplot.gestures.examples import example_for
from gardenplot.gestures.packet import PACKET, PacketField, crop_from, texts_of, values_from
from gardenplot.plan import Crop, Establish, Plan, crop_of
from gardenplot.plan.edits import add_crop, change_crop
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.order_dialog import OrderDialog
from gardenplot.window.wish_dialog import WishDialog
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
    lines = [_line(one, crop, texts.get(one.attribute, ""), plan) for one in PACKET]
    lines.insert(1, Ask("establish", _("It is"), choices=ways, chosen=crop.establish if crop else None))
    title = _("From a seed packet") if crop is None else _("Crop {name}").format(name=crop.name)
    does = _("Add crop") if crop is None else _("Change crop")
    return _asked(AskDialog(title, tuple(lines), take, does, note=_PACKET_FIRST, parent=parent))


def _line(field: PacketField, crop: Crop | None, text: str, plan: Plan) -> Ask:
    """What is asked for a line of the packet."""
    return Ask(
        field.attribute,
        field.label,
        text,
        example_for(field.attribute, field.example, plan.place.units),
        field.default,
        choices=field.choices,
        chosen=getattr(crop, field.attribute, None),
        group=field.group,
    )


def _with_packet(plan: Plan, crop: Crop | None, values: Mapping[str, object], establish: Establish) -> Plan:
    if crop is None:
        return add_crop(plan, crop_from(values, establish))
    return change_crop(plan, crop.id, establish=establish, **values)


def ask_order(document: Document, parent: QWidget, order_id: str | None = None) -> bool:
    """Ask for an order, or for changes to one of the plan; its crop may come from the catalogue."""
    return _asked(OrderDialog(document, order_id, parent))


def ask_wish(document: Document, parent: QWidget, wish_id: str | None = None, crop: Crop | None = None) -> bool:
    """Ask for a wish, or for changes to one of the plan; its crop may come from the catalogue."""
    return _asked(WishDialog(document, wish_id, parent, crop))


def _asked(dialog: AskDialog) -> bool:
    return dialog.exec() == AskDialog.DialogCode.Accepted
