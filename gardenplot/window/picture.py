"""The drawing as a PNG picture, as the canvas shows it, without a window."""

import os

from attrs import evolve
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRect
from PySide6.QtGui import QGuiApplication, QImage, QPainter

from gardenplot.drawing.strips import RIGHT_MARGIN, arranged
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.canvas_names import gutter_for
from gardenplot.window.canvas_paint import Scene, paint_scene
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.strip_pictures import StripPictures

_WIDTH = 1600


def drawn(plan: Plan) -> bytes:
    """The PNG of a plan with all its plantings, 1600 pixels wide at twice the sharpness."""
    app = _app()
    laid_out = lay_out_plan(plan)
    longest = max((bed.length.nm for bed in plan.beds), default=10_000 * MM) / MM
    gutter = gutter_for(plan.beds, plan.place.units, _WIDTH)
    strips = evolve(arranged(laid_out, (_WIDTH - gutter - RIGHT_MARGIN) / longest, true_scale=False), gutter=gutter)
    height = round(min(strips.height + TAPE, 16_000))
    image = QImage(_WIDTH * 2, height * 2, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(2)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    scene = Scene(plan=plan, strips=strips, day=None, planting=None, bed=None, left=gutter, top=TAPE)
    paint_scene(painter, QRect(0, 0, _WIDTH, height), scene, StripPictures())
    painter.end()
    del app
    return png_of(image)


def png_of(image: QImage) -> bytes:
    """An image as the bytes of a PNG file."""
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]  # the stubs want bytes here, Qt a str
    return bytes(content.data())


def _app() -> object:
    """The application that fonts need; without a screen none is asked for."""
    if QGuiApplication.instance() is None:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    return QGuiApplication.instance() or QGuiApplication([])
