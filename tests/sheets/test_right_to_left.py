"""Names in scripts that run from right to left stand on paper as Qt's shaper (HarfBuzz) lays them out."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontDatabase, QRawFont, QTextLayout, QTextOption

from gardenplot.files import resource
from gardenplot.plan.edits import change_bed
from gardenplot.sheets.paper import MISSING, as_drawn, load_face
from tests.sheets.printed import bed_with, printed

NAMES = [
    "חסה",
    "ערוגה צפונית",
    "ערוגה 12",
    "חסה (סתיו)",
    "גזר 2 ולפת",
    "سلام",
    "السرير الشمالي",
    "خس روماني 3",
    "بقدونس (ربيع)",
    "لأجل الآن",
    "کلم پیچ",
]
"""Hebrew, Arabic and Persian; words, numbers, brackets, lam with each kind of alef."""


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("name", NAMES)
def test_a_name_is_drawn_in_the_order_and_in_the_forms_that_a_shaper_gives_it(name: str) -> None:
    load_face()
    raw = QRawFont(str(resource("fonts/DejaVuSansCondensed.ttf")), 16)
    assert list(raw.glyphIndexesForString(as_drawn(name))) == shaped(name)


def shaped(name: str) -> list[int]:
    """The glyphs of a name from left to right, as Qt lays it out as text of its own that runs from the right."""
    family = QFontDatabase.applicationFontFamilies(
        QFontDatabase.addApplicationFont(str(resource("fonts/DejaVuSansCondensed.ttf")))
    )[0]
    font = QFont(family, 12)
    font.setStretch(QFont.Stretch.SemiCondensed)
    layout = QTextLayout(name, font)
    option = QTextOption()
    option.setTextDirection(Qt.LayoutDirection.RightToLeft)
    layout.setTextOption(option)
    layout.beginLayout()
    line = layout.createLine()
    line.setLineWidth(10_000)
    layout.endLayout()
    found = [
        (place.x(), glyph)
        for run in layout.glyphRuns()
        for place, glyph in zip(run.positions(), run.glyphIndexes(), strict=True)
    ]
    return [glyph for _x, glyph in sorted(found)]


@pytest.mark.parametrize(
    ("words", "drawn"),
    [
        ("A ערוגה begins", "A הגורע begins"),
        ("ערוגה, 0.50 – 16.50 m", "הגורע, 0.50 – 16.50 m"),
        ("B חסה 3 × 20 = 60", "B הסח 3 × 20 = 60"),
        ("C חסה 2, every 25 cm", "C 2 הסח, every 25 cm"),
        ("for חסה 25\u2009cm", "for הסח 25\u2009cm"),
        ("Красный лук № 2", "Красный лук № 2"),
        ("Μαρούλι", "Μαρούλι"),
        ("A חסה ער… begins", "A …רע הסח begins"),
    ],
)
def test_readings_and_sums_behind_a_name_stay_as_they_are(words: str, drawn: str) -> None:
    """Turned by hand: a name alone, and a whole number that ends it."""
    load_face()
    assert as_drawn(words) == drawn


@pytest.mark.parametrize("name", NAMES)
def test_sheets_show_such_names_whole_and_their_figures_right(name: str) -> None:
    plan = change_bed(bed_with({"from": "1 m", "length": "8 m"}, crop=name), "b1", name=name)
    (page,) = printed(plan)
    assert MISSING not in page.text
    assert {"1.00", "9.00", "12.00", "1.08", "8.88"} <= {words.text for words in page.words}
