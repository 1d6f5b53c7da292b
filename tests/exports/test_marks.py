"""The drawing in other programs' files: every mark of every kind, once, at its place."""

import io
from collections import Counter
from decimal import Decimal
from itertools import pairwise
from pathlib import Path
from types import ModuleType
from xml.etree import ElementTree as ET

import pytest
from ezdxf.document import Drawing
from ezdxf.filemanagement import read
from hypothesis import given, settings

from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Label, Line, Mark, Outline, Plants
from gardenplot.errors import FileError
from gardenplot.exports import dxf, places, svg
from gardenplot.exports.kinds import writer_for
from gardenplot.exports.sheet_of_beds import placed
from gardenplot.layout import lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Plan
from gardenplot.units import MM
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import feet_plan, metric_plan, plans

SVG = "{http://www.w3.org/2000/svg}"
each_small_plan = pytest.mark.parametrize(
    "plan", [metric_plan(), feet_plan(), hand_worked("s3"), hand_worked("s5")], ids=["metric", "feet", "s3", "s5"]
)


def marks(plan: Plan) -> list[Mark]:
    """All marks of a plan's beds."""
    return [mark for bed in placed(plan) for mark in bed.figure.marks]


def kinds(plan: Plan) -> Counter[type]:
    return Counter(type(mark) for mark in marks(plan))


def groups(plan: Plan) -> list[ET.Element]:
    """The group of each bed in the SVG of a plan."""
    return ET.fromstring(svg.drawn(plan)).findall(f"{SVG}g")


def dxf_of(plan: Plan) -> Drawing:
    return read(io.StringIO(dxf.drawn(plan).decode()))


def plants_in(path: ET.Element) -> int:
    """Plants in a path: each moves to its place with a capital M."""
    return path.attrib["d"].count("M")


@settings(max_examples=25)
@given(plans())
def test_the_svg_holds_every_mark_of_every_kind_once(plan: Plan) -> None:
    found = Counter(element.tag.removeprefix(SVG) for group in groups(plan) for element in group)
    expected = kinds(plan)
    hatched = sum(isinstance(mark, Outline) and mark.hatch is not None for mark in marks(plan))
    assert found["polygon"] == expected[Outline] + hatched
    assert (found["line"], found["text"], found["path"]) == (expected[Line], expected[Label], expected[Plants])
    assert found["title"] == len(plan.beds) == len(groups(plan))


@settings(max_examples=25)
@given(plans())
def test_the_svg_counts_what_the_layouts_count(plan: Plan) -> None:
    drawn = [sum(map(plants_in, group.findall(f"{SVG}path"))) for group in groups(plan)]
    assert drawn == [sum(len(positions(layout)) for layout in laid.layouts) for laid in lay_out_plan(plan)]


@settings(max_examples=8)
@given(plans().filter(lambda plan: len(plan.plantings) < 3))
def test_the_dxf_holds_every_mark_of_every_kind_once(plan: Plan) -> None:
    document = dxf_of(plan)
    found = Counter(entity.dxftype() for entity in document.modelspace())
    expected = kinds(plan)
    assert (found["LWPOLYLINE"], found["LINE"]) == (expected[Outline], expected[Line])
    assert found["TEXT"] == expected[Label] + len(plan.beds)
    assert found["CIRCLE"] == sum(len(positions(layout)) for laid in lay_out_plan(plan) for layout in laid.layouts)
    assert document.audit().errors == []


@each_small_plan
def test_plants_of_the_dxf_lie_where_the_layouts_say_each_on_the_layer_of_its_planting(plan: Plan) -> None:
    circles = {
        (circle.dxf.layer[0], round(circle.dxf.center.x, 3), round(circle.dxf.center.y, 3))
        for circle in dxf_of(plan).modelspace().query("CIRCLE")
    }
    look = looks(plan)
    expected = {
        (look[layout.planting].letter, round(x / MM, 3), round(-bed.top - y / MM, 3))
        for bed, laid in zip(placed(plan), lay_out_plan(plan), strict=True)
        for layout in laid.layouts
        for x, y in positions(layout).tolist()
    }
    assert circles == expected


@each_small_plan
def test_circles_of_the_dxf_do_not_touch(plan: Plan) -> None:
    spacing = {
        looks(plan)[layout.planting].letter: layout.grid.in_row / MM
        for laid in lay_out_plan(plan)
        for layout in laid.layouts
    }
    for circle in dxf_of(plan).modelspace().query("CIRCLE"):
        assert 0 < 2 * circle.dxf.radius < spacing[circle.dxf.layer[0]]


@settings(max_examples=25)
@given(plans())
def test_the_table_gives_every_place_to_the_nanometre(plan: Plan) -> None:
    lines = places.drawn(plan).decode().split("\r\n")[1:-1]
    found = sorted((round(Decimal(x) * MM), round(Decimal(y) * MM)) for *_, x, y in (one.split(",") for one in lines))
    assert found == sorted(
        (x, y) for laid in lay_out_plan(plan) for layout in laid.layouts for x, y in positions(layout).tolist()
    )


@settings(max_examples=25)
@given(plans())
def test_beds_on_one_sheet_keep_clear_of_one_another(plan: Plan) -> None:
    found = placed(plan)
    assert [bed.figure.bed for bed in found] == [bed.id for bed in plan.beds]
    for above, below in pairwise(found):
        assert above.top + above.figure.width < below.top
    assert all(bed.top > 0 for bed in found)


@settings(max_examples=25)
@given(plans())
def test_all_that_is_in_the_beds_lies_on_the_sheet(plan: Plan) -> None:
    _left, _top, width, height = map(float, ET.fromstring(svg.drawn(plan)).attrib["viewBox"].split())
    for bed in placed(plan):
        assert bed.figure.length < width
        assert bed.top + bed.figure.width < height


def test_a_plan_without_beds_is_an_empty_sheet() -> None:
    assert groups(Plan()) == []
    assert len(dxf_of(Plan()).modelspace()) == 0
    assert places.drawn(Plan()) == b"bed,planting,row,plant,x_mm,y_mm\r\n"


def test_names_and_labels_are_written_as_they_are() -> None:
    plan = plan_from(
        {"name": "Field <1> & Küche"},
        beds=[{"id": "b1", "name": 'Θερμοκήπιο "2"', "length": "5 m", "width": "75 cm"}],
    )
    root = ET.fromstring(svg.drawn(plan))
    assert root.findtext(f"{SVG}title") == "Field <1> & Küche"
    (group,) = groups(plan)
    assert group.findtext(f"{SVG}title") == 'Θερμοκήπιο "2"'
    assert group.findtext(f"{SVG}text") == "5.00\u2009m left"
    texts = {text.dxf.text.replace("\u2009", " ") for text in dxf_of(plan).modelspace().query("TEXT")}
    assert texts == {'Θερμοκήπιο "2"', "5.00 m left"}


@pytest.mark.parametrize("name", ["\uffff", "\ufffe", "\x7f", "\x85", "\u2028", "\ufdd0", "\U0001f955"])
def test_letters_that_no_xml_may_hold_leave_the_svg_well_formed(name: str) -> None:
    plan = plan_from({"name": name}, beds=[{"id": "b1", "name": name, "length": "5 m", "width": "75 cm"}])
    assert len(groups(plan)) == 1


def test_the_same_plan_gives_the_same_svg_and_table() -> None:
    plan = metric_plan()
    assert svg.drawn(plan) == svg.drawn(plan)
    assert places.drawn(plan) == places.drawn(plan)


@pytest.mark.parametrize(("name", "module"), [("a.svg", svg), ("a.b.DXF", dxf), ("A.Csv", places)])
def test_the_ending_of_a_name_says_what_is_written(name: str, module: ModuleType) -> None:
    assert writer_for(Path(name)) is module.drawn


@pytest.mark.parametrize("name", ["a", "a.", ".svg", "a.svg.gz", "a.pdf", "svg"])
def test_an_unknown_ending_is_refused_by_name(name: str) -> None:
    with pytest.raises(FileError) as caught:
        writer_for(Path(name))
    assert str(caught.value).startswith(f"{Path(name)}: ")
