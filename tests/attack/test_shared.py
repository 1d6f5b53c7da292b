"""Two windows and a service that keeps folders alike write one file: whatever anybody saved can be found again."""

import os
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from gardenplot.errors import ChangedError
from gardenplot.plan import saving
from gardenplot.plan import versions as versions_kept
from gardenplot.plan.edits import change_place
from gardenplot.plan.exchange import exchange
from gardenplot.plan.file import mark_of, read_plan, text_of, write_plan
from gardenplot.plan.saving import free_name
from gardenplot.window.document import Document
from gardenplot.window.own_folder import versions
from tests.attack import turns
from tests.plans import metric_plan

DEEDS = 12
"""Things that happen to a file in one interleaving."""
needs_exchange = pytest.mark.skipif(os.name == "nt", reason="this system cannot exchange two names")


class Shared:
    """A file, two windows on it, a service that puts its own content there; and what of all must be found again."""

    def __init__(self, path: Path, dice: random.Random) -> None:
        self.path, self.dice = path, dice
        self.number = 0
        self.must: set[str] = set()
        """Marks of what a window has saved, and of what somebody else had put there when a window saved over it."""
        self.strange: str | None = None
        """The mark of what the service put there last and nobody has taken away."""
        self.aside: list[Path] = []
        write_plan(path, metric_plan())
        self.windows = (Document(), Document())
        for window in self.windows:
            window.open(path)

    def happen(self) -> None:
        """Let one thing happen."""
        self.dice.choice((self.save, self.save, self.save, self.serve, self.serve, self.serve, self.take_away))()

    def serve(self) -> None:
        """The service brings a plan of another machine, by renaming or by writing into the file."""
        self.number += 1
        content = text_of(change_place(metric_plan(), name=f"Theirs {self.number}")).encode()
        if self.dice.random() < 0.5:
            write_plan(self.path, change_place(metric_plan(), name=f"Theirs {self.number}"))
        else:
            self.path.write_bytes(content)
        self.strange = mark_of(content)

    def take_away(self) -> None:
        """The service removes the file: it was removed on another machine."""
        self.path.unlink(missing_ok=True)
        self.strange = None

    def save(self) -> None:
        """A window changes its plan and saves it, with some answer to the question where there is one."""
        window = self.dice.choice(self.windows)
        self.number += 1
        window.change("Name", change_place(window.plan, name=f"Mine {self.number}"))
        before = self.strange
        try:
            saved = window.save(window.path or self.path)
        except ChangedError:
            match self.dice.randrange(3):
                case 0:
                    saved = window.save(window.path or self.path, over=True)
                case 1:
                    saved = window.save(free_name(self.path))
                case _:
                    return
        self.must.add(saved.seen)
        if window.path == self.path:
            # What the service had there before, and what it brought last in the middle of this.
            self.must |= {mark for mark in (before, self.strange) if mark is not None}
            self.strange = None
        if saved.aside is not None:
            self.aside.append(saved.aside)

    def found(self) -> set[str]:
        """The marks of all that is there: in the file, beside it, and among the versions of each."""
        files = [one for one in self.path.parent.iterdir() if not one.name.startswith(".")]
        kept = [version.path for one in files for version in versions().of(one)]
        kept += [version.path for version in versions().of(self.path)]
        return {mark_of(one.read_bytes()) for one in (*files, *kept)}


def interleave(shared: Shared, monkeypatch: pytest.MonkeyPatch) -> None:
    """Let things happen, some of them in the middle of a save."""
    depth = 0

    def between(real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*given: Any) -> Any:
            nonlocal depth
            if depth == 0 and given[-1] == shared.path and shared.dice.random() < 0.3:
                depth += 1
                shared.dice.choice((shared.serve, shared.save))()
                depth -= 1
            return real(*given)

        return call

    # That no more than the last ten are kept is as it should be, and not what is looked for here.
    monkeypatch.setattr(versions_kept, "MOST", 100)
    monkeypatch.setattr(saving, "exchange", between(exchange))
    monkeypatch.setattr(os, "link", between(os.link))
    for _turn in range(DEEDS):
        shared.happen()


@needs_exchange
def test_nothing_that_anybody_saved_is_lost(tmp_path: Path) -> None:
    asides = 0
    for seed in range(turns(40, 1000)):
        folder = tmp_path / str(seed)
        folder.mkdir()
        with pytest.MonkeyPatch.context() as monkeypatch:
            shared = Shared(folder / "spring.gardenplot", random.Random(seed))
            interleave(shared, monkeypatch)
        lost = shared.must - shared.found()
        assert not lost, f"seed {seed}: {len(lost)} lost"
        for one in folder.iterdir():
            read_plan(one)
        asides += len(shared.aside)
    assert asides, "somebody saved in the very moment"
