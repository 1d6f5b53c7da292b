"""A proposal that lies over the plan until it is taken or left; the hand changes nothing of it."""

from datetime import date

from attrs import evolve

from gardenplot.gestures.stage import Gesture, Trial
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.plan import Plan, planting_of
from gardenplot.season import Dates, dates_of, grown_on


def hold() -> Gesture:
    """Hold a proposal on the stage until it is given up, whatever the hand does."""
    while True:
        yield


def proposed(plan: Plan, filled: Plan) -> Trial:
    """A plan with the plantings that another one has more, which came from it by filling."""
    more = filled.plantings[len(plan.plantings) :]
    after = evolve(plan, plantings=(*plan.plantings, *more))
    return Trial(after, None, proposed=tuple(one.id for one in more))


def instead(plan: Plan, other: Plan) -> Trial:
    """Another plan in place of this one, about the plantings that stand otherwise, or on other days, than in it."""
    was, now = _stand(plan), _stand(other)
    return Trial(other, None, proposed=tuple(one for one, stands in now.items() if was.get(one) != stands))


def _stand(plan: Plan) -> dict[str, tuple[Layout, Dates]]:
    return {
        layout.planting: (layout, one.dates)
        for laid in lay_out_plan(plan)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
    }


def day_to_see(trial: Trial, day: date | None) -> date | None:
    """The day on which most of what is proposed stands: the day shown if no other shows more of it."""
    dates = [dates_of(trial.plan, planting_of(trial.plan, one)) for one in trial.proposed]
    days = (day, *sorted(one.in_ground for one in dates if one.in_ground is not None))
    return max(days, key=lambda each: sum(grown_on(one, each) for one in dates))
