"""What is asked for in dialogs about supplies: what is in store and what it costs, what beds are fed, water jugs."""

from collections.abc import Callable, Mapping

from PySide6.QtWidgets import QWidget

from gardenplot.drawing.shopping_list import what_words
from gardenplot.errors import GardenplotError
from gardenplot.gestures.supply_typed import (
    FEED_FIELDS,
    GOOD_FIELDS,
    JUG_FIELDS,
    SupplyField,
    good_of,
    texts_of_supply,
    with_supply,
)
from gardenplot.plan import Feed, GoodKind, Jugs, Plan, bed_of
from gardenplot.supplies.shopping import Item
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.words import _

_STORE_NOTE = _(
    "Amounts as they are sold: 250 seeds, 10 g, 50 m, 40 l, or a number. Prices without signs for thousands."
)
_TREATED = _("Treated seed is coloured: no food, no feed, gloves on, and its packet kept.")
_FEED_NOTE = _("How much a bed needs is for a soil test, the label and the local extension service to say.")
_JUG_NOTE = _(
    "A full jug is heavy: carry few at a time. Bleach against algae makes that water poison for plants; never mix it "
    "with other cleaners. Never use what held chemicals. Jugs help the plants beside them; they do not heat a tunnel."
)


def ask_good(document: Document, parent: QWidget, item: Item) -> bool:
    """Ask how much of a thing on the list is in store, and how a shop sells it."""
    plan, good = document.plan, good_of(item, document.plan.place.units)
    fields, what = GOOD_FIELDS[item.kind], what_words(plan, item)
    note = f"{_STORE_NOTE} {_TREATED}" if item.kind is GoodKind.SEED else _STORE_NOTE

    def take(texts: Mapping[str, str]) -> Plan:
        return with_supply(document.plan, good, fields, texts)

    title = _("In store and in the shop: {what}").format(what=what)
    step = _("Store of {what}").format(what=what)
    dialog = AskDialog(
        title, _asks(fields, texts_of_supply(good, fields)), _taking(document, step, take), _("Keep"), note=note,
        parent=parent,
    )  # fmt: skip
    return dialog.exec() == AskDialog.DialogCode.Accepted


def ask_feed(document: Document, parent: QWidget, feed: Feed | None = None, beds: tuple[str, ...] = ()) -> bool:
    """Ask what beds are given, all of them or some, or for changes to it."""
    asked = feed or Feed("feed", beds=beds)
    names = ", ".join(bed_of(document.plan, bed).name for bed in asked.beds) or _("all beds")

    def take(texts: Mapping[str, str]) -> Plan:
        return with_supply(document.plan, asked, FEED_FIELDS, texts)

    title = _("Feed {beds}").format(beds=names)
    dialog = AskDialog(
        title, _asks(FEED_FIELDS, texts_of_supply(asked, FEED_FIELDS)), _taking(document, title, take), _("Keep"),
        note=_FEED_NOTE, parent=parent,
    )  # fmt: skip
    return dialog.exec() == AskDialog.DialogCode.Accepted


def ask_jugs(document: Document, parent: QWidget, jugs: Jugs) -> bool:
    """Ask for water jugs as they are proposed, or for changes to some of the plan."""
    title = _("Water jugs in {bed}").format(bed=bed_of(document.plan, jugs.bed).name)

    def take(texts: Mapping[str, str]) -> Plan:
        return with_supply(document.plan, jugs, JUG_FIELDS, texts)

    dialog = AskDialog(
        title, _asks(JUG_FIELDS, texts_of_supply(jugs, JUG_FIELDS)), _taking(document, title, take), _("Keep"),
        note=_JUG_NOTE, parent=parent,
    )  # fmt: skip
    return dialog.exec() == AskDialog.DialogCode.Accepted


def _asks(fields: tuple[SupplyField, ...], texts: Mapping[str, str]) -> tuple[Ask, ...]:
    return tuple(
        Ask(field.name, field.label, texts.get(field.name, ""), field.example, field.empty) for field in fields
    )


def _taking(
    document: Document, step: str, take: Callable[[Mapping[str, str]], Plan]
) -> Callable[[Mapping[str, object]], Mapping[str, str]]:
    """What a dialog does with what was typed: one step of the document, or words at the field that is wrong."""

    def accept(typed: Mapping[str, object]) -> Mapping[str, str]:
        try:
            document.change(step, take({name: str(value or "") for name, value in typed.items()}))
        except GardenplotError as error:
            return {error.field: error.says}
        return {}

    return accept
