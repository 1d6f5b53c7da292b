"""Stakes in walking order, as worked out by hand and as laws of any bed."""

import pytest
from hypothesis import given, settings

from gardenplot.drawing.letters import looks
from gardenplot.drawing.stakes import Stake, stakes
from gardenplot.drawing.turns import turns
from gardenplot.layout import lay_out_plan
from gardenplot.layout.row_ends import row_ends
from gardenplot.layout.staked import staked
from gardenplot.plan import Plan
from tests.drawing.hand_worked import hand_worked, only_bed, plan_from
from tests.layout.ground import Fields, nm
from tests.plans import plans


def all_stakes(plan: Plan) -> list[tuple[Stake, ...]]:
    """The stakes of each turn of each bed."""
    look = looks(plan)
    return [stakes(plan, laid, turn, look) for laid in lay_out_plan(plan) for turn in turns(laid)]


def worded(stake: Stake) -> list[str]:
    return [words.replace("\u2009", " ") for words in stake.here]


def assert_stakes(plan: Plan, expected: list[tuple[str, list[str], str, int | None]]) -> None:
    """Fail unless the one turn has those stakes: reading, words, rows and plants."""
    (found,) = all_stakes(plan)
    assert [stake.number for stake in found] == list(range(len(expected)))
    assert [(stake.at, worded(stake), stake.rows.replace("\u2009", " "), stake.plants) for stake in found] == [
        (nm(reading), words, rows, plants) for reading, words, rows, plants in expected
    ]


def test_the_stakes_of_s1_are_those_worked_out_by_hand() -> None:
    assert_stakes(
        hand_worked("s1"),
        [
            ("0 m", ["head stake"], "", None),
            ("0.30 m", ["A Pak choi begins · first plant 0.40"], "4 × 34", 136),
            ("7.10 m", ["A ends · last plant 7.00"], "", None),
            ("7.30 m", ["B Kohlrabi begins · first plant 7.43"], "3 × 15", 45),
            ("11.05 m", ["B ends · last plant 10.93"], "", None),
            ("11.70 m", ["foot margin · 65 cm left before it"], "", None),
            ("12.00 m", ["foot stake: if it reads otherwise, stop and measure again"], "", None),
        ],
    )


def test_the_stakes_of_s2_are_those_worked_out_by_hand() -> None:
    assert_stakes(
        hand_worked("s2"),
        [
            ("0'", ["head stake"], "", None),
            ("2'", ["A Broccoli begins · first plant 2′ 9″"], "2 × 50", 100),
            ("77'", ["A ends · last plant 76′ 3″"], "", None),
            ("78'", ["B Beets begins · first plant 78′ 1½″"], "4 × 63", 252),
            ("93' 9\"", ["B ends · last plant 93′ 7½″"], "", None),
            ("98'", ["foot margin · 4′ 3″ left before it"], "", None),
            ("100'", ["foot stake: if it reads otherwise, stop and measure again"], "", None),
        ],
    )


def test_the_lettuce_and_then_the_tomatoes_of_s3_have_stakes_of_their_own() -> None:
    lettuce, tomatoes = all_stakes(hand_worked("s3"))
    assert [stake.plants for stake in lettuce] == [None, 207, None, None]
    assert worded(lettuce[1]) == ["A Cos lettuce, small begins · first plant 1′ 4″"]
    assert worded(tomatoes[1]) == ["B Tomato begins · first plant 2′ 0″"]
    assert worded(tomatoes[2]) == ["B ends · last plant 46′ 0″"]


@pytest.mark.parametrize(
    ("scenario", "readings"),
    [
        ("s4", [["0 m", "0.5 m", "18.9 m", "19.5 m", "20 m"], ["0 m", "0.5 m", "12.35 m", "19.5 m", "20 m"]]),
        # The end of the coriander would lie at 55′: what is beyond the margin is not staked.
        ("s5", [["0'", "1'", "37' 3\"", "38' 3\"", "39'", "40'"]]),
        ("s6", [["0 m", "0.15 m", "14.15 m", "15.09 m", "15.24 m"]]),
    ],
)
def test_the_readings_of_other_beds_are_those_worked_out_by_hand(scenario: str, readings: list[list[str]]) -> None:
    found = [[stake.at for stake in turn] for turn in all_stakes(hand_worked(scenario))]
    assert found == [[nm(reading) for reading in turn] for turn in readings]


BED: Fields = {"id": "b1", "name": "Bed", "length": "10 m", "width": "75 cm"}
LEEK: Fields = {"id": "leek", "name": "Leek", "in_row": "20 cm", "row_spacing": "25 cm"}


def leeks(*plantings: Fields, **bed: str) -> Plan:
    """A bed of 10 m with blocks of leeks."""
    parts = [{"id": f"p{number}", "bed": "b1", "crop": "leek"} | one for number, one in enumerate(plantings, 1)]
    return plan_from(beds=[BED | bed], crops=[LEEK], plantings=parts)


def test_an_empty_bed_has_a_stake_at_each_end() -> None:
    (found,) = all_stakes(leeks())
    assert [(stake.number, stake.at) for stake in found] == [(0, 0), (1, nm("10 m"))]


def test_an_empty_bed_with_margins_has_a_stake_at_each_of_them() -> None:
    (found,) = all_stakes(leeks(head_margin="50 cm", foot_margin="1 m"))
    assert [stake.at for stake in found] == [0, nm("50 cm"), nm("9 m"), nm("10 m")]
    assert worded(found[1]) == ["head margin"]
    assert worded(found[2]) == ["foot margin · 8.50 m left before it"]


def test_where_one_block_ends_and_the_next_begins_there_is_one_stake_and_the_end_is_said_first() -> None:
    (found,) = all_stakes(leeks({"from": "1 m", "length": "2 m"}, {"from": "3 m", "length": "1 m"}))
    assert [stake.at for stake in found] == [0, nm("1 m"), nm("3 m"), nm("4 m"), nm("10 m")]
    assert worded(found[2]) == ["A ends · last plant 2.90", "B Leek begins · first plant 3.10"]
    assert found[2].plants == 15


def test_a_block_up_to_the_foot_margin_needs_no_stake_more() -> None:
    (found,) = all_stakes(leeks({"from": "1 m", "length": "8 m"}, foot_margin="1 m"))
    assert [stake.at for stake in found] == [0, nm("1 m"), nm("9 m"), nm("10 m")]
    assert worded(found[2]) == ["A ends · last plant 8.90"]


def test_a_block_of_the_whole_bed_shares_the_head_and_the_foot_stake() -> None:
    (found,) = all_stakes(leeks({"from": "0 m", "length": "10 m"}))
    assert [stake.at for stake in found] == [0, nm("10 m")]
    assert worded(found[0]) == ["head stake", "A Leek begins · first plant 0.10"]


def test_a_block_that_does_not_fit_ends_at_the_margins_and_says_what_lacks() -> None:
    (found,) = all_stakes(
        leeks(
            {"from": "0 m", "length": "2 m"}, {"from": "8 m", "length": "3 m"}, head_margin="40 cm", foot_margin="1 m"
        )
    )
    assert [stake.at for stake in found] == [0, nm("40 cm"), nm("2 m"), nm("8 m"), nm("9 m"), nm("10 m")]
    assert worded(found[1]) == ["A Leek begins, 40 cm do not fit · first plant 0.50"]
    assert worded(found[4]) == ["B stops, 2.00 m do not fit · last plant 8.90"]


def test_a_sown_band_has_no_first_and_last_plant() -> None:
    (found,) = all_stakes(leeks({"from": "1 m", "length": "2 m", "pattern": "broadcast"}))
    assert [worded(stake) for stake in found[1:3]] == [["A Leek begins"], ["A ends", "7.00 m left after it"]]
    assert found[1].rows == "band"


@settings(max_examples=25)
@given(plans())
def test_every_turn_has_a_stake_at_both_ends_of_the_bed_and_of_each_block(plan: Plan) -> None:
    look = looks(plan)
    for laid in lay_out_plan(plan):
        for turn in turns(laid):
            found = stakes(plan, laid, turn, look)
            readings = [stake.at for stake in found]
            assert readings == sorted(set(readings))
            ends = {end for layout in turn for end in staked(laid.bed, layout)}
            assert all(laid.bed.zone[0] <= end <= laid.bed.zone[1] for end in ends)
            assert {0, laid.bed.length.nm, *ends} <= set(readings)
            changes = {end.at for layout in turn for end in row_ends(laid.bed, layout)}
            assert set(readings) <= {0, laid.bed.length.nm, *ends, *laid.bed.zone, *changes}
            assert sum(stake.plants or 0 for stake in found) == sum(layout.plants for layout in turn)


def test_stakes_are_those_of_one_bed_alone() -> None:
    plan = hand_worked("s1")
    laid = only_bed(plan)
    first, _second = laid.layouts
    assert [stake.plants for stake in stakes(plan, laid, (first,), looks(plan)) if stake.plants] == [136]
