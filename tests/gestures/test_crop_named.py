"""A crop is found by its name, else by words that no other crop has."""

import pytest
from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.crop_named import crop_named
from gardenplot.plan import Plan
from gardenplot.plan.catalogue import found_crops

CROPS, _OWN = found_crops(Plan(), "")


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Lettuce, head", "Lettuce, head"),
        ("lettuce head", "Lettuce, head"),
        ("head lett", "Lettuce, head"),
        ("eggplant", "Aubergine"),
        ("BEETROOT", "Beetroot"),
    ],
)
def test_words_that_one_crop_alone_has_name_it(typed: str, name: str) -> None:
    assert crop_named(CROPS, typed).name == name


def test_words_that_one_name_alone_has_name_that_crop_though_others_are_known_by_them_too() -> None:
    """The small cos lettuce is known as mini romaine; the list shows the grower's own crop alone."""
    own = evolve(crop_named(CROPS, "Leek"), id="own", name="Mini romaine")
    crops = (own, *CROPS)
    assert crop_named(crops, "mini") is own
    assert crop_named(crops, "Romaine") is own
    assert crop_named(CROPS, "mini rom").name == "Cos lettuce, small"


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("Lett", "which one\\? “Lett” is in Cos lettuce, small; Lettuce, head; Lettuce, leaf$"),
        ("a", "; …$"),
        ("Moonberry", "“Moonberry” is no crop that is known here"),
        ("", "type a part of its name"),
    ],
)
def test_words_of_several_and_of_none_say_so(typed: str, told: str) -> None:
    with pytest.raises(PlanError, match=told):
        crop_named(CROPS, typed)
