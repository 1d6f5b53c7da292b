"""The list of what to buy: added up over the plan, less what is in store, in packs and with what they cost."""

from datetime import date
from fractions import Fraction
from math import ceil
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.carried import block_words
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.gestures.split import try_split
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Actual, Good, GoodKind, Plan, Sheeting
from gardenplot.plan.file import plan_of_text
from gardenplot.supplies import raised_for
from gardenplot.supplies.raising import was_sown
from gardenplot.supplies.shopping import EVERYTHING, Asked, Item, shopping, total_cost
from gardenplot.units import (
    CM,
    LITRE,
    Amount,
    M,
    Units,
    parse_amount,
    parse_length,
    parse_price,
    parse_share,
    parse_volume,
)
from gardenplot.working import numbers_in
from tests.plans import plans

TWO_BEDS = """{
  "gardenplot": 1, "place": {"name": "Hollow Rigg", "money": "€"},
  "beds": [{"id": "b1", "name": "Tunnel", "length": "12 m", "width": "75 cm", "head_margin": "30 cm",
            "foot_margin": "30 cm", "edge": "7.5 cm", "drip_lines": ["20 cm", "55 cm"]},
           {"id": "b2", "name": "Field", "length": "10 m", "width": "1.2 m", "edge": "10 cm"}],
  "crops": [{"id": "pak", "name": "Pak choi", "in_row": "20 cm", "row_spacing": "20 cm", "spare": "15 %",
             "germination": "90 %", "tray_cells": 84, "raising_days": 24, "field_days": 35},
            {"id": "beet", "name": "Beet", "in_row": "10 cm", "row_spacing": "30 cm", "establish": "direct",
             "seeds_per_row": "40 / m", "seeder_slack": "10 %", "seeds_per_gram": 60, "field_days": 60}],
  "plantings": [{"id": "p1", "bed": "b1", "crop": "pak", "from": "0.3 m", "plants": 136, "in_ground": "2027-04-11"},
                {"id": "p2", "bed": "b2", "crop": "pak", "from": "0 m", "plants": 44, "in_ground": "2027-05-11"},
                {"id": "p3", "bed": "b2", "crop": "beet", "from": "3 m", "length": "5 m",
                 "in_ground": "2027-04-20"}],
  "covers": [{"id": "c1", "bed": "b1", "from": "0 m", "to": "12 m", "on": "2027-04-11", "hoop_spacing": "1.2 m",
              "leg": "20 cm", "apron": "25 cm", "end": "1 m", "layers": 2}],
  "feeds": [{"id": "f1", "depth": "2 cm"}, {"id": "f2", "name": "Feather meal", "rate": "50 g / m2", "beds": ["b2"]}],
  "jugs": [{"id": "j1", "bed": "b1", "from": "0 m", "to": "3 m", "volume": "5 l", "diameter": "16 cm"}]
}"""


def plan_with_goods(*goods: Good) -> Plan:
    return evolve(plan_of_text(TWO_BEDS).plan, goods=goods)


def good(kind: GoodKind, pack: str = "", store: str = "", price: str = "", **fields: Any) -> Good:
    """A good, its pack and store as they are typed."""
    amount: dict[str, Any] = {
        name: parse_amount(text) for name, text in (("pack", pack), ("in_store", store)) if text
    }
    money = parse_price(price) if price else None
    return evolve(Good(f"{kind}", kind, price=money), **amount, **fields)


def item(plan: Plan, kind: GoodKind, name: str = "", asked: Asked = EVERYTHING) -> Item:
    (found,) = [
        one
        for one in shopping(plan, asked)
        if one.kind is kind and name in (one.name, str(one.size), one.crop or "", "")
    ]
    return found


def values(found: Item) -> list[Fraction | int | None]:
    """To buy, in packs, and their cost."""
    return [found.lacking.value, found.packs.value, found.cost.value]


def test_what_two_beds_need_is_added_up() -> None:
    """S1's pak choi, 175 cells, and another 44: 50.6 up to 51 to raise, 56.7 up to 57 cells; worked by hand."""
    plan = plan_with_goods()
    assert item(plan, GoodKind.SEED, "pak").needed.value == 175 + 57
    trays = item(plan, GoodKind.TRAY, "84")
    assert trays.in_all is not None
    assert [trays.in_all.value, trays.needed.value] == [3 + 1, 3]
    assert item(plan, GoodKind.SEED, "beet").needed.value == ceil(5 * 4 * 40 * Fraction(11, 10))
    assert item(plan, GoodKind.HOOP).needed.value == 11
    assert item(plan, GoodKind.CLOTH).needed.whole == 2 * 14 * 10**9
    assert item(plan, GoodKind.DRIP_LINE).needed.whole == 24 * 10**9
    assert item(plan, GoodKind.COMPOST).needed.value == Fraction(9 + 12) * LITRE * 20
    assert item(plan, GoodKind.AMENDMENT).needed.value == 600
    assert item(plan, GoodKind.JUG).needed.value == 2 * 20 + 2 * 4


def test_film_is_listed_by_its_own_width_beside_the_cloth() -> None:
    """By hand: half-round over 75 cm is 117.81 cm, 15 cm buried at both sides; 12 + 2 x (1 + 0.15) m of it."""
    plan = plan_with_goods()
    (cover,) = plan.covers
    film = evolve(cover, sheeting=Sheeting.FILM_OVER_CLOTH, buried=parse_length("15 cm"))
    found = item(evolve(plan, covers=(film,)), GoodKind.FILM)
    assert found.needed.value == Fraction("14.3") * M
    assert found.size == pytest.approx(147.810 * CM, abs=0.001 * CM)
    assert item(evolve(plan, covers=(film,)), GoodKind.CLOTH) == item(plan, GoodKind.CLOTH)


@pytest.mark.parametrize(
    ("typed", "told"),
    [("1 m", ("28 m", "28 m")), ("1.1 m", ("28.40 m", "29 m"))],  # 12 m and both ends, in two layers
)
def test_what_is_sold_by_its_length_is_bought_in_whole_metres(typed: str, told: tuple[str, str]) -> None:
    plan = plan_with_goods()
    (cover,) = plan.covers
    longer = evolve(plan, covers=(evolve(cover, cloth_end=parse_length(typed)),))
    (cells,) = [row.cells for group in shop_groups(longer) for row in group.rows if row.item.kind is GoodKind.CLOTH]
    assert tuple(cell.replace("\u2009", " ") for cell in (cells[1], cells[3])) == told


def test_what_is_in_store_is_taken_off_and_packs_are_whole() -> None:
    seed = good(GoodKind.SEED, "250 seeds", "30", "4.20", crop="pak")
    found = item(plan_with_goods(seed), GoodKind.SEED, "pak")
    assert values(found) == [202, 1, Fraction("4.2")]
    more = item(plan_with_goods(evolve(seed, in_store=parse_amount("400"))), GoodKind.SEED, "pak")
    assert values(more) == [0, 0, 0]


def test_hoops_and_jugs_in_store_are_there_for_one_size_alone() -> None:
    """By hand: 12 m at most 1.5 apart take 9 short hoops, at most 1.2 apart 11 long ones; of 14 in store 5 are left
    for these. Of 50 jugs 48 of 5 l leave 2 for the 12 of 10 l.
    """
    store = (good(GoodKind.HOOP, store="14"), good(GoodKind.JUG, store="50"))
    plan = plan_with_goods(*store)
    (cover,), (jugs,) = plan.covers, plan.jugs
    lower = evolve(cover, id="c2", leg=parse_length("10 cm"), hoop_spacing=parse_length("1.5 m"))
    larger = evolve(jugs, id="j2", volume=parse_volume("10 l"), count=12)
    found = shopping(evolve(plan, covers=(cover, lower), jugs=(jugs, larger)))
    told: list[tuple[Any, ...]] = [
        (one.needed.value, one.in_store.value, one.lacking.value)
        for kind in (GoodKind.HOOP, GoodKind.JUG)
        for one in found
        if one.kind is kind
    ]
    assert told == [(9, 14, 0), (11, 5, 6), (48, 50, 0), (12, 2, 10)]


def test_old_seed_counts_for_as_much_as_would_give_the_same_plants() -> None:
    """100 seeds of 45 % are as good as 50 of the packet's 90 %."""
    old = good(GoodKind.SEED, "250", "100", crop="pak", germination=parse_share("45 %"), year=2023)
    assert item(plan_with_goods(old), GoodKind.SEED, "pak").in_store.value == 50


def test_seed_sold_by_weight_is_needed_by_weight() -> None:
    found = item(plan_with_goods(good(GoodKind.SEED, "10 g", "2 g", crop="beet")), GoodKind.SEED, "beet")
    assert found.needed.value == Fraction(880, 60)
    assert found.lacking.value == Fraction(880, 60) - 2
    assert found.packs.value == 2


def test_seed_in_store_is_counted_as_seed_is_bought() -> None:
    """By hand: 880 beets at 60 to the gram are 14.67 g. Of 120 seeds in store, 2 g, 12.67 lack: 2 packs of 10 g,
    though the store is told first. Of 6.5 g in store 390 seeds are there: 490 lack, 5 packs of 100.
    """
    counted, weighed = (good(GoodKind.SEED, store=text, crop="beet") for text in ("120 seeds", "6.5 g"))
    by_weight = good(GoodKind.SEED, "10 g", price="3", crop="beet")
    found = item(plan_with_goods(counted, by_weight), GoodKind.SEED, "beet")
    assert (found.in_store.value, *values(found)) == (2, Fraction(880, 60) - 2, 2, 6)
    by_number = good(GoodKind.SEED, "100 seeds", price="1.50", crop="beet")
    found = item(plan_with_goods(weighed, by_number), GoodKind.SEED, "beet")
    assert (found.in_store.value, *values(found)) == (390, 490, 5, Fraction("7.5"))


def test_old_seed_by_weight_keeps_its_parts_of_a_gram() -> None:
    """By hand: 0.9 g of which 60 in 100 come up are as good as 0.6 g of the packet's 90; 232 seeds are 0.58 g."""
    sold = good(GoodKind.SEED, "1 g", crop="pak")
    old = evolve(sold, pack=None, in_store=parse_amount("0.9 g"), germination=parse_share("60 %"))
    plan = plan_with_goods(sold, old)
    pak, beet = plan.crops
    found = item(evolve(plan, crops=(evolve(pak, seeds_per_gram=400), beet)), GoodKind.SEED, "pak")
    assert [found.in_store.value, *values(found)[:1]] == [Fraction(6, 10), 0]


def test_the_narrowest_cloth_that_is_wide_enough_is_bought() -> None:
    """Half of 0.75 m x pi, 1.178 m, and two aprons of 25 cm: 1.678 m."""
    wide = [
        Good(f"w{number}", GoodKind.CLOTH, width=parse_length(text))
        for number, text in enumerate(("1.6 m", "2.6 m", "2 m"))
    ]
    found = item(plan_with_goods(*wide), GoodKind.CLOTH)
    assert found.good is not None
    assert found.good.id == "w2"


@pytest.mark.parametrize(
    ("asked", "seeds"),
    [
        (Asked(frozenset({"b1"})), 175),
        (Asked(frozenset({"b2"})), 57),
    ],
)
def test_a_list_for_some_beds(asked: Asked, seeds: int) -> None:
    assert item(plan_with_goods(), GoodKind.SEED, "pak", asked).needed.value == seeds


def test_what_was_sown_already_is_not_bought_again() -> None:
    plan = plan_with_goods()
    sown = evolve(plan.plantings[0], actual=Actual(sown=date(2027, 3, 18)))
    there = evolve(plan, plantings=(sown, *plan.plantings[1:]))
    assert item(there, GoodKind.SEED, "pak").needed.value == 57
    assert item(there, GoodKind.TRAY, "84").needed.value == 1


def test_a_price_without_a_pack_costs_nothing_that_is_known() -> None:
    found = item(plan_with_goods(good(GoodKind.SEED, price="3", crop="pak")), GoodKind.SEED, "pak")
    assert found.cost.value is None
    assert [*found.cost.lacks()] == ["pack"]


@given(plans())
def test_of_any_plan_everything_is_needed_in_numbers_that_add_up(plan: Plan) -> None:
    items = shopping(plan)
    for one in items:
        for number in (one.needed, one.lacking, one.packs, one.cost):
            assert number.value is None or number.value >= 0
            assert (number.value is None) == bool([*number.lacks()])
        if one.lacking.value is not None and one.needed.value is not None and one.in_store.value is not None:
            assert one.lacking.value == max(one.needed.value - one.in_store.value, 0)
        if one.packs.value is not None and one.packs.value > 0:
            assert one.lacking.value is not None
            pack = next(part for part in numbers_in(one.packs) if part.name == "pack").value
            assert pack is not None
            assert (one.packs.value - 1) * pack < one.lacking.value <= one.packs.value * pack
    costs = [one.cost.value for one in items if one.cost.value is not None]
    assert total_cost(items).value == sum(costs)


def filled_already(plan: Plan, cells: int | None) -> int:
    """The trays of a size in which plants were sown already."""
    return sum(
        raised_for(one, layout).trays or 0
        for laid in lay_out_plan(plan)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if one.crop.tray_cells == cells and was_sown(one.planting)
    )


@given(plans(), st.sampled_from(("", "5", "3 g", "2 m", "4 l")))
def test_beds_listed_one_by_one_come_to_what_all_of_them_need(plan: Plan, store: str) -> None:
    amount: Amount | None = parse_amount(store) if store else None
    plan = evolve(plan, goods=tuple(evolve(one, in_store=amount) for one in plan.goods))
    whole = {(one.kind, one.crop, one.name, one.size): one.needed.value for one in shopping(plan)}
    parts: dict[tuple[GoodKind, str | None, str, int | None], list[Fraction | None]] = {}
    for bed in plan.beds:
        for one in shopping(plan, Asked(frozenset({bed.id}))):
            parts.setdefault((one.kind, one.crop, one.name, one.size), []).append(one.needed.value)
    for key, value in whole.items():
        known = [part for part in parts[key] if part is not None]
        total = sum(known) if len(known) == len(parts[key]) else None
        if key[0] is GoodKind.TRAY and total is not None and value is not None:
            # Beds may fill their trays one after another, and beside those that another bed's plants were sown in.
            assert max(known) <= value <= total + filled_already(plan, key[3])
        else:
            assert total == value


def with_bought(plants: int, **came: Any) -> Plan:
    """The first planting with plants bought in."""
    plan = plan_with_goods()
    first = evolve(plan.plantings[0], actual=Actual(bought=plants, **came))
    return evolve(plan, plantings=(first, *plan.plantings[1:]))


def test_plants_bought_in_are_to_buy_and_are_neither_raised_nor_sown() -> None:
    """By hand: 136 less 16 are 120; 138 to raise, 153.3 up to 154 cells, 2 trays. All of them: those of the other."""
    plan = with_bought(16)
    assert item(plan, GoodKind.PLANT, "pak").needed.value == 16
    assert item(plan, GoodKind.SEED, "pak").needed.value == 154 + 57
    (words,) = [row.cells[0] for group in shop_groups(plan) for row in group.rows if row.item.kind is GoodKind.PLANT]
    assert words == "Pak choi: for A by 11 Apr"
    whole = with_bought(136)
    assert item(whole, GoodKind.PLANT, "pak").needed.value == 136
    assert item(whole, GoodKind.SEED, "pak").needed.value == 57
    assert item(whole, GoodKind.TRAY, "84").needed.value == 1


@pytest.mark.parametrize(
    ("bought", "words"),
    [(0, "136 plants (3 trays)"), (16, "136 plants (2 trays), 16 of them bought in"), (136, "136 plants bought in")],
)
def test_what_goes_to_the_bed_says_what_of_it_is_bought_in(bought: int, words: str) -> None:
    laid = lay_out_plan(with_bought(bought))[0]
    assert block_words(laid.grown[0], laid.layouts[0], Units.METRIC) == words


def test_what_was_sown_for_all_places_was_sown_so_though_some_are_bought_in_later() -> None:
    """S1's 175 cells in 3 trays were sown; the plants lacking are still to buy until they are set out."""
    plan = with_bought(16, sown=date(2027, 3, 18))
    (laid, _field) = lay_out_plan(plan)
    assert raised_for(laid.grown[0], laid.layouts[0]).cells == 175
    assert item(plan, GoodKind.PLANT, "pak").needed.value == 16
    out = with_bought(16, sown=date(2027, 3, 18), set_out=date(2027, 4, 11))
    assert not [one for one in shopping(out) if one.kind is GoodKind.PLANT]


def test_plants_are_bought_by_the_tray_and_for_the_days_on_which_they_are_set_out() -> None:
    """By hand: 16 in trays of 6 are 3."""
    sold = Good("g", GoodKind.PLANT, crop="pak", pack=parse_amount("6"), price=parse_price("2.50"))
    plan = evolve(with_bought(16), goods=(sold,))
    assert values(item(plan, GoodKind.PLANT)) == [16, 3, Fraction("7.5")]
    days = (date(2027, 4, 5), date(2027, 4, 11)), (date(2027, 4, 12), date(2027, 4, 18))
    found = [[one.kind for one in shopping(plan, Asked(first=first, last=last))] for first, last in days]
    assert [GoodKind.PLANT in kinds for kinds in found] == [True, False]


def sown_on(day: date, **fields: Any) -> Plan:
    """Two beds whose second pak choi, 1 tray, is set out on a day, 24 days after sowing; the first 3 on 11 April."""
    plan = plan_with_goods(*fields.pop("goods", ()))
    first, second, beet = plan.plantings
    return evolve(plan, plantings=(evolve(first, **fields), evolve(second, in_ground=day), beet))


@pytest.mark.parametrize(
    ("day", "at_once"),
    [
        (date(2027, 5, 5), 3),  # sown on 11 April, the day on which the first are set out
        (date(2027, 5, 4), 4),
        (date(2027, 3, 19), 4),  # sown on 23 February, set out the day after the first are sown
        (date(2027, 3, 18), 3),
    ],
)
def test_trays_are_needed_as_many_as_are_in_use_at_once(day: date, at_once: int) -> None:
    found = item(sown_on(day), GoodKind.TRAY)
    assert found.needed.value == at_once
    (words,) = [row.cells[1] for group in shop_groups(sown_on(day)) for row in group.rows if row.item == found]
    assert words == ("4" if at_once == 4 else "3 at once, 4 in all")


def test_the_parts_of_a_planting_that_was_split_share_their_trays() -> None:
    """By hand: 136 in two parts of 68; each 78.2 up to 79 to raise, 87.8 up to 88 cells, 2 trays of 84.

    Together 176 cells, 3 trays (2.1 up), as for the whole (175 cells); set out on another day they are 2 and 2.
    """
    soil = good(GoodKind.TRAY, cells=84, mix=parse_volume("4 l"))
    whole = plan_with_goods(soil)
    split = try_split(whole, "p1").trial.plan
    one, other = (each for each in split.plantings if each.crop == "pak" and each.id != "p2")
    assert [raised_for_planting(split, each.id) for each in (one, other)] == [(88, 2), (88, 2)]
    for plan in (whole, split):
        trays, mix = item(plan, GoodKind.TRAY), item(plan, GoodKind.MIX)
        assert [trays.needed.value, mix.needed.value] == [3, (3 + 1) * 4 * LITRE]
    later = tuple(evolve(each, in_ground=date(2027, 4, 12)) if each is other else each for each in split.plantings)
    assert item(evolve(split, plantings=later), GoodKind.TRAY).needed.value == 2 + 2
    unknown = tuple(evolve(crop, raising_days=None) for crop in split.crops)
    assert item(evolve(split, crops=unknown), GoodKind.TRAY).needed.value == 2 + 2 + 1


def raised_for_planting(plan: Plan, planting: str) -> tuple[int | None, int | None]:
    """The cells and the trays of a planting on its own."""
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if layout.planting == planting:
                made = raised_for(one, layout)
                return made.cells, made.trays
    raise AssertionError(planting)


def test_trays_that_are_filled_already_are_there_and_come_back() -> None:
    """Three are filled; of a tray more at the same time one lacks, and of one when these are free again none."""
    came = Actual(sown=date(2027, 3, 18))
    beside, later = (item(sown_on(day, actual=came), GoodKind.TRAY) for day in (date(2027, 5, 4), date(2027, 5, 5)))
    assert [beside.needed.value, beside.in_store.value, beside.lacking.value] == [4, 3, 1]
    assert [later.needed.value, later.lacking.value] == [1, 1]
    own = good(GoodKind.TRAY, store="3", cells=84)
    assert item(sown_on(date(2027, 5, 5), actual=came, goods=(own,)), GoodKind.TRAY).lacking.value == 0
    assert item(sown_on(date(2027, 5, 4), actual=came, goods=(own,)), GoodKind.TRAY).lacking.value == 1


def test_the_list_of_a_week_counts_what_is_in_use_in_that_week() -> None:
    """One tray is sown on 10 April, when three are in use; on its own it is one of them all."""
    plan = sown_on(date(2027, 5, 4))
    week = item(plan, GoodKind.TRAY, asked=Asked(first=date(2027, 4, 5), last=date(2027, 4, 11)))
    assert week.in_all is not None
    assert [week.needed.value, week.in_all.value] == [4, 1]
    alone = item(plan, GoodKind.TRAY, asked=Asked(planting="p2"))
    assert alone.needed.value == 1


@given(plans())
def test_of_any_plan_no_day_has_more_trays_than_are_needed_at_once(plan: Plan) -> None:
    for one in shopping(plan):
        if one.kind is GoodKind.TRAY and one.in_all is not None and one.in_all.value is not None:
            assert one.needed.value is not None
            assert max(term.value or 0 for term in one.in_all.terms) <= one.needed.value
