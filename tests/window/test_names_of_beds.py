"""The names of beds left of the drawing: whole where they find room, else in two lines, else told by a tip."""

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QEvent, QObject, QPointF
from PySide6.QtGui import QColor

from gardenplot.drawing.strips import GUTTER
from gardenplot.drawing.style import Ink
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed
from gardenplot.units import Units
from gardenplot.window.canvas_names import gutter_for, is_cut, name_lines
from gardenplot.window.lettering import lettering
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import colour, palette
from tests.plans import metric_plan
from tests.window.walk import settle

pytestmark = pytest.mark.usefixtures("dressed")
LONG = "The bed below the old drove road, north of the burn, third from the gate"


@pytest.mark.parametrize(
    ("name", "gutter", "lines"),
    [
        ("Bed 1", 132, ("Bed 1",)),
        ("Tunnel, north side", 132, ("Tunnel, north", "side")),
        ("Tunnel, north side", 240, ("Tunnel, north side",)),
        ("", 132, ("",)),
    ],
)
def test_names_are_set_in_lines(name: str, gutter: int, lines: tuple[str, ...]) -> None:
    assert name_lines(name, gutter) == lines


@given(st.text(st.sampled_from("abcdefgh  "), max_size=60), st.integers(132, 240))
def test_no_line_is_wider_than_its_gutter_and_nothing_is_lost_unsaid(name: str, gutter: int) -> None:
    lines = name_lines(name, gutter)
    assert 1 <= len(lines) <= 2
    assert all(lettering(line, 14, bold=True).width <= gutter - 28 for line in lines)
    assert lines[-1].endswith("…") or " ".join(lines).split() == name.split()


def test_the_gutter_grows_with_the_longest_name_up_to_a_limit() -> None:
    def gutter(name: str, width: float = 1000) -> int:
        return gutter_for(change_bed(metric_plan(), "b1", name=name).beds, Units.METRIC, width)

    assert gutter("A") == GUTTER
    assert GUTTER < gutter("Tunnel, north side") < 200
    assert gutter(LONG) == gutter(LONG * 4) == 240
    assert gutter(LONG, 500) == 150


def test_a_name_that_is_cut_is_told_whole_where_the_pointer_rests(window: MainWindow) -> None:
    document = window.document
    document.change("Rename", change_bed(document.plan, "b1", name=LONG))
    settle(window)
    strips, (_left, top) = window.canvas.view.strips(), window.canvas.view.origin
    assert is_cut(LONG, strips)
    assert not is_cut(document.plan.beds[1].name, strips)
    middle = [strip.top + strip.height / 2 + top for strip in strips.strips]
    tips = window.canvas.tips
    assert tips.tip_at(40, middle[0]) == LONG
    assert tips.tip_at(40, middle[1]) == ""
    assert tips.tip_at(strips.gutter + 40, middle[0]) == ""


def test_with_many_beds_in_sight_some_are_named_the_others_tell_theirs_and_zero_is_a_line(window: MainWindow) -> None:
    beds = tuple(evolve(metric_plan().beds[0], id=f"b{number}", name=f"Bed {number}") for number in range(200))
    window.document.change("Many beds", Plan(beds=beds))
    window.views.fit_all()
    window.sight.select("b3")
    settle(window)
    canvas, view = window.canvas, window.canvas.view
    strips, (left, top) = view.strips(), view.origin
    named = strips.named("b3")
    assert "b3" in named
    assert 20 < len(named) < 100
    middles = {strip.bed: strip.middle + top for strip in strips.strips}
    assert canvas.tips.tip_at(40, middles["b0"]) == ""
    assert canvas.tips.tip_at(40, middles["b1"]) == "Bed 1"
    window.canvas.hand.pointed.emit(canvas.places.under(QPointF(left + 90, middles["b1"])))
    assert window.pointed.text().startswith("Bed 1 ")
    image, accent = canvas.viewport().grab().toImage(), colour(palette(), Ink.ACCENT)
    for bed in ("b0", "b77", "b199"):
        assert near(image.pixelColor(left - 2, round(middles[bed])), accent)


def near(one: QColor, other: QColor) -> bool:
    """Whether two colours are much alike."""
    apart = one.red() - other.red(), one.green() - other.green(), one.blue() - other.blue()
    return max(map(abs, apart)) < 60


def test_zooming_keeps_the_place_beside_a_wide_gutter(window: MainWindow) -> None:
    document, view = window.document, window.canvas.view
    document.change("Rename", change_bed(document.plan, "b1", name=LONG))
    view.fit()
    strips, (left, _top) = view.strips(), view.origin
    assert left == strips.gutter == 240
    assert left + strips.longest * view.along == pytest.approx(view.size[0] - 36)
    view.zoom(5)
    window.canvas.horizontalScrollBar().setValue(0)
    assert view.origin[0] == 240


class Laid(QObject):
    """Counts how often a widget lays out anew what is in it."""

    def __init__(self) -> None:
        super().__init__()
        self.times = 0

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  # the name is Qt's
        self.times += event.type() == QEvent.Type.LayoutRequest
        return super().eventFilter(watched, event)


def test_words_on_what_lies_under_the_pointer_lay_nothing_out_anew(window: MainWindow) -> None:
    settle(window)
    laid, canvas, (left, top) = Laid(), window.canvas, window.canvas.view.origin
    bar = window.statusBar()
    for watched in (window, bar):
        watched.installEventFilter(laid)
    (strip, *_others) = canvas.view.strips().strips
    seen = set()
    for x in (20, 40, 200, 400):
        canvas.hand.pointed.emit(canvas.places.under(QPointF(left + x, strip.middle + top)))
        settle(window)
        seen.add(window.pointed.text())
        assert window.pointed.width() > 200
    assert len(seen) == 4
    assert laid.times == 0
    window.total.setText("Another sum")
    settle(window)
    assert laid.times > 0
