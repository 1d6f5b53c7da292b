"""Everything that is read has enough contrast, and so has what shows that something can be worked (WCAG 2.2, AA)."""

from collections import Counter
from collections.abc import Iterator

import numpy as np
import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QCheckBox,
    QComboBox,
    QDateEdit,
    QLabel,
    QLineEdit,
    QPushButton,
    QSlider,
    QStyle,
    QStyleOptionButton,
    QStyleOptionSlider,
    QTabBar,
    QTreeWidget,
    QWidget,
)

from gardenplot.drawing.style import contrast
from gardenplot.files import resource
from gardenplot.plan.edits import change_planting
from gardenplot.units import CM, Units, length_of
from gardenplot.window.main import MainWindow
from tests.colours_seen import Values, contrasts
from tests.window.walk import DIALOGS, Pixels, cut, keyed, light, opened, parts, picture, place, settle

TEXT, GRAPHICS = 4.5, 3.0
"""Least contrast of text (WCAG 2.2, 1.4.3), and of what shows a control and its state (1.4.11)."""
RING = 3
"""How far the ring of a button with the keyboard reaches into it.

The style sheet may give it another ink, which is nowhere in its palette: its words are read from the picture instead.
"""
READ = (QLabel, QAbstractButton, QLineEdit, QComboBox, QDateEdit, QTabBar, QTreeWidget)


@pytest.fixture(scope="module", params=[Qt.ColorScheme.Light, Qt.ColorScheme.Dark], ids=["light", "dark"])
def screen(dressed: QApplication, request: pytest.FixtureRequest) -> Iterator[None]:
    """A light and a dark screen, and a light one afterwards."""
    dressed.styleHints().colorSchemeChanged.emit(request.param)
    yield
    dressed.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Light)


@pytest.mark.usefixtures("screen")
@pytest.mark.parametrize("selected", [(None, None), ("b1", None), ("b1", "p1")], ids=["plan", "bed", "planting"])
def test_the_window_is_read_and_its_controls_are_seen(
    window: MainWindow, selected: tuple[str | None, str | None]
) -> None:
    document = window.document
    inside = change_planting(document.plan, "p2", start=length_of(5 * CM, Units.METRIC))
    document.change("Into the head margin", inside)
    window.sight.select(*selected)
    window.resize(1440, 1600)
    for tab in range(window.ledger.count()):
        window.ledger.setCurrentIndex(tab)
        settle(window)
        assert_read_and_seen(window)


@pytest.mark.usefixtures("screen")
@pytest.mark.parametrize("name", DIALOGS)
def test_the_dialogs_are_read_and_their_controls_are_seen(
    host: MainWindow, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(host, name, monkeypatch.setattr)
    dialog.resize(dialog.width(), 1400)
    settle(dialog)
    assert_read_and_seen(dialog)
    dialog.close()


def assert_read_and_seen(shown: QWidget) -> None:
    """Walk over all parts; those that are disabled are left out, as the guideline leaves them out."""
    pixels, found = picture(shown), Counter[str]()
    for part in (each for each in parts(shown) if each.isEnabled()):
        name = f"{type(part).__name__} {part.objectName() or part.accessibleName() or getattr(part, 'text', str)()}"
        if isinstance(part, READ) and words_of(part):
            ground, most = ground_of(cut(pixels, place(part, shown)))
            if isinstance(part, QPushButton) and part.hasFocus():
                ground, inked = ground_of(cut(pixels, place(part, shown, -RING)))
                assert inked >= TEXT, f"{name}: its words on {ground}"
            else:
                written = part.palette().color(QPalette.ColorGroup.Active, part.foregroundRole()).name()
                assert contrast(written, ground) >= TEXT, f"{name}: {written} on {ground}"
            assert most >= GRAPHICS, name
            found["read"] += 1
        for edge, what in edges(part, shown):
            assert has_edge(pixels, edge), f"{name}: {what} at {edge}"
            found[what] += 1
    assert found["read"] >= 3
    assert found["outline"] >= 2


def words_of(part: QWidget) -> str:
    """The words on a part, if it has any."""
    if isinstance(part, QLabel | QAbstractButton | QLineEdit):
        return part.text().strip()
    if isinstance(part, QComboBox):
        return part.currentText()
    return "a date, a tab or a table"


def ground_of(pixels: Pixels) -> tuple[str, float]:
    """The colour that most pixels have, and the most contrast that any other has with it."""
    there, counts = np.unique(keyed(pixels), return_counts=True)
    colours = np.stack([there >> 16, there >> 8 & 255, there & 255], axis=-1).astype(np.uint8)
    most = counts.argmax()
    return f"#{there[most]:06X}", float(contrasts(light(colours), light(colours[most : most + 1])).max())


def edges(part: QWidget, shown: QWidget) -> Iterator[tuple[QRect, str]]:
    """Short stretches across the outline of what can be worked: its left edge at half its height."""
    frame = place(part, shown)
    if isinstance(part, QLineEdit | QComboBox | QDateEdit | QPushButton):
        if not isinstance(part.parentWidget(), QDateEdit | QComboBox):
            yield across(frame), "outline"
    elif isinstance(part, QCheckBox):
        option = QStyleOptionButton()
        part.initStyleOption(option)
        box = part.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, part)
        yield across(box.translated(frame.topLeft())), "box"
    elif isinstance(part, QSlider):
        slider = QStyleOptionSlider()
        part.initStyleOption(slider)
        control = QStyle.ComplexControl.CC_Slider
        handle = part.style().subControlRect(control, slider, QStyle.SubControl.SC_SliderHandle, part)
        high = QRect(handle.left(), handle.top() + 2, handle.width(), 5)
        yield across(high.translated(frame.topLeft())), "handle"


def across(frame: QRect) -> QRect:
    """Three pixels outside of a frame's left edge to three inside of it, at half its height."""
    return QRect(frame.left() - 3, frame.center().y(), 7, 1)


def has_edge(pixels: Pixels, stretch: QRect) -> bool:
    """Whether some pixel of a stretch across an edge stands out from the outermost one."""
    row: Values = light(cut(pixels, stretch))[0]
    return float(contrasts(row, row[:1]).max()) >= GRAPHICS


@pytest.mark.usefixtures("screen")
@pytest.mark.parametrize("screen", [Qt.ColorScheme.Light], indirect=True, ids=["light"])
def test_what_is_faint_is_found(window: MainWindow) -> None:
    """The test of the test: grey words on grey, and a field with a faint outline."""
    label = QLabel("faint", window.header)
    label.setStyleSheet("color: #A0A0A0; background: #C0C0C0;")
    label.setGeometry(0, 0, 60, 20)
    label.show()
    with pytest.raises(AssertionError, match="faint"):
        assert_read_and_seen(window)
    label.hide()
    button = QPushButton("dim words", window.header)
    button.setStyleSheet("QPushButton:focus { color: #A0A0A0; background: #C0C0C0; border: 2px solid #B3401F; }")
    button.setGeometry(0, 0, 90, 30)
    button.show()
    button.setFocus()
    with pytest.raises(AssertionError, match="dim words: its words"):
        assert_read_and_seen(window)
    button.hide()
    window.shelf.search.setStyleSheet("border: 1px solid #D9D6CC;")
    with pytest.raises(AssertionError, match="outline"):
        assert_read_and_seen(window)


@pytest.mark.parametrize(("name", "ground"), [("tick", "#23261F"), ("tick-dark", "#ECEAE2")])
def test_the_tick_is_seen_on_its_box(name: str, ground: str) -> None:
    assert stroke(name) not in ("", ground)
    assert contrast(stroke(name), ground) >= GRAPHICS


@pytest.mark.parametrize("name", ["down", "close", "float", "left", "right", "ask", "warn"])
@pytest.mark.parametrize("ground", ["#FBFAF7", "#F3F1EB", "#1D1F1B", "#262923"])
def test_the_other_marks_are_seen_on_light_and_on_dark(name: str, ground: str) -> None:
    assert contrast(stroke(name), ground) >= GRAPHICS


def stroke(name: str) -> str:
    """The colour of a mark of the window."""
    return resource(f"marks/{name}.svg").read_text(encoding="utf-8").partition('stroke="')[2][:7]
