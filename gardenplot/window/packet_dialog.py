"""The dialog of a seed packet: a new crop, or changes to one of the plan."""

from collections.abc import Mapping

from PySide6.QtWidgets import QComboBox, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.gestures.examples import example_for
from gardenplot.gestures.packet import PACKET, PacketField, crop_from, texts_of, values_from
from gardenplot.plan import Crop, Establish, Plan, crop_of
from gardenplot.plan.edits import add_crop, change_crop
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.words import _

_FIRST = _("The seed packet and local advice come before this program's numbers.")
_WAYS = ((_("raised and set out"), Establish.TRANSPLANT), (_("sown where it grows"), Establish.DIRECT))


class PacketDialog(AskDialog):
    """Asks for what goes with how the crop gets into its bed; a line in which something stands stays."""

    def __init__(self, document: Document, crop_id: str | None, parent: QWidget) -> None:
        self._document = document
        self._crop = crop_of(document.plan, crop_id) if crop_id else None
        crop = self._crop
        title = _("From a seed packet") if crop is None else _("Crop {name}").format(name=crop.name)
        does = _("Add crop") if crop is None else _("Change crop")
        super().__init__(title, _asks(crop, document.plan), self._take, does, note=_FIRST, parent=parent)
        way = self.fields["establish"]
        if isinstance(way, QComboBox):
            way.currentIndexChanged.connect(self._ask_of_way)
        self._ask_of_way()

    def _ask_of_way(self) -> None:
        typed = self.typed()
        way = Establish(str(typed["establish"]))
        for field in PACKET:
            self.show_line(field.attribute, field.way in (None, way) or bool(typed[field.attribute]))

    def _take(self, typed: Mapping[str, object]) -> Mapping[str, str]:
        plan, texts = self._document.plan, {name: str(value or "") for name, value in typed.items()}
        values, wrong = values_from(texts, plan.place.units)
        if wrong:
            return wrong
        try:
            after = _with_packet(plan, self._crop, values, Establish(texts["establish"]))
            self._document.change(_("Crop {name}").format(name=values["name"]), after)
        except GardenplotError as error:
            return {error.field: error.says}
        return {}


def _asks(crop: Crop | None, plan: Plan) -> tuple[Ask, ...]:
    texts = texts_of(crop) if crop else {}
    name, *rest = (_line(one, crop, texts.get(one.attribute, ""), plan) for one in PACKET)
    way = Ask("establish", _("It is"), choices=_WAYS, chosen=crop.establish if crop else None)
    return name, way, *rest


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
