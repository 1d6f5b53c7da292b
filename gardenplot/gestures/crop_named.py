"""A crop by its name or by words of it, as it is typed into an order, a wish or the answers of a new plan."""

from gardenplot.errors import PlanError
from gardenplot.plan import Crop, by_id
from gardenplot.plan.catalogue import with_words
from gardenplot.words import _

_UNKNOWN = _("“{typed}” is no crop that is known here: choose one of the list")
_TELLING = 3
"""Letters from which on the beginning of a word tells which of several crops is meant."""
_MOST_LISTED = 3
"""Of more crops that could be meant only so many are named."""


def name_of_crop(crops: tuple[Crop, ...], crop_id: str | None) -> str:
    """The name by which one of the crops is known; nothing for none."""
    return by_id(crops, crop_id).name if crop_id else ""


def crop_named(crops: tuple[Crop, ...], text: str, before: str | None = None, unknown: str = _UNKNOWN) -> Crop:
    """The crop of that name, of several the one that was meant `before`, else the first; or the one with these words.

    Of several that have them the only one in whose name they begin a word, unless they are a letter or two.
    Raises PlanError where there is none, in the words `unknown`, or where words are those of several.
    """
    if not text:
        raise PlanError(_("a crop is needed: type a part of its name, or choose it from the list"))
    called = [crop for crop in crops if crop.name.casefold() == text.casefold()]
    if called:
        return next((crop for crop in called if crop.id == before), called[0])
    found = with_words(crops, text)
    if not found:
        raise PlanError(unknown.format(typed=text[:40]))
    listed = [crop for crop in found if f" {text.casefold()}" in f" {crop.name.casefold()}"]
    if len(listed) == 1 and len(text) >= _TELLING:
        return listed[0]
    if len(found) > 1:
        names = "; ".join(crop.name for crop in found[:_MOST_LISTED]) + ("; …" if len(found) > _MOST_LISTED else "")
        raise PlanError(_("which one? “{typed}” is in {crops}").format(typed=text[:40], crops=names))
    return found[0]
