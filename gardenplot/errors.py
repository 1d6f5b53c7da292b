"""The errors that a person may meet, each with one sentence that says what is wrong and what works.

GardenplotError
+-- LengthError      text that is no length, share or rate
+-- PlanError        a request that the plan cannot meet
+-- FileError        a plan file that cannot be read or written
    +-- ChangedError a plan file that somebody else has changed meanwhile
"""

from collections.abc import Iterator
from contextlib import contextmanager

from gardenplot.one_line import one_line


class GardenplotError(Exception):
    """The root of all errors that are shown to a person as they are, each on one line.

    `says` is the sentence alone; `field` names the field of a dialog or a part that it is about, if that is known.
    """

    def __init__(self, sentence: str, *, place: str = "") -> None:
        self.says, self.field = one_line(sentence), place.rpartition(".")[2]
        super().__init__(one_line(f"{place}: {sentence}") if place else self.says)


class LengthError(GardenplotError):
    """Text that is no length, share or rate."""


class PlanError(GardenplotError):
    """A request that the plan cannot meet."""


class FileError(GardenplotError):
    """A file that cannot be read or written; the sentence names the file and the place in it."""


class ChangedError(FileError):
    """A plan file that holds something else than it did when it was opened or saved here."""


@contextmanager
def at_field(name: str) -> Iterator[None]:
    """Whatever goes wrong inside is about a field of that name, unless it names one itself."""
    try:
        yield
    except GardenplotError as error:
        error.field = error.field or name
        raise
