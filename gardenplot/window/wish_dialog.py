"""The dialog of a wish: a crop to fill free ground with, how much of it, when, where, and what a plant is worth."""

from collections.abc import Mapping

from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError
from gardenplot.gestures.crop_named import crop_named, name_of_crop
from gardenplot.gestures.wish_typed import texts_of_wish, wish_values
from gardenplot.plan import Crop, Plan, Wish, by_id
from gardenplot.plan.catalogue import found_crops
from gardenplot.plan.edits import add_wish, carry_crop, change_wish
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.words import _


class WishDialog(AskDialog):
    """A wish, new, perhaps for a crop that is chosen already, or to be changed."""

    def __init__(self, document: Document, wish_id: str | None, parent: QWidget, crop: Crop | None = None) -> None:
        self._document = document
        self._wish = by_id(document.plan.wishes, wish_id) if wish_id else None
        self._crops, _own = found_crops(document.plan, "")
        self._chosen = self._wish.crop if self._wish else crop.id if crop else None
        does = _("Add wish") if self._wish is None else _("Change wish")
        note = _("Wishes fill ground that is free: Season ▸ Fill the season … Nothing is planted before that.")
        asks = _asks(self._wish, self._crops, self._chosen, document.plan)
        super().__init__(_("Wish"), asks, self._take, does, note=note, parent=parent)
        if crop is not None:
            self.fields["most"].setFocus()

    def _take(self, typed: Mapping[str, object]) -> Mapping[str, str]:
        plan, texts = self._document.plan, {name: str(value or "") for name, value in typed.items()}
        values, wrong = wish_values(texts, plan)
        try:
            crop = crop_named(self._crops, texts["crop"], self._chosen)
        except GardenplotError as error:
            wrong["crop"] = error.says
        if wrong:
            return wrong
        values["crop"] = crop.id
        try:
            after = carry_crop(plan, crop)
            if self._wish is None:
                after, step = add_wish(after, Wish(f"wish-{crop.id}", **values)), _("Wish for {crop}")
            else:
                after, step = change_wish(after, self._wish.id, **values), _("Change the wish for {crop}")
            self._document.change(step.format(crop=crop.name), after)
        except GardenplotError as error:
            return {error.field: error.says}
        return {}


def _asks(wish: Wish | None, crops: tuple[Crop, ...], chosen: str | None, plan: Plan) -> tuple[Ask, ...]:
    texts = texts_of_wish(wish, plan)
    names = tuple((one.name, one.id) for one in crops)
    return (
        Ask("crop", _("Crop"), name_of_crop(crops, chosen), _("Leek"), choices=names, is_typed=True),
        Ask("least", _("Plants, at least"), texts.get("least", ""), default="1"),
        Ask("most", _("Plants, at most"), texts.get("most", ""), default=_("as many as fit")),
        Ask("piece", _("In pieces of at least"), texts.get("piece", ""), default=_("not split")),
        Ask("days", _("Days in the ground"), texts.get("days", ""), default=_("those of the crop")),
        Ask("earliest", _("In the ground from"), texts.get("earliest", ""), "15 May 2027"),
        Ask("latest", _("Ground free again by"), texts.get("latest", ""), default=_("any day")),
        Ask("times", _("Times"), texts.get("times", ""), default="1"),
        Ask("every_days", _("Every so many days"), texts.get("every_days", ""), default="7"),
        Ask("worth", _("Worth of a plant"), texts.get("worth", ""), default="1"),
        Ask("beds", _("Beds"), texts.get("beds", ""), default=_("any")),
    )
