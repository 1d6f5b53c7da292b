"""One measure of candidates set side by side: a heading and a cell for each."""

from attrs import frozen


@frozen
class Cell:
    """One measure of one candidate: its figure, the difference to now, and what is wrong with it in a sentence.

    `worse` tells that the difference goes the wrong way, `same` that the figure is the one of now, read elsewhere.
    """

    figure: str
    difference: str = ""
    worse: bool = False
    trouble: str = ""
    same: bool = False


@frozen
class MeasureLine:
    """One measure for all candidates, in their order."""

    heading: str
    cells: tuple[Cell, ...]
