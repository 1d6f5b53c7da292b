"""Jobs with odd numbers, worked by hand from the rules alone before the program was asked.

A bed that holds what is ordered to the centimetre, losses of nothing and of half, seed sown in its bed that came up
thinly. Places, crops and days are invented; each number stands with its sum, exact until "up".
"""

from tests.scenarios.planned_again import Again, again, kinds, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, cm
from tests.scenarios.test_four_more_jobs import Fields, Told, printed, told

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
