"""What holds whatever the monkey does: a valid plan, one count everywhere, no overlap unsaid, a way back."""

import csv
import io
from itertools import combinations
from time import monotonic, sleep

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QAbstractAnimation
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.tables import summary
from gardenplot.exports import places
from gardenplot.findings import Kind, find_in_bed
from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.layout.bed import Grown
from gardenplot.layout.positions import positions
from gardenplot.plan import Pattern, Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.valid import faults
from gardenplot.units.figures import grouped
from gardenplot.window.main import MainWindow
from gardenplot.window.tables import Table
from tests.window.test_repaint import anew, settled

_PLAIN, _ROUNDED = 16, 0.0005
"""Levels by which a pixel is another one, and the share of those that may be.

In pictures that begin elsewhere Qt rounds edges otherwise, and may begin the dashes of a line elsewhere.
"""


def agree(window: MainWindow) -> None:
    """What is quick to look at, after each event that changed the plan; raises AssertionError."""
    plan = window.document.plan
    assert list(faults(plan)) == []
    for laid in lay_out_plan(plan):
        _no_overlap_unsaid(laid)
        _stand_inside(laid)
    _counts_agree(window, plan)
    _sight_is_of(window, plan)


def hold(window: MainWindow) -> None:
    """What takes longer, now and then: the file, the list of places, the picture."""
    plan = window.document.plan
    assert plan_of_text(text_of(plan)).plan == plan
    listed = len(list(csv.DictReader(io.StringIO(places.drawn(plan).decode(), newline=""))))
    standing = [pair for laid in lay_out_plan(plan) for pair in zip(laid.grown, laid.layouts, strict=True)]
    # Neither trays that harden off nor what is sown over a band has places.
    counted = [
        layout.plants
        for one, layout in standing
        if one.hardened is None and layout.grid.pattern is not Pattern.BROADCAST
    ]
    assert listed == sum(counted)
    if window.isVisible() and window.canvas.isVisible() and not QApplication.activePopupWidget():
        _let_fade(window)
        others = _differs(settled(window), anew(window))
        assert others <= _ROUNDED, f"{others:.2%} of the drawing is not what a painting from nothing shows"


def _let_fade(window: MainWindow) -> None:
    """Let Qt end what it fades in: the button that empties a line of text takes a sixth of a second."""
    until = monotonic() + 1
    while monotonic() < until and any(
        one.state() is QAbstractAnimation.State.Running for one in window.findChildren(QAbstractAnimation)
    ):
        QApplication.processEvents()
        sleep(0.01)


def _differs(one: QImage, other: QImage) -> float:
    """The share of pixels that are plainly others."""
    seen, expected = (_levels(each.convertToFormat(QImage.Format.Format_RGB32)) for each in (one, other))
    return float((abs(seen - expected) > _PLAIN).any(axis=2).mean()) if seen.shape == expected.shape else 1.0


def _levels(image: QImage) -> npt.NDArray[np.int16]:
    whole = np.frombuffer(bytes(image.constBits()), np.uint8).reshape(image.height(), image.width(), 4)
    return whole.astype(np.int16)


def go_back(window: MainWindow, first: Plan) -> None:
    """Undoing everything gives the first plan, the very same object, and redoing it the last one."""
    document = window.document
    stack, plan = document.stack, document.plan
    steps = stack.index()
    while stack.canUndo():
        stack.undo()
    assert document.plan is first, "undoing everything gives another plan"
    while stack.index() < steps:
        stack.redo()
    assert document.plan is plan, "redoing everything gives another plan"


def _no_overlap_unsaid(laid: LaidOut) -> None:
    """Blocks that share ground on the same days are a finding, unless one was put into the other on purpose."""
    said = {frozenset((one.planting, one.other)) for one in find_in_bed(laid) if one.kind is Kind.OVERLAP}
    pairs = combinations(zip(laid.grown, laid.layouts, strict=True), 2)
    for (one, block), (other, beside) in pairs:
        shares = max(block.start, beside.start) < min(block.end, beside.end) and _together(one, other)
        wanted = (
            one.planting.gaps_of or other.planting.gaps_of or one.planting.keep_clear or other.planting.keep_clear
        )
        if shares and not wanted:
            assert frozenset((block.planting, beside.planting)) in said, f"{block.planting} lies on {beside.planting}"


def _together(one: Grown, other: Grown) -> bool:
    """Whether two are in the ground on one day; who has no day is there always."""
    ends = (one.dates.out, other.dates.in_ground), (other.dates.out, one.dates.in_ground)
    return all(out is None or begins is None or begins < out for out, begins in ends)


def _stand_inside(laid: LaidOut) -> None:
    """As many plants have places as are counted, and each stands in its bed."""
    for layout in laid.layouts:
        if layout.grid.pattern is Pattern.BROADCAST:
            continue
        spots = positions(layout)
        assert len(spots) == layout.plants
        if len(spots):
            (left, low), (right, high) = spots.min(axis=0), spots.max(axis=0)
            assert left >= 0
            assert low >= 0
            assert right <= laid.bed.length.nm
            assert high <= laid.bed.width.nm


def _counts_agree(window: MainWindow, plan: Plan) -> None:
    """The table, the line at the foot and the layouts tell of as many plants."""
    assert window.total.text() == summary(plan), "the line at the foot"
    ledger, laid_out = window.ledger, lay_out_plan(plan)
    by_bed = [sum(one.planted for one in laid.layouts) for laid in laid_out]
    if ledger.currentIndex() == 0:
        table: Table = ledger.counts
        rows = [item for at in range(table.topLevelItemCount()) if (item := table.topLevelItem(at)) is not None]
        assert [row.text(3) for row in rows] == [grouped(count) for count in (*by_bed, sum(by_bed))]
        children = [row.child(at) for row in rows for at in range(row.childCount())]
        inner = [child.text(3) for child in children if child is not None]
        assert sorted(inner) == sorted(grouped(one.planted) for laid in laid_out for one in laid.layouts)
    elif ledger.currentIndex() == 1:
        table = ledger.crops
        rows = [item for at in range(table.topLevelItemCount()) if (item := table.topLevelItem(at)) is not None]
        assert sum(int("".join(filter(str.isdigit, row.text(1)))) for row in rows) == sum(by_bed)


def _sight_is_of(window: MainWindow, plan: Plan) -> None:
    """What is selected is in the plan."""
    sight = window.sight
    assert sight.bed is None or any(bed.id == sight.bed for bed in plan.beds)
    where = {one.id: one.bed for one in plan.plantings}
    assert all(one in where for one in sight.chosen)
    assert sight.planting is None or where[sight.planting] == sight.bed
