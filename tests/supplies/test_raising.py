"""Plants to raise, cells, seeds and trays, and what one tray less would give."""

from fractions import Fraction
from math import ceil

import mpmath
import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import lay_out_plan
from gardenplot.plan import Crop, Establish
from gardenplot.supplies import Raising, Spill, raised_for, raising
from gardenplot.supplies.raising import is_row_thinned, usable_share
from gardenplot.units import Share
from tests.layout.ground import Fields, nm, plan_with
from tests.plans import crops, shares


def crop(**fields: str | float) -> Crop:
    """A crop with those fields, as in a plan file."""
    spaced: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}
    return plan_with({"length": "10 m", "width": "75 cm"}, spaced | fields).crops[0]


def raised(planted: int, **fields: str | float) -> Raising:
    return raising(crop(**fields), planted, nm("20 cm"))


@pytest.mark.parametrize(
    ("planted", "spare", "germination", "tray", "plants", "cells", "trays"),
    [
        (136, "15 %", "90 %", 84, 157, 175, 3),
        (45, "15 %", "90 %", 84, 52, 58, 1),
        (100, "20 %", "92 %", 128, 120, 131, 2),
        (100, "20 %", "92 %", 72, 120, 131, 2),
        (184, "15 %", "95 %", 128, 212, 224, 2),
        (184, "15 %", "95 %", 200, 212, 224, 2),
        (137, "10 %", "88 %", 60, 151, 172, 3),
        (316, "10 %", "80 %", 240, 348, 435, 2),
        (168, "20 %", "85 %", 128, 202, 238, 2),
    ],
)
def test_plants_cells_and_trays_are_rounded_up_in_this_order(
    planted: int, spare: str, germination: str, tray: int, plants: int, cells: int, trays: int
) -> None:
    found = raised(planted, spare=spare, germination=germination, tray_cells=tray)
    assert (found.plants, found.cells, found.seeds, found.trays) == (plants, cells, cells, trays)


def test_floating_point_would_sow_a_cell_too_many() -> None:
    assert ceil(21 / 0.7) == 31
    assert raised(21, germination="70 %").cells == 30


def test_two_seeds_in_a_cell_need_fewer_cells_and_more_seeds() -> None:
    single, double = (raised(17, germination="62.9 %", seeds_per_cell=seeds) for seeds in (1, 2))
    assert (single.cells, single.seeds) == (28, 28)
    assert (double.cells, double.seeds) == (20, 40)


def test_one_tray_less_is_offered_while_it_gives_a_plant_for_every_place() -> None:
    pak_choi = raised(136, spare="15 %", germination="90 %", tray_cells=84)
    assert pak_choi.spill == Spill(2, 151, Fraction(15, 136))
    broccoli = raised(100, spare="20 %", germination="92 %", tray_cells=128)
    assert broccoli.spill == Spill(1, 117, Fraction(17, 100))


def test_one_tray_less_is_not_offered_where_it_would_leave_places_empty() -> None:
    assert raised(117, spare="20 %", germination="92 %", tray_cells=128).spill == Spill(1, 117, Fraction(0))
    assert raised(118, spare="20 %", germination="92 %", tray_cells=128).spill is None


def test_a_single_tray_is_never_left_out() -> None:
    assert raised(45, spare="15 %", germination="90 %", tray_cells=84).spill is None


def test_without_a_germination_only_the_plants_are_known() -> None:
    found = raised(40, spare="10 %", tray_cells=84)
    assert (found.plants, found.cells, found.seeds, found.trays, found.spill) == (44, None, None, None, None)
    assert found.to_sow is not None
    assert [*found.to_sow.lacks()] == ["germination"]


def test_without_a_tray_the_cells_are_known_but_no_trays() -> None:
    found = raised(40, germination="80 %")
    assert (found.plants, found.cells, found.seeds, found.trays) == (40, 50, 50, None)


def test_beets_are_sown_by_the_row_with_slack() -> None:
    beets = crop(establish="direct", seeds_per_row="12 / ft", seeder_slack="10 %", seeds_per_gram=60)
    found = raising(beets, 252, nm("3 in"))
    assert (found.seeds, found.grams, found.raised) == (832, Fraction(832, 60), None)


def test_a_crop_sown_direct_is_never_raised() -> None:
    found = raised(252, establish="direct", spare="20 %", germination="90 %", tray_cells=84)
    assert (found.raised, found.to_sow, found.filled, found.spill) == (None, None, None, None)


def test_seed_sown_one_by_one_or_over_a_band_follows_from_its_germination() -> None:
    """Three plants at 75 % need four seeds: Cornell Cooperative Extension's example, as all of its kind."""
    assert raised(3, establish="direct", germination="75 %").seeds == 4
    beans = crop(establish="direct", germination="80 %", seeder_slack="10 %", seeds_per_row="9 / m")
    assert raising(beans, 400, nm("20 cm"), is_band=True).seeds == 550


def test_seed_is_weighed_for_plugs_too() -> None:
    lettuce = raised(49, germination="50 %", seeds_per_cell=2, seeds_per_gram=800)
    assert (lettuce.seeds, lettuce.grams) == (132, Fraction(132, 800))


def test_clumps_are_sown_as_they_stand_and_nothing_is_thinned() -> None:
    """By hand: 50 places, 10 % spare: 55 clumps; a cell of 4 at 80 % lacks any plant once in 625: 55.09, up 56."""
    onion = raised(50, spare="10 %", germination="80 %", seeds_per_cell=4, clump=4, tray_cells=60)
    assert (onion.plants, onion.cells, onion.seeds, onion.trays) == (55, 56, 224, 1)
    assert onion.thinned is None
    assert onion.stand is not None
    assert onion.stand.value == 200


def test_clusters_are_thinned_to_the_clump_that_is_left() -> None:
    """By hand: 40 places, 44 with spare; 3 clusters of 2 at 70 % for 4 plants: two must come up, 78.4 %; 57 cells.

    171 clusters give 239.4 seedlings; 44 x 4 are left; 63.4 are thinned out.
    """
    beet = raised(40, spare="10 %", germination="70 %", seeds_per_cell=3, seedlings_per_seed=2, clump=4)
    assert (beet.plants, beet.cells, beet.seeds) == (44, 57, 171)
    assert beet.stand is not None
    assert beet.thinned is not None
    assert (beet.stand.whole, beet.thinned.whole) == (160, 63)


@pytest.mark.parametrize(("left", "sown", "germination"), [(2, 3, 70), (3, 5, 92), (4, 9, 55), (2, 12, 8)])
def test_the_share_of_usable_cells_is_the_binomial_tail_of_mpmath(left: int, sown: int, germination: int) -> None:
    """P(X >= n) = I_p(n, k - n + 1), the regularised incomplete beta function (Abramowitz and Stegun 26.5.24)."""
    found = usable_share(crop(germination=f"{germination} %", seeds_per_cell=sown, clump=left)).value
    share = mpmath.mpf(germination) / 100
    tail = mpmath.betainc(left, sown - left + 1, 0, share, regularized=True)
    assert found is not None
    assert float(found) == pytest.approx(float(tail), rel=1e-12)


def test_what_is_sown_by_the_row_is_thinned_to_its_final_stand() -> None:
    """By hand: 252 places of 7.5 cm are 18.9 m of row; 40 / m and 10 % slack: 831.6; at 75 % 624 come up."""
    found = raising(
        crop(establish="direct", seeds_per_row="40 / m", seeder_slack="10 %", germination="75 %"), 252, nm("7.5 cm")
    )
    assert found.seeds == 832
    assert found.thinned is not None
    assert found.thinned.value == 832 * 0.75 - 252


@pytest.mark.parametrize(
    ("rate", "seed", "thinned"),
    [
        # 5 are to stand on a metre: up to 6 2/3 seedlings are left, all seeds counted where germination is not known.
        ("6 / m", {}, False),
        ("6.6 / m", {}, False),
        ("6.7 / m", {}, True),
        ("8.3 / m", {"germination": "80 %"}, False),
        ("8.4 / m", {"germination": "80 %"}, True),
        # Of clusters of 2.5 seedlings 4 give 10; two to a place are 10 on a metre.
        ("4 / m", {"seedlings_per_seed": 2.5}, True),
        ("4 / m", {"seedlings_per_seed": 2.5, "clump": 2}, False),
        ("12 / m", {"clump": 2}, False),
    ],
)
def test_a_row_sown_a_little_thicker_than_it_stands_is_not_thinned(
    rate: str, seed: dict[str, str | float], thinned: bool
) -> None:
    """A rule of thumb; that a third more than is to stand is left is our limit."""
    sown = crop(establish="direct", seeds_per_row=rate, **seed)
    assert is_row_thinned(sown, nm("20 cm")) is thinned
    assert (raising(sown, 90, nm("20 cm")).thinned is not None) is thinned


def test_seed_is_dropped_in_places_so_many_to_each() -> None:
    """By hand: 60 places of 3 clusters are 180; at 80 % and 2.5 seedlings 360 come up, of which 60 are left."""
    found = raised(60, establish="direct", seeds_per_cell=3, seedlings_per_seed=2.5, germination="80 %")
    assert found.seeds == 180
    assert found.thinned is not None
    assert found.thinned.value == 300


def test_what_is_thinned_out_is_not_known_without_a_germination() -> None:
    found = raised(60, establish="direct", seeds_per_row="40 / m").thinned
    assert found is not None
    assert [*found.lacks()] == ["germination"]


@given(crops(), st.integers(1, 5000), shares(least=1))
def test_cells_and_trays_are_the_fewest_that_give_enough_plants(
    any_crop: Crop, planted: int, germination: Share
) -> None:
    plugs = evolve(any_crop, establish=Establish.TRANSPLANT, germination=germination, clump=None)
    plugs = evolve(plugs, seedlings_per_seed=None)
    found, k = raising(plugs, planted, nm("20 cm")), plugs.seeds_per_cell or 1
    assert found.plants is not None
    assert found.cells is not None
    assert plugs.germination is not None
    fails = (1 - plugs.germination.part) ** k
    spare = plugs.spare.part if plugs.spare else 0
    assert found.plants - 1 < planted * (1 + spare) <= found.plants
    assert (found.cells - 1) * (1 - fails) < found.plants <= found.cells * (1 - fails)
    assert found.seeds == found.cells * k
    assert found.trays == (ceil(Fraction(found.cells, plugs.tray_cells)) if plugs.tray_cells else None)


@given(crops(), st.integers(1, 5000), shares(least=1))
def test_one_tray_less_is_one_less_and_still_enough(any_crop: Crop, planted: int, germination: Share) -> None:
    plugs = evolve(any_crop, establish=Establish.TRANSPLANT, germination=germination)
    found = raising(plugs, planted, nm("20 cm"))
    if found.spill is not None:
        assert found.trays == found.spill.trays + 1
        assert found.plants is not None
        assert planted <= found.spill.plants < found.plants
        assert found.spill.spare * planted == found.spill.plants - planted


@given(st.integers(1, 5000), st.integers(1, 90), shares())
def test_seed_sown_direct_is_row_length_times_rate_and_slack(planted: int, rate: int, slack: Share) -> None:
    sown = evolve(crop(establish="direct", seeds_per_row=f"{rate} / m"), seeder_slack=slack)
    assert sown.seeder_slack is not None
    exact = Fraction(planted, 5) * rate * (1 + sown.seeder_slack.part)
    assert raising(sown, planted, nm("20 cm")).seeds == ceil(exact)


def test_cells_that_were_sown_or_typed_are_not_reckoned_from_the_plants() -> None:
    """256 cells are two full trays of 128, whether 168 or 152 plants come of them."""
    made = raised_with(sow_cells=256)
    assert (made.cells, made.seeds, made.trays, made.plants, made.spill) == (256, 256, 2, None, None)
    assert made.last_tray is not None
    assert made.last_tray.whole == 128
    assert raised_with(sow_cells=256, actual={"cells": 130}).cells == 130
    assert raised_with().cells == 216


def raised_with(**fields: object) -> Raising:
    """What S6 has to raise for 152 plants, with further fields of its planting."""
    packet: Fields = {
        "in_row": "25 cm", "row_spacing": "30 cm", "edge": "7.5 cm", "spare": "20 %",
        "germination": "85 %", "tray_cells": 128,
    }  # fmt: skip
    plan = plan_with({"length": "50 ft", "width": "30 in"}, packet, {"plants": 152} | fields)
    (laid,) = lay_out_plan(plan)
    return raised_for(laid.grown[0], laid.layouts[0])
