"""The errors that a person may meet, each with one sentence that says what is wrong and what works.

GardenplotError
+-- LengthError      text that is no length, share or rate
+-- PlanError        a request that the plan cannot meet
+-- FileError        a plan file that cannot be read or written
"""

from gardenplot.one_line import one_line


class GardenplotError(Exception):
    """The root of all errors that are shown to a person as they are, each on one line."""

    def __init__(self, sentence: str) -> None:
        super().__init__(one_line(sentence))


class LengthError(GardenplotError):
    """Text that is no length, share or rate."""


class PlanError(GardenplotError):
    """A request that the plan cannot meet."""


class FileError(GardenplotError):
    """A file that cannot be read or written; the sentence names the file and the place in it."""
