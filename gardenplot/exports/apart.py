"""Long work in a process of its own, which can be ended at any moment and leaves nothing behind.

A process and not a thread, since the window would wait for Python's lock, and since pictures may be painted in a main
thread only.
"""

import os
from collections.abc import Callable, Mapping
from importlib import import_module
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess

from attrs import evolve, field, frozen

from gardenplot.errors import GardenplotError
from gardenplot.words import _


@frozen(eq=False)
class Work:
    """A function of a module, by their names, and what it is called with; it also takes `told`."""

    module: str
    function: str
    arguments: tuple[object, ...] = ()
    named: Mapping[str, object] = field(factory=dict)

    def carried_out(self, told: Callable[..., object]) -> object:
        """What the function gives, here and now."""
        return getattr(import_module(self.module), self.function)(*self.arguments, **self.named, told=told)


@frozen
class Parts:
    """So many parts are done of so many; `best` is the best result so far, of work that tells one."""

    done: int
    of: int
    best: object = None


@frozen(eq=False)
class Result:
    """What came out of it."""

    value: object


@frozen(eq=False)
class Apart:
    """Work that goes on in another process; `told` is asked now and then."""

    work: Work
    _pipe: Connection = field(init=False)
    _worker: BaseProcess = field(init=False)

    def __attrs_post_init__(self) -> None:
        context = get_context("spawn")
        ours, theirs = context.Pipe(duplex=False)
        worker = context.Process(target=_carry_out, args=(theirs, self.work), daemon=True)
        worker.start()
        theirs.close()
        object.__setattr__(self, "_pipe", ours)
        object.__setattr__(self, "_worker", worker)

    def told(self) -> Parts | Result | None:
        """The last that is known of it: parts that are done, its result, or nothing new.

        Raises the GardenplotError that ended the work, also where its process ended without a word.
        """
        last: Parts | Result | None = None
        try:
            while not isinstance(last, Result) and self._pipe.poll():
                word = self._pipe.recv()
                if isinstance(word, GardenplotError):
                    raise word
                last = _with_best(word, last)
        except (EOFError, OSError) as error:
            raise GardenplotError(_("the work ended before it was done")) from error
        return last

    def end(self) -> None:
        """End it, done or not.

        Nobody waits until the process is gone, which takes as long as its memory is large: it only ever tells what it
        found, and the next one that is started, or the end of the program, takes the rest of it away.
        """
        self._worker.kill()
        self._pipe.close()


def _with_best(word: Parts | Result, last: Parts | Result | None) -> Parts | Result:
    """A word with the best that was told before it, unless it tells a better one."""
    if isinstance(word, Parts) and isinstance(last, Parts) and word.best is None:
        return evolve(word, best=last.best)
    return word


def _carry_out(pipe: Connection, work: Work) -> None:
    """What the other process does; it has no screen."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    try:
        value = work.carried_out(lambda *parts: pipe.send(Parts(*parts)))
        pipe.send(Result(value))
    except GardenplotError as error:
        pipe.send(error)
