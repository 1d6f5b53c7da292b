"""The drawing is copied as a picture and as SVG; the counts are written as a table."""

from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QFileDialog, QMessageBox

from gardenplot.exports import svg
from gardenplot.exports.counts_csv import write_counts
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


def test_the_counts_are_written_as_a_table(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "counts.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(out), ""))
    window.registry.made("sheets.table").trigger()
    assert out.read_bytes() == write_counts(window.document.plan)
    assert out.read_text().startswith("bed,planting,crop")
    assert len(out.read_text().splitlines()) > 2


def test_a_table_that_cannot_be_written_is_told(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(tmp_path / "no" / "counts.csv"), ""))
    monkeypatch.setattr(QMessageBox, "warning", lambda _parent, _title, words: told.append(words))
    window.registry.made("sheets.table").trigger()
    assert "cannot be written" in told[0]
