"""A proposal that lies over the plan until it is taken or left; the hand changes nothing of it."""

from attrs import evolve

from gardenplot.gestures.stage import Gesture, Trial
from gardenplot.plan import Plan


def hold() -> Gesture:
    """Hold a proposal on the stage until it is given up, whatever the hand does."""
    while True:
        yield


def proposed(plan: Plan, filled: Plan) -> Trial:
    """A plan with the plantings that another one has more, which came from it by filling."""
    more = filled.plantings[len(plan.plantings) :]
    after = evolve(plan, plantings=(*plan.plantings, *more))
    return Trial(after, None, proposed=tuple(one.id for one in more))
