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

Palette = Mapping[Ink, str]

LIGHT: Palette = {
    Ink.PAPER: "#FBFAF7",
    Ink.PANEL: "#F3F1EB",
    Ink.RULE: "#D9D6CC",
    Ink.INK: "#23261F",
    Ink.SECOND: "#5F635A",
    Ink.SOIL: "#EBE3D6",
    Ink.EDGE: "#A79B87",
    Ink.ACCENT: "#B3401F",
    Ink.GOOD: "#2F6B4F",
    Ink.PLANTING_1: "#2F6B4F",
    Ink.PLANTING_2: "#8A4B7D",
    Ink.PLANTING_3: "#8F5E07",
    Ink.PLANTING_4: "#2C5F8A",
    Ink.PLANTING_5: "#5B5A1C",
    Ink.PLANTING_6: "#7A4633",
    Ink.PLANTING_7: "#4A4F8C",
}
DARK: Palette = {
    Ink.PAPER: "#1D1F1B",
    Ink.PANEL: "#262923",
    Ink.RULE: "#43463D",
    Ink.INK: "#ECEAE2",
    Ink.SECOND: "#A9AC9F",
    Ink.SOIL: "#35312A",
    Ink.EDGE: "#80765F",
    Ink.ACCENT: "#F08A62",
    Ink.GOOD: "#86C9A4",
    Ink.PLANTING_1: "#86C9A4",
    Ink.PLANTING_2: "#D6A0CB",
    Ink.PLANTING_3: "#E3B55A",
    Ink.PLANTING_4: "#8FBCE6",
    Ink.PLANTING_5: "#C5C377",
    Ink.PLANTING_6: "#DBA38C",
    Ink.PLANTING_7: "#B0B4EC",
}


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours like "#23261F", 1 to 21 (WCAG 2.2, relative luminance)."""
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    parts = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
