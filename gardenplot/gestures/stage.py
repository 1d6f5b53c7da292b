"""What a gesture sees of the window, and what it is told: a narrow stage and a few kinds of event.

A gesture is a generator: it is sent a `Pointer` for each place the hand goes to and `Released` when it lets go; one
that goes on after that also hears `Pressed`, `TakenBack` and `Finished`, and of keys `Stepped` and `Turned`. It is
closed when the hand gives up. It shows trials on the stage and commits at most one.
"""

from collections.abc import Generator
from datetime import date
from typing import Protocol

from attrs import frozen

from gardenplot.drawing.handles import Handle, Point
from gardenplot.findings import Finding
from gardenplot.gestures.day_snap import DaySnap
from gardenplot.gestures.snap import Snap
from gardenplot.plan import Plan


@frozen
class Pointer:
    """Where the hand is: a bed (None beside all beds), a tape reading and a distance from the base line in nm.

    `reach` is how far in nm a snap pulls along the bed, `reach_across` across it; `free` suspends all snaps, `push`
    moves neighbours out of the way, `copies` leaves what is moved where it stands and moves a copy, `waits` lets a
    new planting go in on the first day on which its ground is free. On the season map it lies on a `day` too, and a
    snap pulls over so many days as `reach_days`.
    """

    bed: str | None
    x: int
    y: int
    reach: int
    free: bool = False
    reach_across: int = 0
    push: bool = False
    copies: bool = False
    waits: bool = False
    day: date | None = None
    reach_days: int = 0


@frozen
class Pressed:
    """The hand presses down where it is."""


@frozen
class Released:
    """The hand lets go."""


@frozen
class TakenBack:
    """The hand takes its last step back."""


@frozen
class Finished:
    """The hand says that its work is done."""


@frozen
class Stepped:
    """A key moves on by so many nm along the bed and across it; with `to_mark` along to the next mark that way."""

    along: int
    across: int
    to_mark: bool = False


@frozen
class Turned:
    """A key turns to the other end of what is measured."""


Event = Pointer | Pressed | Released | TakenBack | Finished | Stepped | Turned


@frozen
class Pushed:
    """A neighbour that is pushed along, by so many nm towards the foot, or less than nothing towards the head."""

    planting: str
    by: int


@frozen
class Spot:
    """A place in a bed: a tape reading and an offset from the base line in nm, and what drew the hand there."""

    bed: str
    x: int
    y: int
    snap: Snap | None = None
    across: Snap | None = None


@frozen
class Measured:
    """Two places whose distance is measured, and whether it is the second that the keys and the hand move."""

    start: Spot
    end: Spot
    at_end: bool = True


@frozen
class Sketch:
    """An outline as the hand draws it, perhaps one that cannot be: its corners in nm and which of them is held."""

    points: tuple[Point, ...]
    held: int
    closed: bool = True


@frozen
class Trial:
    """What the plan would be if the hand let go now.

    It is about a bed (None for one that is only being traced), in it perhaps about a planting and `others` with it,
    or about a corner or an obstacle. `snap` and `across` say what drew the hand along the bed and across it.
    `against` are the findings because of which it cannot be, `refusal` is the sentence where it makes no plan at all.
    `copies` says that copies are tried, `leaves_order` that an order stays with what they are copied from, `pushed`
    which neighbours make room, `stopped` which can make no more. `later` is the first day on which the ground of a
    new planting is free: it goes in then or, where the trial cannot be, it could. `drawn_day` says what drew the hand
    in time. `gap` is a gap between two readings in nm that is filled, `says` are lines more that tell of it.
    `proposed` are plantings that were found for the grower, not drawn by the hand. `beside` are beds that go along
    with the bed on the ground.
    """

    plan: Plan
    bed: str | None
    planting: str | None = None
    handle: Handle | None = None
    sketch: Sketch | None = None
    snap: Snap | None = None
    across: Snap | None = None
    against: tuple[Finding, ...] = ()
    refusal: str = ""
    others: tuple[str, ...] = ()
    copies: bool = False
    leaves_order: bool = False
    pushed: tuple[Pushed, ...] = ()
    stopped: str | None = None
    measured: Measured | None = None
    later: date | None = None
    drawn_day: DaySnap | None = None
    gap: tuple[int, int] | None = None
    says: tuple[str, ...] = ()
    proposed: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()

    @property
    def beds(self) -> tuple[str, ...]:
        """The bed that it is about and those that go along with it on the ground."""
        return (self.bed, *self.beside) if self.bed is not None else ()

    @property
    def chosen(self) -> tuple[str, ...]:
        """The planting that it is about and those chosen with it."""
        return (self.planting, *self.others) if self.planting is not None else ()

    @property
    def can_be(self) -> bool:
        """Whether nothing stands against it."""
        return not self.against and not self.refusal


class Stage(Protocol):
    """The five things a gesture may see and do."""

    @property
    def plan(self) -> Plan:
        """The plan at the press."""
        ...

    @property
    def day(self) -> date | None:
        """The day that the drawing shows."""
        ...

    def show(self, trial: Trial | None) -> None:
        """Draw a trial, or the plan again."""
        ...

    def commit(self, trial: Trial, verb: str) -> None:
        """Make a trial the plan, as one step of undo."""
        ...

    def refuse(self, trial: Trial) -> None:
        """Say why a trial cannot be."""
        ...


Gesture = Generator[None, Event, None]
