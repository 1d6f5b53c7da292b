"""What is carried from the shelf to the canvas: a crop, by its id."""

from PySide6.QtCore import QByteArray, QMimeData

from gardenplot.plan import Crop, Plan
from gardenplot.plan.catalogue import entries

CROP = "application/x-gardenplot-crop"


def with_crop(crop: Crop) -> QMimeData:
    """Something to carry that holds a crop."""
    carried = QMimeData()
    carried.setData(CROP, QByteArray(crop.id.encode()))
    return carried


def carried_crop(carried: QMimeData, plan: Plan) -> Crop | None:
    """The crop that is carried: the plan's own first, else the catalogue's."""
    if not carried.hasFormat(CROP):
        return None
    wanted = bytes(carried.data(CROP).data()).decode(errors="replace")
    own = next((crop for crop in plan.crops if crop.id == wanted), None)
    return own or next((entry.crop for entry in entries() if entry.crop.id == wanted), None)
