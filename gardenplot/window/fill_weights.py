"""What counts more when a season is filled, in plain words; kept from one time to the next."""

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QFormLayout, QWidget

from gardenplot.filling import First, Weights
from gardenplot.window.fields import LARGE, Choice
from gardenplot.window.theme import magnified
from gardenplot.words import _

ORDERS = (
    (_("as much as the dearest wish"), 1.0),
    (_("ten times as much as the dearest wish"), 10.0),
    (_("before any wish"), 1000.0),
)
WHOLE = (
    (_("for the plants that it has"), 0.0),
    (_("a third less than that"), 0.5),
    (_("hardly: all of it or nothing"), 9.0),
)
APART = (
    (_("every time and on all market days, or not at all"), False),
    (_("whenever it finds ground"), True),
)
FIRST = (
    (_("light: taller ones shade as little as they can"), First.LIGHT.value),
    (_("room: what is left over lies together"), First.ROOM.value),
    (_("cloth: what needs a cover stands side by side"), First.COVER.value),
)
_USUAL = Weights()


class WeightsForm(QWidget):
    """How much orders count beside wishes, and an order met in part; repeated ones; the order along a bed."""

    def __init__(self) -> None:
        super().__init__()
        self.orders, self.whole, self.apart, self.first = Choice(), Choice(), Choice(), Choice()
        form, kept = QFormLayout(self), QSettings()
        form.setContentsMargins(0, 0, 0, 0)
        if magnified() >= LARGE:
            form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        for name, box, label, choices in (
            ("orders", self.orders, _("An order counts"), ORDERS),
            ("whole", self.whole, _("An order met in part counts"), WHOLE),
            ("apart", self.apart, _("What is repeated is planted"), APART),
            ("first", self.first, _("Along a bed comes first"), FIRST),
        ):
            for words, weight in choices:
                box.addItem(words, weight)
            box.setAccessibleName(label)
            box.setObjectName(name)
            usual = getattr(_USUAL, name)
            kind = str if isinstance(usual, First) else type(usual)
            box.setCurrentIndex(max(0, box.findData(kept.value(f"filling/{name}", kind(usual), kind))))
            form.addRow(label, box)

    def weights(self) -> Weights:
        """What is chosen, which is kept for the next time."""
        boxes = (self.orders, self.whole, self.apart, self.first)
        chosen = {box.objectName(): box.currentData() for box in boxes}
        for name, weight in chosen.items():
            QSettings().setValue(f"filling/{name}", weight)
        return Weights(**chosen | {"first": First(chosen["first"])})
