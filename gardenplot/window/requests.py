"""What the menus ask for through dialogs: beds, crops and orders, each one edit of the document."""

from collections.abc import Mapping

from PySide6.QtWidgets import QWidget

from gardenplot.gestures.bed_typed import SIZES, name_for, type_bed, usual
from gardenplot.plan import Crop
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.order_dialog import OrderDialog
from gardenplot.window.packet_dialog import PacketDialog
from gardenplot.window.wish_dialog import WishDialog
from gardenplot.words import _

Texts = Mapping[str, object]


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
    return _asked(PacketDialog(document, crop_id, parent))


def ask_order(document: Document, parent: QWidget, order_id: str | None = None) -> bool:
    """Ask for an order, or for changes to one of the plan; its crop may come from the catalogue."""
    return _asked(OrderDialog(document, order_id, parent))


def ask_wish(document: Document, parent: QWidget, wish_id: str | None = None, crop: Crop | None = None) -> bool:
    """Ask for a wish, or for changes to one of the plan; its crop may come from the catalogue."""
    return _asked(WishDialog(document, wish_id, parent, crop))


def _asked(dialog: AskDialog) -> bool:
    return dialog.exec() == AskDialog.DialogCode.Accepted
