"""The drawing is copied as a picture and as SVG."""

from xml.etree import ElementTree as ET

from PySide6.QtGui import QGuiApplication, QImage

from gardenplot.exports import svg
from gardenplot.window.main import MainWindow


def test_the_drawing_is_copied_as_a_picture_and_as_svg(window: MainWindow) -> None:
    window.registry.made("sheets.copy").trigger()
    copied = QGuiApplication.clipboard().mimeData()
    assert bytes(copied.data("image/svg+xml").data()) == svg.drawn(window.document.plan)
    assert ET.fromstring(bytes(copied.data("image/svg+xml").data())).tag.endswith("svg")
    assert copied.hasImage()
    image = QImage.fromData(copied.data("image/png"))
    assert image.width() == 3200
    assert QGuiApplication.clipboard().image().size() == image.size()
    seen = {image.pixel(x, y) for x in range(0, 3200, 16) for y in range(0, image.height(), 16)}
    assert len(seen) > 4
