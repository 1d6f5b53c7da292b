"""A choice among fillings of the season that differ in kind."""

from PySide6.QtCore import Signal

from gardenplot.drawing.filling_words import offer_words
from gardenplot.filling import Filling
from gardenplot.filling.others import Other
from gardenplot.window.fields import Choice
from gardenplot.words import _


class FillOffers(Choice):
    """Tells which one is picked; without another one it is not there."""

    picked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._fillings: list[Filling] = []
        self.setAccessibleName(_("Which filling"))
        self.activated.connect(lambda number: self.picked.emit(self._fillings[number]))

    def show_fillings(self, first: Filling, others: tuple[Other, ...]) -> None:
        """Offer the first, as it was weighed, and others."""
        self._fillings = [first, *(one.filling for one in others)]
        self.clear()
        self.addItem(offer_words(first))
        self.addItems([offer_words(one.filling, one.kind) for one in others])
        self.setVisible(bool(others))
