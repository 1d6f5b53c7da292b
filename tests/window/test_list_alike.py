"""What to buy and carry for the hand-worked jobs is the same in the window, by command and on paper."""

from pathlib import Path

import pytest

from gardenplot.__main__ import main
from gardenplot.sheets.paper import Paper
from gardenplot.window.main import MainWindow
from tests.drawing.hand_worked import hand_worked
from tests.journeys.person import plain
from tests.sheets.made import shopping_sheet
from tests.sheets.pdf_pages import pages_of
from tests.window.shared_window import window

__all__ = ["window"]
SCENARIOS = Path(__file__).resolve().parents[1] / "scenarios"


def squeezed(text: str) -> str:
    """Words without any space, which each of the three breaks and pads in its own way."""
    return "".join(plain(text).split())


@pytest.mark.parametrize("name", ["s1", "s2", "s3", "s4", "s5", "s6"])
def test_the_list_is_the_same_in_the_window_by_command_and_on_paper(
    window: MainWindow, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = hand_worked(name)
    window.document.start(plan)
    window.ledger.setCurrentWidget(window.ledger.supplies)
    table = window.ledger.supplies.table
    groups = [group for at in range(table.topLevelItemCount()) if (group := table.topLevelItem(at)) is not None]
    things = [one for group in groups for at in range(group.childCount()) if (one := group.child(at)) is not None]
    assert main(["supplies", str(SCENARIOS / f"{name}.gardenplot"), "--list"]) == 0
    said = squeezed(capsys.readouterr().out)
    printed = squeezed(" ".join(page.text for page in pages_of(shopping_sheet(plan, Paper.A4).pdf)))
    cells = [thing.text(column) for thing in things for column in (0, 1)]
    assert len(cells) >= 8
    for cell in cells:
        assert squeezed(cell) in said, cell
        assert squeezed(cell) in printed, cell
