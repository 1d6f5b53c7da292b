"""Trays on the bench by week: from sowing until they harden off, each week with all that stand on any of its days."""

from datetime import date, timedelta

from attrs import evolve
from hypothesis import given

from gardenplot.gestures.split import try_split
from gardenplot.plan import Good, GoodKind, Plan
from gardenplot.season import dates_of
from gardenplot.supplies.bench import bench_by_week
from gardenplot.units import CM, parse_length
from tests.plans import plans
from tests.supplies.test_shopping import plan_with_goods


def plan_with_hardening() -> Plan:
    """Two sowings of pak choi: 3 trays from 18 March and 1 from 17 April, each on the bench for 17 days."""
    plan = plan_with_goods()
    pak, beet = plan.crops
    return evolve(plan, crops=(evolve(pak, hardening_days=7), beet))


def test_trays_stand_there_from_sowing_until_they_harden_off() -> None:
    """Set out on 11 April, 24 days of raising, the last 7 of them outdoors: 18 March until 4 April, a Sunday."""
    found = {one.monday: one.trays.value for one in bench_by_week(plan_with_hardening())}
    assert found == {
        date(2027, 3, 15): 3,
        date(2027, 3, 22): 3,
        date(2027, 3, 29): 3,
        date(2027, 4, 12): 1,
        date(2027, 4, 19): 1,
        date(2027, 4, 26): 1,
        date(2027, 5, 3): 1,
    }


def test_the_parts_of_a_planting_that_was_split_share_their_trays_on_the_bench() -> None:
    """By hand: two parts of 68 with 88 cells each are 176 cells, 3 trays of 84, though each alone would fill 2."""
    split = try_split(plan_with_hardening(), "p1").trial.plan
    assert [one.trays.value for one in bench_by_week(split)] == [3, 3, 3, 1, 1, 1, 1]


def test_a_tray_takes_its_sides_outside() -> None:
    first = bench_by_week(plan_with_hardening())[0]
    assert first.area.value == 3 * 28 * 54 * CM**2
    own = Good("g", GoodKind.TRAY, cells=84, length=parse_length("60 cm"), width=parse_length("40 cm"))
    assert bench_by_week(evolve(plan_with_hardening(), goods=(own,)))[0].area.value == 3 * 60 * 40 * CM**2


@given(plans())
def test_every_tray_is_there_in_the_week_in_which_it_is_sown(plan: Plan) -> None:
    weeks = {one.monday: one for one in bench_by_week(plan)}
    assert [*weeks] == sorted(weeks)
    sown = {one.label for week in weeks.values() for one in week.trays.terms}
    for label in sown:
        mondays = [monday for monday, week in weeks.items() if label in {one.label for one in week.trays.terms}]
        starts = [day for one in plan.plantings if (day := dates_of(plan, one).sow) is not None]
        assert any(timedelta(0) <= day - min(mondays) < timedelta(7) for day in starts)
