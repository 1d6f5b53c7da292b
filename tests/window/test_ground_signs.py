"""Words on the ground at every zoom: none lies on a bed, on a wall or on another, and the chosen bed has its name."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from gardenplot.drawing.ground import Says, draw_ground
from gardenplot.drawing.ground_placing import are_apart, box_of
from gardenplot.drawing.ground_under import Eye
from gardenplot.drawing.ground_words import peg_words
from gardenplot.drawing.style import Ink
from gardenplot.files import sample
from gardenplot.plan import Plan
from gardenplot.plan.edits import move_bed
from gardenplot.plan.file import read_plan
from gardenplot.units import M, Units, parse_length
from gardenplot.window.document import Document
from gardenplot.window.ground_beside import kept_free
from gardenplot.window.ground_eye import GroundEye
from gardenplot.window.ground_paint import GroundScene, hindrances_of
from gardenplot.window.ground_signs import Placed, placed_signs
from gardenplot.window.main import MainWindow
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, palette
from tests.plans import plans
from tests.window.walk import settle

pytestmark = pytest.mark.usefixtures("dressed")
SAMPLES = ("kestrel-howe", "larch-bend", "otter-steep", "tarn-garth")


def placed(plan: Plan, scale: float, chosen: str | None = None) -> tuple[Placed, ...]:
    figure = draw_ground(plan, None)
    scene = GroundScene(plan, figure, Eye(scale, 0, 0), None, () if chosen is None else (chosen,), None)
    return placed_signs(figure.signs, figure.solid, figure.lines, scale, scene.beds, hindrances_of(scene))


def assert_clear(plan: Plan, scale: float, found: tuple[Placed, ...], chosen: str | None = None) -> None:
    solid = [tuple((x * scale, y * scale) for x, y in one) for one in draw_ground(plan, None).solid]
    others = [one for one in found if chosen is None or one.sign.about != chosen]
    for one in others:
        assert all(are_apart(one.corners, other) for other in solid), f"{one.words} lies on a bed or a wall"
    for one, other in combinations(found, 2):
        assert are_apart(one.corners, other.corners), f"{one.words} lies on {other.words}"


@settings(max_examples=60)
@given(plans(), st.sampled_from([0.002, 0.008, 0.02, 0.05, 0.2]), st.data())
def test_no_words_lie_on_a_bed_or_on_others(plan: Plan, scale: float, data: st.DataObject) -> None:
    chosen = data.draw(st.sampled_from([None, *(bed.id for bed in plan.beds)]))
    found = placed(plan, scale, chosen)
    assert_clear(plan, scale, found, chosen)
    assert chosen is None or chosen in {one.sign.about for one in found if one.sign.says is Says.BED}


@pytest.mark.parametrize("name", SAMPLES)
def test_in_the_samples_all_is_named_at_a_usual_zoom(name: str) -> None:
    plan = read_plan(sample(f"{name}.gardenplot")).plan
    found = placed(plan, 0.03)
    assert_clear(plan, 0.03, found)
    assert {one.sign.about for one in found if one.sign.says in (Says.BED, Says.STRIP)} == {
        *(bed.id for bed in plan.beds), *(one.id for one in plan.tunnels), *(one.id for one in plan.paths),
    }  # fmt: skip


def test_a_name_between_two_beds_end_to_end_goes_to_an_edge() -> None:
    plan = read_plan(sample("tarn-garth.gardenplot")).plan
    one, other = plan.beds[:2]
    zero, down = parse_length("2 m"), parse_length("5 m")
    plan = move_bed(plan, one.id, zero, down)
    after = parse_length(f"{2 + one.length.nm / M + 0.5:.3f} m")
    plan = move_bed(plan, other.id, after, down)
    name = next(each for each in placed(plan, 0.03) if each.sign.about == other.id)
    assert name.at != pytest.approx([value * 0.03 for value in name.sign.stands[0].at])
    assert name.words == other.name


def test_a_peg_out_of_sight_is_pointed_to_with_its_distance(window: MainWindow) -> None:
    window.views.show_ground(True)
    ground = window.views.ground
    ground.eye.pan(QPointF(-3000, 0))
    settle(window)
    frame, plan = QRectF(0, 0, *ground.eye.size), window.document.plan
    eye = ground.eye.eye
    assert eye.left < 0
    away = kept_free(frame, plan, eye)[-1]
    assert frame.contains(away)
    image, accent = ground.grab().toImage(), colour(palette(), Ink.ACCENT)
    near = [image.pixelColor(x, round(away.center().y())) for x in range(2, 24)]
    assert any(abs(one.red() - accent.red()) < 40 and abs(one.blue() - accent.blue()) < 40 for one in near)
    ground.eye.fit()
    assert away not in kept_free(frame, plan, ground.eye.eye)


def test_the_distance_to_the_peg_is_said() -> None:
    assert peg_words(12_300_000_000, Units.METRIC) == "peg, 12.30\u2009m"


@pytest.mark.parametrize("height", [132, 160, 240, 400])
@pytest.mark.parametrize("name", SAMPLES)
def test_the_scale_bar_lies_on_no_bed_where_the_ground_is_shown_whole(qtbot: QtBot, name: str, height: int) -> None:
    area, document = QWidget(), Document()
    qtbot.addWidget(area)
    area.resize(600, height)
    document.start(read_plan(sample(f"{name}.gardenplot")).plan)
    looks = GroundEye(area, document, Sight(document))
    frame, eye = QRectF(0, 0, *looks.size), looks.eye
    bar = next(one for one in kept_free(frame, document.plan, eye) if one.bottom() > frame.bottom() - 10)
    for solid in looks.figure.solid:
        left, top, right, bottom = box_of([eye.pixels(one) for one in solid])
        assert not bar.intersects(QRectF(left, top, right - left, bottom - top))
