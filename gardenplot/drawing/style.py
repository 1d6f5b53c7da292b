"""Every colour of the program by its role, for light and dark screens and for paper; nothing else names a colour."""

from collections.abc import Mapping
from enum import StrEnum


class Ink(StrEnum):
    """What a colour is for."""

    PAPER = "paper"
    PANEL = "panel"
    RULE = "rule"
    INK = "ink"
    SECOND = "second ink"
    FIELD = "field"
    SOIL = "soil"
    EDGE = "bed edge"
    ACCENT = "accent"
    GOOD = "good"
    PLANTING_1 = "planting 1"
    PLANTING_2 = "planting 2"
    PLANTING_3 = "planting 3"
    PLANTING_4 = "planting 4"
    PLANTING_5 = "planting 5"
    PLANTING_6 = "planting 6"
    PLANTING_7 = "planting 7"


PLANTINGS = tuple(ink for ink in Ink if ink.startswith("planting"))
"""The colours of plantings, so ordered that each is told from the next one and from the third after it.

Their lightness falls by seven even steps along every second of them, so that this holds in grey too.
"""

Palette = Mapping[Ink, str]

LIGHT: Palette = {
    Ink.PAPER: "#FBFAF7",
    Ink.PANEL: "#F3F1EB",
    Ink.RULE: "#D9D6CC",
    Ink.INK: "#23261F",
    Ink.SECOND: "#5F635A",
    Ink.FIELD: "#858277",
    Ink.SOIL: "#EBE3D6",
    Ink.EDGE: "#857962",
    Ink.ACCENT: "#B3401F",
    Ink.GOOD: "#2F6B4F",
    Ink.PLANTING_1: "#1A7F63",
    Ink.PLANTING_2: "#752462",
    Ink.PLANTING_3: "#82652F",
    Ink.PLANTING_4: "#113B4C",
    Ink.PLANTING_5: "#4A6424",
    Ink.PLANTING_6: "#4A2219",
    Ink.PLANTING_7: "#534987",
}
DARK: Palette = {
    Ink.PAPER: "#1D1F1B",
    Ink.PANEL: "#262923",
    Ink.RULE: "#43463D",
    Ink.INK: "#ECEAE2",
    Ink.SECOND: "#A9AC9F",
    Ink.FIELD: "#85887C",
    Ink.SOIL: "#35312A",
    Ink.EDGE: "#8B8169",
    Ink.ACCENT: "#F08A62",
    Ink.GOOD: "#86C9A4",
    Ink.PLANTING_1: "#52A592",
    Ink.PLANTING_2: "#FEB8DF",
    Ink.PLANTING_3: "#CB9F56",
    Ink.PLANTING_4: "#BDE8FE",
    Ink.PLANTING_5: "#B3B381",
    Ink.PLANTING_6: "#FFE3D6",
    Ink.PLANTING_7: "#B3B8FF",
}


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours like "#23261F", 1 to 21 (WCAG 2.2, relative luminance)."""
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    parts = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
