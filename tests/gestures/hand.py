"""A hand to try gestures with: a stage that keeps what it is told, and the ways a hand goes."""

from datetime import date

from attrs import Factory, define

from gardenplot.findings import Kind, find_all
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.stage import Gesture, Pointer, Released, Trial
from gardenplot.plan import Plan
from gardenplot.units import CM
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields, nm

Spot = tuple[str, int, int]


@define
class KeptStage:
    """A stage that shows nothing and keeps everything."""

    plan: Plan
    day: date | None = None
    shown: list[Trial | None] = Factory(list)
    committed: list[Trial] = Factory(list)
    verbs: list[str] = Factory(list)
    refused: list[Trial] = Factory(list)

    def show(self, trial: Trial | None) -> None:
        """Keep what is drawn."""
        self.shown.append(trial)

    def commit(self, trial: Trial, verb: str) -> None:
        """Keep what becomes the plan, and under what name."""
        self.committed.append(trial)
        self.verbs.append(verb)

    def refuse(self, trial: Trial) -> None:
        """Keep what cannot be."""
        self.refused.append(trial)

    @property
    def after(self) -> Plan:
        """The plan after the one gesture that was committed."""
        (trial,) = self.committed
        return trial.plan


def planted(trial: Trial) -> str:
    """The planting that a trial is about."""
    assert trial.planting is not None
    return trial.planting


def hold(gesture: Gesture, *way: Pointer) -> Gesture:
    """Take the hand along a way without letting go."""
    next(gesture)
    for pointer in way:
        gesture.send(pointer)
    return gesture


def let_go(gesture: Gesture) -> None:
    """Let go; the gesture is over then."""
    try:
        gesture.send(Released())
    except StopIteration:
        return
    raise AssertionError("a gesture goes on after the hand let go")


def drag(gesture: Gesture, *way: Pointer) -> None:
    """Take the hand along a way and let go."""
    let_go(hold(gesture, *way))


def at(reading: str, bed: str | None = "b1", *, reach: int = 0, free: bool = False) -> Pointer:
    """The hand at a tape reading like "4.2 m" or "-30 cm"."""
    x = -nm(reading[1:]) if reading.startswith("-") else nm(reading)
    return Pointer(bed, x, 20 * CM, reach, free)


def block_of(plan: Plan, planting: str) -> Spot:
    """The bed, first and last tape reading of a planting."""
    layout = layout_in(plan, planting)
    return layout.bed, layout.start, layout.end


def spot(start: str, end: str, bed: str = "b1") -> Spot:
    """A block between two tape readings."""
    return bed, nm(start), nm(end)


def trouble(plan: Plan, planting: str) -> set[tuple[str, str | None]]:
    """What cannot be done about a planting in its bed: each kind and the other planting in it."""
    return {
        (one.kind, one.other if one.planting == planting else one.planting)
        for one in find_all(plan)
        if one.cannot_be_done and one.kind is not Kind.SOWN_AFTER and planting in (one.planting, one.other)
    }


BEDS: list[Fields] = [
    {"id": "b1", "name": "Tunnel", "length": "12 m", "width": "75 cm", "head_margin": "30 cm", "foot_margin": "30 cm",
     "gap": "20 cm"},
    {"id": "b2", "name": "Field", "length": "20 m", "width": "1.2 m"},
]  # fmt: skip
CHARD: Fields = {"id": "chard", "name": "Chard", "in_row": "30 cm", "row_spacing": "30 cm"}
LEEK: Fields = {"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"}


def ground(*plantings: Fields, units: str = "metric", **more: list[Fields]) -> Plan:
    """Two beds with plantings p1, p2 ..., of chard in the first bed unless they say otherwise."""
    chard = {"bed": "b1", "crop": "chard"}
    parts = {
        "beds": BEDS,
        "crops": [CHARD, LEEK],
        "plantings": [chard | {"id": f"p{number}"} | one for number, one in enumerate(plantings, 1)],
    }
    return plan_from({"units": units}, **(parts | more))


def block(start: str, length: str, **more: object) -> Fields:
    """The fields of a planting with a place and a length."""
    return {"from": start, "length": length} | more
