"""A count is written alike wherever it is read: its thousands stand apart in every table and sentence."""

import re
from collections.abc import Iterator

from PySide6.QtWidgets import QLabel

from gardenplot.drawing.captions import captions
from gardenplot.drawing.letters import looks
from gardenplot.files import sample
from gardenplot.layout import lay_out_plan
from gardenplot.plan.file import read_plan
from gardenplot.window.main import MainWindow
from tests.journeys.person import rows_of

_BARE = re.compile(r"(?<![\d.-])(?!20\d\d\b)\d{4,}")
"""Four figures and more in one, but for a year."""
MANY = "1\u2009620"


def all_words(window: MainWindow) -> Iterator[str]:
    """The words of all tables, and of the panels for the plan and for each of its plantings."""
    ledger, plan = window.ledger, window.document.plan
    for number, table in enumerate(
        (ledger.counts, ledger.crops, ledger.orders, ledger.wishes.table, ledger.dates, ledger.findings)
    ):
        ledger.setCurrentIndex(number)
        yield from (cell for row in rows_of(table) for cell in row)
    for bed, planting in ((None, None), *((one.bed, one.id) for one in plan.plantings)):
        window.sight.select(bed, planting)
        panel = window.inspector.currentWidget()
        assert panel is not None
        yield from (label.text() for label in panel.findChildren(QLabel))
    for laid in lay_out_plan(plan):
        yield from (words for one in captions(plan, laid, None, looks(plan)) for words in one.words[:2])


def test_thousands_stand_apart_in_every_table_and_sentence(window: MainWindow) -> None:
    window.document.start(read_plan(sample("kestrel-howe.gardenplot")).plan)
    words = list(all_words(window))
    assert sum(MANY in one for one in words) >= 2
    assert [one for one in words if _BARE.search(one)] == []
