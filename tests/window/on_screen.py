"""A window on a screen of some scale, in a process of its own: what a drag there does, and how sharp it is drawn."""

import json
import sys

import numpy as np
from PySide6.QtCore import QPoint, QPointF, QRect, QSettings, QSize, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.gestures.kept import layout_in
from gardenplot.units import CM, parse_length
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from tests.colours_seen import Values, contrasts
from tests.plans import metric_plan
from tests.today import TODAY
from tests.window.mouse import Mouse
from tests.window.walk import Pixels, light, settle


def main(folder: str) -> int:
    """Print as JSON what was seen."""
    app = made_app()
    QSettings.setPath(QSettings.Format.NativeFormat, QSettings.Scope.UserScope, folder)
    window = MainWindow()
    window.document.today = lambda: TODAY
    window.resize(QSize(1200, 800))
    window.document.start(metric_plan())
    window.show()
    settle(window)
    pixels, ratio = seen(window)
    found = {
        "ratio": ratio,
        "size": [window.canvas.viewport().width(), window.canvas.viewport().height()],
        "ticks": least_ticks(window, pixels, ratio),
        "rows": row_contrast(window, pixels, ratio),
        "sharpest": sharpest(pixels),
        "drag": dragged(window),
        "resized": resized(window),
    }
    print(json.dumps(found))
    window.document.start(metric_plan())
    window.close()
    app.processEvents()
    return 0


def seen(window: MainWindow) -> tuple[Pixels, float]:
    """The canvas in pixels of the screen, and how many of them are one of the program's."""
    image = window.canvas.viewport().grab().toImage().convertToFormat(QImage.Format.Format_RGB888)
    wide, high, stride = image.width(), image.height(), image.bytesPerLine()
    pixels = np.frombuffer(bytes(image.constBits()), np.uint8).reshape(high, stride)[:, : wide * 3]
    return pixels.reshape(high, wide, 3), image.devicePixelRatio()


def at(window: MainWindow, bed: str, reading: str) -> QPointF:
    """A tape reading in the middle of a bed."""
    return Mouse(window.canvas).point(bed, reading)


def least_ticks(window: MainWindow, pixels: Pixels, ratio: float) -> float:
    """The least contrast of the ticks at every whole metre of the tape with its paper."""
    row: Values = light(pixels[round(30 * ratio)][None])[0]
    found = []
    for metre in range(1, 20):
        x = round(at(window, "b2", f"{metre} m").x() * ratio)
        found.append(float(contrasts(row[x - 3 : x + 4], row[x - 5 : x - 4]).max()))
    return min(found)


def row_contrast(window: MainWindow, pixels: Pixels, ratio: float) -> float:
    """The contrast of the edge of a bed with the paper above it: the thinnest line that must be seen."""
    middle = at(window, "b2", "19.5 m")
    top = window.canvas.places.point_of("b2", parse_length("19.5 m").nm, 0)
    column = light(pixels[round((top.y() - 3) * ratio) : round((top.y() + 3) * ratio), round(middle.x() * ratio)])
    return float(contrasts(column, column[:1]).max())


def sharpest(pixels: Pixels) -> float:
    """The largest step from one pixel to the next, as a share of that from paper to ink."""
    values = pixels.astype(int).sum(axis=-1)
    return float(np.abs(np.diff(values, axis=1)).max() / (values.max() - values.min()))


def dragged(window: MainWindow) -> float:
    """Where the pak choi stands in cm when it is dragged from 5 to 6 m and let go."""
    Mouse(window.canvas).drag("b1", "5 m", "6 m")
    return layout_in(window.document.plan, "p1").start / CM


def resized(window: MainWindow) -> float:
    """Where the pak choi ends in cm when its foot end is drawn two metres back, by events at the window."""
    viewport = window.canvas.viewport()
    window.sight.select("b1", "p1")
    QApplication.processEvents()
    start = at(window, "b1", "11.30 m").toPoint()
    for step, point in enumerate((start, start - QPoint(20, 0), at(window, "b1", "9.30 m").toPoint())):
        if step == 0:
            QTest.mousePress(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, point)
        Mouse(window.canvas).move_to(QPointF(point))
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton)
    assert QRect(QPoint(), viewport.size()).contains(start)
    return layout_in(window.document.plan, "p1").end / CM


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
