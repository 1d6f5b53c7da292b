"""The drawing as a picture: a PNG of what the canvas shows, made without a window."""

from pathlib import Path

import pytest
from PySide6.QtGui import QImage

from gardenplot.plan import Plan
from gardenplot.plan.edits import remove_planting
from gardenplot.window.document import Document
from gardenplot.window.picture import drawn
from tests.plans import feet_plan, metric_plan

pytestmark = pytest.mark.usefixtures("dressed")


@pytest.mark.parametrize("plan", [metric_plan(), feet_plan(), Plan()], ids=["metric", "feet", "empty"])
def test_a_plan_gives_a_png_3200_pixels_wide(plan: Plan) -> None:
    png = drawn(plan)
    assert png.startswith(b"\x89PNG\r\n\x1a\n")
    image = QImage.fromData(png)
    assert image.width() == 3200
    assert image.height() > 0


def test_the_same_plan_gives_the_same_bytes_and_another_plan_others() -> None:
    plan = metric_plan()
    assert drawn(plan) == drawn(metric_plan())
    assert drawn(remove_planting(plan, "p1")) != drawn(plan)


def test_a_picture_is_drawn_while_a_window_is_open(document: Document, tmp_path: Path) -> None:
    (tmp_path / "plan.png").write_bytes(drawn(document.plan))
    assert not QImage(str(tmp_path / "plan.png")).isNull()
