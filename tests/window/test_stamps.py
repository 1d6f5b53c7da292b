"""Stamped plants stand where single ones would, to a quarter of a pixel and a little for how ink spreads."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.marks import Shape
from gardenplot.window.stamps import paint_plants

INK = QColor("#000000")
SIDE = 96
SYMMETRIC = [shape for shape in Shape if shape is not Shape.TRIANGLE]


def painted(
    shape: Shape, radius: float, places: list[tuple[float, float]], density: float = 1.0, moved: float = 0.0
) -> NDArray[np.float64]:
    """How dark each device pixel is, 0 to 1, after plants were painted on white."""
    side = round(SIDE * density)
    image = QImage(side, side, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(density)
    image.fill(QColor("#FFFFFF"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(moved, moved)
    paint_plants(painter, shape, radius, INK, np.array(places).reshape(-1, 2) - moved)
    painter.end()
    bits = np.frombuffer(image.constBits(), dtype=np.uint8).reshape(side, side, 4)
    return 1.0 - bits[:, :, 0] / 255.0


def middle(dark: NDArray[np.float64]) -> tuple[float, float]:
    """Where the weight of the ink lies, in device pixels."""
    down, across = np.indices(dark.shape) + 0.5
    return float((dark * across).sum() / dark.sum()), float((dark * down).sum() / dark.sum())


place = st.floats(30, 66)


@settings(max_examples=60)
@given(
    st.sampled_from(SYMMETRIC), st.floats(1.1, 12), place, place, st.sampled_from((1.0, 1.5, 2.0)), st.floats(-9, 9)
)
def test_a_plant_is_stamped_within_a_quarter_of_a_pixel_of_its_place(
    dressed: QApplication, shape: Shape, radius: float, x: float, y: float, density: float, moved: float
) -> None:
    assert dressed
    found = middle(painted(shape, radius, [(x, y)], density, moved))
    assert found == pytest.approx((x * density, y * density), abs=0.2)


@pytest.mark.parametrize("shape", list(Shape))
def test_every_plant_is_stamped_once(dressed: QApplication, shape: Shape) -> None:
    assert dressed
    places = [(8.0 + 12 * across, 8.0 + 12 * down) for across in range(7) for down in range(7)]
    one = painted(shape, 4, places[:1]).sum()
    assert painted(shape, 4, places).sum() == pytest.approx(len(places) * one, rel=1e-6)
    assert painted(shape, 4, []).sum() == 0


@pytest.mark.parametrize("shape", list(Shape))
def test_a_large_plant_that_is_drawn_looks_like_a_stamped_one(dressed: QApplication, shape: Shape) -> None:
    assert dressed
    stamped, drawn = painted(shape, 24.0, [(48.125, 48.125)]), painted(shape, 24.01, [(48.125, 48.125)])
    assert np.abs(stamped - drawn).mean() < 0.01
