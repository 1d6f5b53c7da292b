"""Colours as other eyes see them: in grey and under three colour blindnesses, and how far apart two of them are."""

from enum import StrEnum
from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt

import numpy as np
import numpy.typing as npt

Values = npt.NDArray[np.float64]


class Sight(StrEnum):
    """A way to see colours."""

    USUAL = "usual"
    GREY = "grey"
    PROTANOPIA = "protanopia"
    DEUTERANOPIA = "deuteranopia"
    TRITANOPIA = "tritanopia"


SEEN: dict[Sight, Values] = {
    Sight.USUAL: np.eye(3),
    # Relative luminance (WCAG 2.2), the same in all three channels.
    Sight.GREY: np.array([[0.2126, 0.7152, 0.0722]] * 3),
    # G. M. Machado, M. M. Oliveira, L. A. F. Fernandes: A Physiologically-based Model for Simulation of Color Vision
    # Deficiency. IEEE Transactions on Visualization and Computer Graphics 15(6), 2009; severity 1.0, on linear RGB.
    Sight.PROTANOPIA: np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    Sight.DEUTERANOPIA: np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    Sight.TRITANOPIA: np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
# IEC 61966-2-1 (sRGB) to CIE XYZ, and its white D65.
_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
_WHITE = _XYZ.sum(axis=1)


def linear(values: Values) -> Values:
    """Values of sRGB from 0 to 1 as light."""
    return np.where(values <= 0.04045, values / 12.92, ((values + 0.055) / 1.055) ** 2.4)


def encoded(light: Values) -> Values:
    """Light as values of sRGB from 0 to 1."""
    held = np.clip(light, 0, 1)
    return np.where(held <= 0.0031308, held * 12.92, 1.055 * held ** (1 / 2.4) - 0.055)


def seen_light(light: Values, sight: Sight) -> Values:
    """Light, red, green and blue along the last axis, as that sight has it."""
    return np.clip(light @ SEEN[sight].T, 0, 1)


def light_of(colour: str) -> Values:
    """A colour like "#23261F" as light."""
    return linear(np.array([int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]))


def seen(colour: str, sight: Sight) -> tuple[float, float, float]:
    """A colour as that sight has it, in CIE L*a*b*."""
    ratio = (_XYZ @ seen_light(light_of(colour), sight)) / _WHITE
    root = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    return float(116 * root[1] - 16), float(500 * (root[0] - root[1])), float(200 * (root[1] - root[2]))


def apart(one: tuple[float, float, float], other: tuple[float, float, float]) -> float:
    """The difference of two colours in L*a*b* by CIEDE2000 (CIE 142:2001); about 1 is the least that can be seen."""
    (light_1, a_1, b_1), (light_2, a_2, b_2) = one, other
    mean = (hypot(a_1, b_1) + hypot(a_2, b_2)) / 2
    more = 1 + 0.5 * (1 - sqrt(mean**7 / (mean**7 + 25**7)))
    chroma_1, chroma_2 = hypot(a_1 * more, b_1), hypot(a_2 * more, b_2)
    hue_1, hue_2 = degrees(atan2(b_1, a_1 * more)) % 360, degrees(atan2(b_2, a_2 * more)) % 360
    turn = (hue_2 - hue_1 + 180) % 360 - 180 if chroma_1 * chroma_2 else 0.0
    hue = (hue_1 + turn / 2) % 360 if chroma_1 * chroma_2 else hue_1 + hue_2
    light, chroma = (light_1 + light_2) / 2, (chroma_1 + chroma_2) / 2
    waves = ((-0.17, 1, -30), (0.24, 2, 0), (0.32, 3, 6), (-0.20, 4, -63))
    weight = 1 + sum(size * cos(radians(times * hue + shift)) for size, times, shift in waves)
    by_light = (light_2 - light_1) / (1 + 0.015 * (light - 50) ** 2 / sqrt(20 + (light - 50) ** 2))
    by_chroma = (chroma_2 - chroma_1) / (1 + 0.045 * chroma)
    by_hue = 2 * sqrt(chroma_1 * chroma_2) * sin(radians(turn) / 2) / (1 + 0.015 * chroma * weight)
    turned = -sin(radians(60 * exp(-(((hue - 275) / 25) ** 2)))) * 2 * sqrt(chroma**7 / (chroma**7 + 25**7))
    return sqrt(by_light**2 + by_chroma**2 + by_hue**2 + turned * by_chroma * by_hue)


def luminance(light: Values) -> Values:
    """Relative luminance (WCAG 2.2) of light."""
    total: Values = light @ SEEN[Sight.GREY][0]
    return total


def contrasts(one: Values, other: Values) -> Values:
    """Contrast ratios (WCAG 2.2) of light, one by one."""
    a, b = luminance(one) + 0.05, luminance(other) + 0.05
    return np.maximum(a, b) / np.minimum(a, b)
