"""What a gesture sees of the window, and what it is told: a narrow stage and three kinds of event.

A gesture is a generator: it is sent a `Pointer` for each place the hand goes to and `Released` when it lets go; it is
closed when the hand gives up. It shows trials on the stage and commits at most one.
"""

from collections.abc import Generator
from datetime import date
from typing import Protocol

from attrs import frozen

from gardenplot.findings import Finding
from gardenplot.gestures.snap import Snap
from gardenplot.plan import Plan


@frozen
class Pointer:
    """Where the hand is: a bed (None beside all beds), a tape reading and a distance from the base line in nm.

    `reach` is how far in nm a snap pulls; `free` suspends all snaps.
    """

    bed: str | None
    x: int
    y: int
    reach: int
    free: bool = False


@frozen
class Released:
    """The hand lets go."""


@frozen
class Trial:
    """What the plan would be if the hand let go now; `against` says why it cannot be."""

    plan: Plan
    planting: str
    snap: Snap | None = None
    against: tuple[Finding, ...] = ()


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


Gesture = Generator[None, Pointer | Released, None]
