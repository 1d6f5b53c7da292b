"""A disk whose power may fail at any moment: all that may be on it then, by what was flushed and what was not.

It follows the calls that the program makes to the system. What was written and not flushed may be there, be missing,
be cut short or be noughts. A name that was given, taken or changed is sure once its folder was flushed; till then
each such step may have come to the disk or not, whatever became of the steps before it. No file system promises less.
"""

import os
import threading
from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from gardenplot.plan import saving
from gardenplot.plan.exchange import exchange

Names = dict[str, int | None]
"""Which file each name stands for, None for a name that is taken away."""
Held = dict[str, bytes]
"""What is under each name."""


class Disk:
    """What is and what may be below a folder; `look` is called with each state that a cut might leave, once."""

    def __init__(self, folder: Path, look: Callable[[Held], object]) -> None:
        self._folder, self._look = folder, look
        self._turn = threading.RLock()
        self._may_hold: dict[int, tuple[bytes, ...]] = {}
        self._sure: Names = {}
        self._now: Names = {}
        self._steps: list[Names] = []
        self._seen: set[tuple[tuple[str, bytes], ...]] = set()
        for path in folder.rglob("*"):
            if path.is_file():
                self._sure[str(path)] = self._new((path.read_bytes(),))
        self._now.update(self._sure)

    def follow(self, patch: pytest.MonkeyPatch, *, exchanges: bool = True) -> None:
        """Follow what the program asks of the system from now on."""
        patch.setattr(os, "open", self._opening(os.open))
        patch.setattr(os, "fsync", self._flushing(os.fsync))
        patch.setattr(
            os, "replace", self._stepping(os.replace, lambda one, other: {other: self._now[one], one: None})
        )
        patch.setattr(os, "link", self._stepping(os.link, lambda one, other: {other: self._now[one]}))
        patch.setattr(os, "unlink", self._stepping(os.unlink, lambda one: {one: None}))
        swap = self._stepping(exchange, lambda one, other: {one: self._now[other], other: self._now[one]})
        patch.setattr(saving, "exchange", swap if exchanges else lambda _one, _other: False)

    def look_anew(self) -> None:
        """Have all states looked at again from now on, as something else is to hold of them."""
        with self._turn:
            self._seen.clear()
            self._cut()

    def _new(self, may_hold: tuple[bytes, ...]) -> int:
        number = len(self._may_hold)
        self._may_hold[number] = may_hold
        return number

    def _opening(self, real: Callable[..., int]) -> Callable[..., int]:
        def opened(name: Any, flags: int, *rest: Any, **named: Any) -> int:
            with self._turn:
                is_new = bool(flags & os.O_CREAT) and not os.path.lexists(name)
                handle = real(name, flags, *rest, **named)
                if is_new and self._is_here(name):
                    self._step({os.fspath(name): self._new((b"",))})
                return handle

        return opened

    def _flushing(self, real: Callable[[int], None]) -> Callable[[int], None]:
        def flushed(handle: int) -> None:
            with self._turn:
                self._cut()
                real(handle)
                it = os.fstat(handle)
                for name, number in self._now.items():
                    if number is not None and os.path.lexists(name) and os.path.samestat(it, os.stat(name)):
                        self._may_hold[number] = (Path(name).read_bytes(),)
                for step in list(self._steps):
                    if os.path.samestat(it, os.stat(os.path.dirname(next(iter(step))))):
                        self._sure.update(step)
                        self._steps.remove(step)
                self._cut()

        return flushed

    def _stepping(self, real: Callable[..., Any], names: Callable[..., Names]) -> Callable[..., Any]:
        def stepped(*paths: Any) -> Any:
            with self._turn:
                self._cut()
                done = real(*paths)
                if done is not False and self._is_here(paths[0]):
                    self._step(names(*map(os.fspath, paths)))
                return done

        return stepped

    def _is_here(self, name: Any) -> bool:
        return Path(os.fspath(name)).is_relative_to(self._folder)

    def _step(self, names: Names) -> None:
        self._now.update(names)
        self._steps.append(names)
        self._cut()

    def _cut(self) -> None:
        """The power fails now."""
        self._note_written()
        for came in product((False, True), repeat=len(self._steps)):
            names = dict(self._sure)
            for step, is_there in zip(self._steps, came, strict=True):
                names.update(step if is_there else {})
            for state in self._states(names):
                key = tuple(sorted(state.items()))
                if key not in self._seen:
                    self._seen.add(key)
                    self._look(state)

    def _states(self, names: Names) -> Iterator[Held]:
        there = {name: self._may_hold[number] for name, number in names.items() if number is not None}
        for held in product(*there.values()):
            yield dict(zip(there, held, strict=True))

    def _note_written(self) -> None:
        """What was written since and not flushed may be there, or in part, or not at all."""
        for name, number in self._now.items():
            if number is None or not os.path.lexists(name):
                continue
            content, known = Path(name).read_bytes(), self._may_hold[number]
            if content != known[-1]:
                self._may_hold[number] = (*known, content[: len(content) // 2], bytes(len(content)), content)
