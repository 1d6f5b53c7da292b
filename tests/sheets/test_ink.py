"""The bed sheets are in black, white and grey: a photocopy loses nothing, and any printer will do."""

import numpy as np
import pypdfium2
import pytest

from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import hand_worked
from tests.sheets.made import bed_sheets


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("scenario", ["s1", "s2", "s3", "s4", "s5", "s6"])
def test_no_colour_is_on_paper(scenario: str, paper: Paper) -> None:
    document = pypdfium2.PdfDocument(bed_sheets(hand_worked(scenario), paper).pdf)
    try:
        for page in document:
            pixels = page.render(scale=1.5).to_numpy()[..., :3]
            assert np.ptp(pixels, axis=2).max() == 0
            assert (pixels.min(), pixels.max()) == (0, 255)
    finally:
        document.close()
