"""Jobs with odd numbers, worked by hand from the rules alone before the program was asked.

A bed that holds what is ordered to the centimetre, losses of nothing and of half, seed sown in its bed that came up
thinly. Places, crops and days are invented; each number stands with its sum, exact until "up".
"""

from tests.scenarios.planned_again import Again, again, kinds, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, cm
from tests.scenarios.test_four_more_jobs import Fields, Printed, Told, printed, told

__all__ = ["again", "printed", "told"]


# Beets that came up thinly, recorded as sown and no more


BEETS: Fields = {
    "gardenplot": 1,
    "place": {"name": "Tarn Side", "units": "metric"},
    "beds": [{"id": "b", "name": "Low", "length": "12 m", "width": "100 cm", "head_margin": "20 cm",
              "foot_margin": "20 cm"}],
    "crops": [{"id": "c", "name": "Beet", "in_row": "8 cm", "row_spacing": "25 cm", "edge": "12 cm",
               "establish": "direct", "field_loss": "15 %", "germination": "80 %", "seeds_per_row": "30 / m",
               "seeder_slack": "5 %", "seeds_per_gram": 60, "field_days": 60}],
    "orders": [{"id": "o", "crop": "c", "units": 30, "plants_per_unit": 5, "on": "2027-07-03"}],
    "plantings": [{"id": "p", "bed": "b", "crop": "c", "order": "o",
                   "actual": {"sown": "2027-05-03", "emerged": "2027-05-14", "stand": 20, "stand_row": "2 m"}}],
}  # fmt: skip


def test_seed_that_was_sown_in_its_bed_is_in_the_ground_and_planned_again(again: Again, told: Told) -> None:
    """150 / 0.85 = 176.5, 177 in 45 ranks of 4, 180; 20 in 2 m are 144 in 14.40 m, 36 lack: 9 ranks, 72 cm more.

    144 x 0.85 / 5 = 24.5: 6 short. 2.88 m of row x 30 x 1.05 = 90.7. From 20 May 60 days are 19 July, for 24 July.
    """
    assert_holds(told("count", BEETS)["plantings"][0], plants=180, to_mm=cm(380))
    found = the_setback(again(BEETS, "2027-05-20"), "lost in the bed")
    assert_holds(found, planned=180, standing=144, short=36)
    assert kinds(found) == ["sow again", "harvest less", "second block"]
    assert_holds(the_answer(found, "harvest less"), units=24, units_short=6)
    sown = the_answer(found, "second block")
    assert_holds(sown, ready="2027-07-19", market="2027-07-24", costs_markets=3)
    assert_holds(sown["sow"], seeds=91, row_mm=cm(288))
    assert [one["new_mm"] for one in sown["stakes"]] == [cm(380), cm(452)]


# A bed in metres and feet that holds what is ordered to the millimetre, and one that is a millimetre too short


def salad(units: int, length: str = "8.7 m", width: str = "76.2 cm") -> Fields:
    """Salad for an order in a bed whose margins are typed in feet and in centimetres."""
    return {
        "place": {"units": "feet and inches"},
        "beds": [{"id": "b", "name": "Low", "length": length, "width": width, "head_margin": "1 ft",
                  "foot_margin": "19.52 cm"}],
        "crops": [{"id": "c", "name": "Salad", "in_row": "20 cm", "row_spacing": "10 in", "edge": "5 in",
                   "field_loss": "5 %"}],
        "orders": [{"id": "o", "crop": "c", "units": units, "on": "2027-06-12"}],
        "plantings": [{"id": "p", "bed": "b", "crop": "c", "order": "o"}],
    }  # fmt: skip


def test_a_bed_that_is_exactly_full_takes_no_plant_more(told: Told, printed: Printed) -> None:
    """8.70 m less 1 ft and 19.52 cm are 8.20 m, 41 ranks of 20 cm; (30 - 10) / 10 = 2, 3 rows. 116 / 0.95 = 122.1,
    123 = 3 x 41; 117 / 0.95 = 123.2, 124 in 42 ranks, 20 cm past the margin: 7.87 in.
    """
    full = told("count", salad(116))
    assert_holds(full["plantings"][0], rows=3, plants=123, to_mm=cm(850.48))
    assert_holds(full["beds"][0], leftover_mm=0, leftover_pieces=0)
    assert "runs" not in printed("check", salad(116))
    said = printed("check", salad(117))
    assert "runs 7⅞″ past the foot margin" in said
    assert "117 Salad for Sat 12 Jun 2027: 1 plant short of 124" in said
    assert "Salad: 0 of 1 plant has ground" in printed("fill", salad(117), "--seconds", "0")


def test_a_bed_a_millimetre_too_short_and_too_narrow_loses_a_rank_and_a_row(told: Told, printed: Printed) -> None:
    """819.9 / 20 = 40.995, 40 ranks; (76.1 - 25.4) / 25.4 = 1.996, 2 rows, 80 plants. Three rows stand 12.65 cm from
    the edge, 4.98 in, where 5 are the least: 83 in 28 ranks of 3.
    """
    plan = salad(78, "8.699 m", "76.1 cm")
    assert_holds(told("count", plan)["plantings"][0], rows=2, plants=80, wanted=84)
    said = printed("fill", plan, "--seconds", "0")
    assert "closer, 3 × 28 = 84: 78 of 78 Salad; outer row 4 63/64″ from the edge, 5″ is the least" in said
