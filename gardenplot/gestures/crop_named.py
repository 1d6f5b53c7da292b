"""A crop by its name, as it is typed into an order or a wish."""

from gardenplot.errors import PlanError
from gardenplot.plan import Crop, by_id
from gardenplot.words import _


def name_of_crop(crops: tuple[Crop, ...], crop_id: str | None) -> str:
    """The name by which one of the crops is known; nothing for none."""
    return by_id(crops, crop_id).name if crop_id else ""


def crop_named(crops: tuple[Crop, ...], text: str, before: str | None = None) -> Crop:
    """The crop of that name, of several the one that was meant `before`, else the first; raises PlanError."""
    if not text:
        raise PlanError(_("a crop is needed: type a part of its name, or choose it from the list"))
    called = [crop for crop in crops if crop.name.casefold() == text.casefold()]
    if not called:
        words = _("“{typed}” is no crop that is known here: choose one of the list")
        raise PlanError(words.format(typed=text[:40]))
    return next((crop for crop in called if crop.id == before), called[0])
