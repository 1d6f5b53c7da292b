"""The days of a planting in its panel: typed, followed, told with their sums; and what came about."""

from datetime import date

import pytest
from attrs import evolve
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest

from gardenplot.drawing.captions import captions
from gardenplot.drawing.letters import looks
from gardenplot.drawing.tables import counts_by_bed, order_rows
from gardenplot.findings import Kind, find_all
from gardenplot.gestures.kept import layout_in
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Actual, Plan, bed_of, planting_of
from gardenplot.season import dates_of
from gardenplot.window.document import Document
from gardenplot.window.fields import Form, Typed
from gardenplot.window.main import MainWindow
from tests.drawing.hand_worked import plan_from
from tests.journeys.person import rows_of
from tests.window.mouse import Mouse
from tests.window.shared_window import window
from tests.window.test_panels import finish

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
BED = {"id": "b1", "name": "Tunnel", "length": "20 m", "width": "75 cm", "edge": "7.5 cm"}
KALE = {
    "id": "kale", "name": "Kale", "in_row": "30 cm", "row_spacing": ["30 cm"], "field_days": 40, "raising_days": 28,
    "hardening_days": 7, "cool_days": 5, "field_loss": "10 %",
}  # fmt: skip
BEET = {
    "id": "beet", "name": "Beet", "in_row": "10 cm", "row_spacing": ["30 cm"], "establish": "direct",
    "field_days": 60, "emerges_like": "Beets",
}  # fmt: skip
ORDERS = [
    {"id": "o1", "crop": "kale", "units": 90, "on": "2027-06-05"},
    {"id": "o2", "crop": "kale", "units": 20, "on": "2027-06-12", "times": 3},
]


def working(window: MainWindow) -> str:
    """The sums in the panel of a planting, with common spaces."""
    return window.inspector.planting.working.text().replace("\u00a0", " ")


def plan_of(*plantings: dict[str, object]) -> Plan:
    """Kale for an order at 0 m, and what else is asked for."""
    first: dict[str, object] = {"id": "p1", "bed": "b1", "crop": "kale", "from": "0 m", "order": "o1"}
    return plan_from(beds=[BED], crops=[KALE, BEET], orders=ORDERS, plantings=[first, *plantings])


BEETS: dict[str, object] = {"id": "p2", "bed": "b1", "crop": "beet", "from": "15 m", "length": "3 m"}


@pytest.fixture
def form(window: MainWindow) -> Form:
    """The form of the kale, which is selected."""
    window.document.start(plan_of(BEETS))
    window.sight.select("b1", "p1")
    return window.inspector.planting.form


def wipe(field: Typed) -> None:
    """Empty a field and finish it."""
    field.setFocus()
    field.clear()
    QTest.keyClick(field, Key.Key_Return)


def plant_out(form: Form, day: str = "2027-04-23") -> None:
    """Record that it was set out on a day."""
    finish(form.fields["actual_set_out"], day)


def test_every_day_that_follows_is_shown_with_its_word(form: Form) -> None:
    shown = {name: (form.fields[name].placeholderText(), form.hints[name].text()) for name in ("sow", "in_ground")}
    assert shown == {"sow": ("counted back", "Tue 23 Mar 2027"), "in_ground": ("by the order", "Tue 20 Apr 2027")}
    assert (form.fields["ready"].placeholderText(), form.hints["ready"].text()) == (
        "for the market",
        "Fri 4 Jun 2027",
    )
    assert form.fields["cool_days"].placeholderText() == "packet: 5"


@pytest.mark.parametrize(
    ("field", "text", "ready", "sow"),
    [
        ("sow", "2027-03-20", date(2027, 6, 1), date(2027, 3, 20)),
        ("in_ground", "2027-04-19", date(2027, 6, 3), date(2027, 3, 22)),
        ("ready", "2027-06-10", date(2027, 6, 10), date(2027, 3, 29)),
        ("cool_days", "8", date(2027, 6, 4), date(2027, 3, 20)),
    ],
)
def test_a_day_that_is_typed_moves_those_that_follow_and_an_empty_field_follows_again(
    document: Document, form: Form, field: str, text: str, ready: date, sow: date
) -> None:
    before = document.plan
    finish(form.fields[field], text)
    dates = dates_of(document.plan, planting_of(document.plan, "p1"))
    assert (dates.ready, dates.sow) == (ready, sow)
    assert document.stack.count() == 1
    wipe(form.fields[field])
    assert document.plan == before


@pytest.mark.parametrize(
    ("field", "text", "told"),
    [
        ("sow", "in March", "“in March” is no date: write it like 2027-04-09"),
        ("ready", "2027-02-29", "is no date"),
        ("cool_days", "a week", "is no whole number"),
        ("actual_set_out", "yesterday", "is no date"),
        ("actual_planted", "most", "is no whole number"),
    ],
)
def test_what_is_no_day_is_told_at_its_field(
    document: Document, form: Form, field: str, text: str, told: str
) -> None:
    before = document.plan
    finish(form.fields[field], text)
    assert told in form.fields[field].complaint.text()
    assert document.plan is before


def test_what_is_left_in_the_bed_is_typed_and_said(window: MainWindow, document: Document, form: Form) -> None:
    """102 of kale in 3 rows of 34; row 2 fails, and later 40 are counted."""
    assert form.fields["actual_standing"].isHidden()
    finish(form.fields["actual_set_out"], "2027-04-21")
    for name in ("actual_standing", "actual_counted", "actual_failed_rows"):
        assert not form.fields[name].isHidden()
    finish(form.fields["actual_failed_rows"], "4")
    assert "there is no row 4" in form.fields["actual_failed_rows"].complaint.text()
    finish(form.fields["actual_failed_rows"], "2")
    assert form.hints["actual_standing"].text() == "68 of 102 stand"
    finish(form.fields["actual_standing"], "40")
    finish(form.fields["actual_counted"], "2027-05-03")
    assert form.hints["actual_standing"].text() == "40 of 102 stand"
    came = planting_of(document.plan, "p1").actual
    assert came is not None
    assert (came.failed_rows, came.standing, came.counted) == ((2,), 40, date(2027, 5, 3))
    assert "40 of 102 stand" in window.inspector.planting.days.came.text()


def test_a_crop_has_only_the_fields_that_matter_to_it(window: MainWindow, form: Form) -> None:
    def shown() -> set[str]:
        names = ("sow", "soil", "market", "actual_sown", "actual_hardened", "actual_planted", "actual_stand")
        return {name for name in names if not form.fields[name].isHidden()}

    raised = {"sow", "actual_sown", "actual_hardened", "actual_planted", "actual_stand"}
    assert shown() == raised
    assert form.fields["in_ground"].accessibleName() == "Set out"
    window.sight.select("b1", "p2")
    assert shown() == {"soil", "actual_stand"}
    assert form.fields["in_ground"].accessibleName() == "Sow"
    window.sight.select("b1", "p1")
    box = window.inspector.planting.order
    box.setCurrentIndex(box.findData("o2"))
    box.activated.emit(box.currentIndex())
    assert shown() == raised | {"market"}
    finish(form.fields["market"], "3")
    assert "before Sat 26 Jun 2027" in window.inspector.planting.days.market.text()


def test_the_soil_tells_when_it_emerges_or_that_nobody_knows(window: MainWindow, form: Form) -> None:
    window.sight.select("b1", "p2")
    finish(form.fields["in_ground"], "2027-05-01")
    finish(form.fields["soil"], "68 F")
    emerges = form.hints["soil"].text()
    assert emerges.startswith("emerges ")
    assert emerges.removeprefix("emerges ") in working(window)
    finish(form.fields["soil"], "20 F")
    assert "the table has" in form.hints["soil"].text()
    finish(form.fields["soil"], "cold")
    assert "is no temperature" in form.fields["soil"].complaint.text()


def test_soil_too_cold_is_told_at_the_planting_and_in_the_list(window: MainWindow, form: Form) -> None:
    window.sight.select("b1", "p2")
    finish(form.fields["soil"], "2 °C")
    window.ledger.setCurrentIndex(6)
    (row,) = (row for row in rows_of(window.ledger.findings) if "too cold to sow" in row[2])
    assert (row[0], row[2]) == ("risk", window.inspector.planting.findings.text())
    assert "the table has 41 to 95 °F (5 to 35 °C)" in row[2]
    finish(form.fields["soil"], "12 °C")
    assert window.inspector.planting.findings.isHidden()


def test_every_day_shows_its_sum_and_how_far_to_trust_it(window: MainWindow, form: Form) -> None:
    lines = working(window).splitlines()
    assert "sow:  Tue 20 Apr 2027 − 28 days  →  Tue 23 Mar 2027  (fair: a week or two)" in lines
    assert any(line.startswith("set out:  Fri 4 Jun 2027 − 45 days") for line in lines)
    finish(form.fields["in_ground"], "2027-04-19")
    lines = working(window).splitlines()
    assert "set out:  typed  →  Mon 19 Apr 2027  (exact)" in lines
    assert any(line.startswith("cells:") and line.endswith("(good)") for line in lines) is False


def test_it_is_said_whether_it_is_ready_for_its_market_and_what_there_is_to_sell(
    window: MainWindow, form: Form
) -> None:
    market = window.inspector.planting.days.market
    assert market.text() == "ready 1 day before Sat 5 Jun 2027; about 91 to sell, 90 ordered"
    finish(form.fields["in_ground"], "2027-05-01")
    assert market.text().startswith("ready 10 days after the market on Sat 5 Jun 2027")


def test_what_came_about_is_recorded_and_moves_what_follows(
    window: MainWindow, document: Document, form: Form
) -> None:
    assert form.fields["actual_set_out"].placeholderText() == "due 20 Apr"
    plant_out(form)
    assert document.stack.count() == 1
    assert (form.hints["in_ground"].text(), form.hints["ready"].text()) == (
        "now Fri 23 Apr 2027",
        "now Mon 7 Jun 2027",
    )
    panel = window.inspector.planting
    assert "set out:  as it came about  →  Fri 23 Apr 2027  (exact)" in working(window)
    assert panel.days.market.text().startswith("ready 2 days after the market")
    assert panel.days.came.text() == "in the ground since 23 Apr"
    wipe(form.fields["actual_set_out"])
    assert planting_of(document.plan, "p1").actual is None


def test_potting_up_is_recorded_where_the_packet_has_it(window: MainWindow, document: Document, form: Form) -> None:
    assert form.fields["actual_potted_up"].isHidden()
    kale = evolve(document.plan.crops[0], pot_up_days=14)
    document.change("Packet of Kale", evolve(document.plan, crops=(kale, *document.plan.crops[1:])))
    assert not form.fields["actual_potted_up"].isHidden()
    assert form.fields["actual_potted_up"].placeholderText() == "due 6 Apr"
    finish(form.fields["actual_potted_up"], "2027-04-09")
    assert "pot up:  as it came about  →  Fri 9 Apr 2027  (exact)" in working(window)
    finish(form.fields["actual_hardened"], "2027-04-08")
    assert "2027-04-08 is not after 2027-04-09" in form.fields["actual_hardened"].complaint.text()
    finish(form.fields["from"], "1 m")
    assert planting_of(document.plan, "p1").actual == Actual(potted_up=date(2027, 4, 9))


def test_fewer_plants_than_laid_out_are_told_alike_everywhere(
    window: MainWindow, document: Document, form: Form
) -> None:
    laid_out = layout_in(document.plan, "p1").plants
    assert order_rows(document.plan)[0].planted == laid_out == 102
    plant_out(form)
    finish(form.fields["actual_planted"], "95")
    assert form.hints["order"].text() == "planted 95 of 102; 5 plants short of 100"
    assert form.hints["actual_planted"].text() == "planted 95 of 102"
    row = order_rows(document.plan)[0]
    assert (row.planted, row.met) == (95, "short by 5 plants, late by 3 days")
    (finding,) = (one for one in find_all(document.plan) if one.kind is Kind.ORDER_SHORT)
    assert (finding.amount, finding.limit) == (95, 100)
    assert "about 85 to sell, 90 ordered" in window.inspector.planting.days.market.text()


@pytest.mark.parametrize(("field", "text"), [("from", "1 m"), ("plants", "20"), ("in_row", "20 cm"), ("rows", "1")])
def test_a_field_of_the_block_refuses_what_is_in_the_ground(
    document: Document, form: Form, field: str, text: str
) -> None:
    plant_out(form)
    before = document.plan
    finish(form.fields[field], text)
    assert form.fields[field].complaint.text().startswith("Kale is in the ground since Fri 23 Apr 2027: its block")
    assert document.plan is before


def test_its_choices_refuse_too_and_show_the_plan_again(window: MainWindow, document: Document, form: Form) -> None:
    document.start(plan_from(
        beds=[BED, BED | {"id": "b2", "name": "Field"}], crops=[KALE, BEET], orders=ORDERS,
        plantings=[{"id": "p1", "bed": "b1", "crop": "kale", "from": "0 m", "order": "o1"}],
    ))  # fmt: skip
    window.sight.select("b1", "p1")
    plant_out(form)
    before, panel = document.plan, window.inspector.planting
    for box, name in ((panel.bed, "bed"), (panel.chosen["pattern"], "pattern")):
        QTest.keyClick(box, Key.Key_Down)
        assert form.hints[name].text().startswith("Kale is in the ground since")
        assert box.currentIndex() == 0
    assert document.plan is before
    box = panel.order
    box.setCurrentIndex(box.findData("o2"))
    box.activated.emit(box.currentIndex())
    assert planting_of(document.plan, "p1").order == "o2"
    assert layout_in(document.plan, "p1") == layout_in(before, "p1")


def test_the_mouse_and_the_keys_leave_it_where_it_is_and_say_why(
    window: MainWindow, document: Document, form: Form, mouse: Mouse
) -> None:
    plant_out(form)
    before, bar = document.plan, window.statusBar()
    mouse.drag("b1", "2 m", "6 m")
    assert "its block stays; clear the day first" in bar.currentMessage()
    window.sight.select("b1", "p1")
    for key, held in (
        (Key.Key_Right, Keys.NoModifier),
        (Key.Key_Left, Keys.ControlModifier),
        (Key.Key_Delete, Keys.NoModifier),
    ):
        bar.clearMessage()
        QTest.keyClick(window.canvas, key, held)
        assert "Kale is in the ground since Fri 23 Apr 2027" in bar.currentMessage()
    for action in ("planting.compare", "planting.remove", "bed.remove", "block.split"):
        bar.clearMessage()
        window.registry.made(action).trigger()
        assert "Kale is in the ground since Fri 23 Apr 2027" in bar.currentMessage()
    assert document.plan is before
    QTest.keyClick(window.canvas, Key.Key_Z, Keys.ControlModifier)
    window.sight.select("b1", "p1")
    QTest.keyClick(window.canvas, Key.Key_Delete)
    assert "p1" not in [one.id for one in document.plan.plantings]


def test_the_drawing_the_counts_and_the_reader_tell_what_is_there(
    window: MainWindow, document: Document, form: Form
) -> None:
    def told() -> tuple[str, str]:
        plan = document.plan
        laid = lay_out_bed(plan, bed_of(plan, "b1"))
        spoken = QAccessible.queryAccessibleInterface(window.canvas)
        assert spoken is not None
        kale = spoken.child(0).child(0).text(QAccessible.Text.Name)
        return captions(plan, laid, None, looks(plan))[0].words[0], kale

    assert not any("in the ground" in words for words in told())
    plant_out(form)
    finish(form.fields["actual_planted"], "95")
    for words in told():
        assert "in the ground since 23 Apr, planted 95 of 102" in words
    row = counts_by_bed(document.plan)[0].inner[0]
    assert (row.name, row.rows, row.plants) == ("A  Kale, there since 23 Apr", "3\u2009×\u200934; 95 stand", 102)
