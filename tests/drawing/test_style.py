"""Colours by their roles, each with enough contrast against its ground (WCAG 2.2)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.style import DARK, LIGHT, PLANTINGS, Ink, Palette, contrast

SCREENS = pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
TEXT, GRAPHICS = 4.5, 3.0
"""Least contrast of text (WCAG 2.2, 1.4.3) and of graphical objects (1.4.11)."""
BLOCK_TINT = 0.16
"""How much of its ink a block's ground takes on."""
colours = st.integers(0, 0xFFFFFF).map("#{:06X}".format)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#FFFFFF", 21.0),
        ("#777777", "#FFFFFF", 4.48),
        ("#767676", "#FFFFFF", 4.54),
        ("#949494", "#FFFFFF", 3.03),
        ("#FF0000", "#FFFFFF", 4.0),
        ("#0000FF", "#FFFFFF", 8.59),
        ("#123456", "#123456", 1.0),
    ],
)
def test_contrast_is_that_of_the_published_examples(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)


def test_the_grey_of_the_standard_fails_by_a_hair() -> None:
    assert contrast("#777777", "#FFFFFF") < TEXT < contrast("#767676", "#FFFFFF")


@given(colours, colours)
def test_contrast_is_the_same_both_ways_and_lies_between_1_and_21(one: str, other: str) -> None:
    assert contrast(one, other) == contrast(other, one)
    assert 1 <= contrast(one, other) <= 21


@SCREENS
@pytest.mark.parametrize("ink", PLANTINGS)
def test_every_planting_is_seen_on_soil_and_on_its_own_tint(palette: Palette, ink: Ink) -> None:
    tinted = mixed(palette[ink], palette[Ink.SOIL], BLOCK_TINT)
    for ground in (palette[Ink.SOIL], tinted):
        assert contrast(palette[ink], ground) >= GRAPHICS


@SCREENS
@pytest.mark.parametrize("ink", [Ink.INK, Ink.SECOND, Ink.ACCENT, Ink.GOOD])
@pytest.mark.parametrize("ground", [Ink.PAPER, Ink.PANEL])
def test_every_text_can_be_read_on_paper_and_panel(palette: Palette, ink: Ink, ground: Ink) -> None:
    assert contrast(palette[ink], palette[ground]) >= TEXT


@SCREENS
def test_labels_and_trouble_are_seen_on_soil(palette: Palette) -> None:
    assert contrast(palette[Ink.INK], palette[Ink.SOIL]) >= TEXT
    assert contrast(palette[Ink.ACCENT], palette[Ink.SOIL]) >= GRAPHICS


@SCREENS
def test_every_role_has_a_colour(palette: Palette) -> None:
    assert set(palette) == set(Ink)
    assert all(re.fullmatch(r"#[0-9A-F]{6}", colour) for colour in palette.values())


@SCREENS
def test_no_two_plantings_have_one_colour_and_none_has_the_accents(palette: Palette) -> None:
    assert len({palette[ink] for ink in (*PLANTINGS, Ink.ACCENT)}) == len(PLANTINGS) + 1


def mixed(ink: str, ground: str, share: float) -> str:
    """A ground with a share of an ink over it."""
    pairs = ((int(ink[at : at + 2], 16), int(ground[at : at + 2], 16)) for at in (1, 3, 5))
    return "#" + "".join(f"{round(over * share + under * (1 - share)):02X}" for over, under in pairs)
