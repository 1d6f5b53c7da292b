"""What is no longer shown is no longer held: pictures of beds that are gone, lines of tables that are gone."""

import gc

from PySide6.QtWidgets import QApplication, QTreeWidgetItem

from gardenplot.plan.edits import copy_bed, remove_bed
from gardenplot.window.main import MainWindow
from gardenplot.window.tables import Table, TableRow


def test_a_bed_that_is_gone_leaves_no_picture(window: MainWindow) -> None:
    document = window.document
    for _turn in range(5):
        document.change("Copy", copy_bed(document.plan, "b1"))
        window.canvas.view.fit(all_beds=True)
        QApplication.processEvents()
        copied = next(bed.id for bed in document.plan.beds if bed.id not in ("b1", "b2"))
        assert copied in window.canvas._pictures._pictures
        document.change("Remove", remove_bed(document.plan, copied))
        QApplication.processEvents()
    assert set(window.canvas._pictures._pictures) <= {"b1", "b2"}


def test_lines_below_a_line_that_stays_are_thrown_away(window: MainWindow) -> None:
    table = Table("Counts", ("crop", "plants"), (1,), window)

    def held() -> int:
        gc.collect()
        # By its type: to ask each of a million things whether it is an item would take seconds.
        return sum(issubclass(kind, QTreeWidgetItem) for kind in map(type, gc.get_objects()))

    bare = TableRow(("Bed", "0"))
    full = TableRow(("Bed", "3"), inner=tuple(TableRow((f"Crop {number}", "1")) for number in range(3)))
    table.show_rows([bare])
    before = held()
    for _turn in range(10):
        table.show_rows([full])
        table.show_rows([bare])
    assert held() == before
