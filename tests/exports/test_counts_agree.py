"""One plan, one count: what is counted, listed, drawn and staked out is the same number of plants everywhere."""

import csv
import io
from collections import Counter
from xml.etree import ElementTree as ET

from ezdxf.filemanagement import read
from hypothesis import given, settings

from gardenplot.commands.count import counts
from gardenplot.drawing.letters import looks
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.turns import turns
from gardenplot.exports import dxf, places, svg
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Pattern, Plan
from tests.plans import plans

SVG = "{http://www.w3.org/2000/svg}"
MANY = 20_000


def counted(plan: Plan) -> Counter[str]:
    """Plants by bed as `count` has them, without those of sown bands, which have no places."""
    found: Counter[str] = Counter({bed.id: 0 for bed in plan.beds})
    for one in counts(plan)["plantings"]:
        assert one["plants"] == sum(one["plants_per_row"]) or one["pattern"] == Pattern.BROADCAST
        found[one["bed"]] += 0 if one["pattern"] == Pattern.BROADCAST else one["plants"]
    return found


@settings(max_examples=max(60, settings().max_examples // 4))
@given(plans())
def test_all_beds_are_counted_alike(plan: Plan) -> None:
    told = counts(plan)
    assert told["plants"] == sum(one["plants"] for one in told["plantings"])
    assert told["plants"] == sum(bed["plants"] for bed in told["beds"])
    assert [bed["id"] for bed in told["beds"]] == [bed.id for bed in plan.beds]


@settings(max_examples=max(60, settings().max_examples // 4))
@given(plans())
def test_the_table_and_the_drawing_have_a_place_for_each_plant_that_is_counted(plan: Plan) -> None:
    expected = counted(plan)
    rows = list(csv.DictReader(io.StringIO(places.drawn(plan).decode(), newline="")))
    listed = Counter(row["planting"] for row in rows)
    drawn = [
        sum(path.attrib["d"].count("M") for path in group.findall(f"{SVG}path"))
        for group in ET.fromstring(svg.drawn(plan)).findall(f"{SVG}g")
    ]
    assert drawn == [expected[bed.id] for bed in plan.beds]
    each = [one["plants"] for one in counts(plan)["plantings"] if one["pattern"] != Pattern.BROADCAST]
    assert sorted(listed.values()) == sorted(plants for plants in each if plants)


@settings(max_examples=max(8, settings().max_examples // 40))
@given(plans().filter(lambda plan: len(plan.plantings) < 3 and counts(plan)["plants"] < MANY))
def test_the_dxf_has_a_circle_for_each_plant_that_is_counted(plan: Plan) -> None:
    document = read(io.StringIO(dxf.drawn(plan).decode()))
    assert len(document.modelspace().query("CIRCLE")) == sum(counted(plan).values())


@settings(max_examples=max(60, settings().max_examples // 4))
@given(plans())
def test_the_stakes_of_each_turn_say_how_many_plants_are_counted_in_it(plan: Plan) -> None:
    # what still stands while its neighbour is replanted belongs to both turns and is said in each
    look, told = looks(plan), {one["id"]: one["plants"] for one in counts(plan)["plantings"]}
    for laid in lay_out_plan(plan):
        for turn in turns(laid):
            said = [stake.plants or 0 for stake in stakes(plan, laid, turn, look)]
            assert sum(said) == sum(told[layout.planting] for layout in turn)
