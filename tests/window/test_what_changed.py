"""The sheet of what changed, from the window: the stakes that moved since the plan was saved last, and no others."""

from pathlib import Path

import pytest

from gardenplot.plan.edits import change_planting
from gardenplot.units import parse_length
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview
from tests.sheets.pdf_pages import pages_of, plain


def test_only_what_moved_since_it_was_saved_is_on_the_sheet(
    window: MainWindow, document: Document, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The pak choi of 40 ranks begins at 0.50 m instead of 0.30 m, so it ends at 10.50 m instead of 10.30 m.

    The stake at 0.30 m stays where it is, since the head margin ends there.
    """
    document.save(tmp_path / "plan.gardenplot")
    changed = window.registry.made("sheets.changed")
    changed.trigger()
    assert "no stake moves" in window.statusBar().currentMessage()
    document.change("Move", change_planting(document.plan, "p1", start=parse_length("50 cm")))
    shown: list[Preview] = []

    def keep(preview: Preview) -> int:
        shown.append(preview)
        return 0

    monkeypatch.setattr(Preview, "exec", keep)
    changed.trigger()
    (preview,) = shown
    (page,) = pages_of(preview.sheets.pdf)
    words = [plain(one.text) for one in page.words]
    # The bed's length stands in its heading.
    assert [word for word in words if word.endswith(" m") and word[0].isdigit()] == [
        "15.00 m", "0.50 m", "10.30 m", "10.50 m",
    ]  # fmt: skip
    assert "Stakes that stay: 0 at 0.00 m · 1 at 0.30 m" in " ".join(words)
    assert "Tunnel, east" in words
    assert "Field, upper" not in words


def test_of_a_plan_that_was_never_saved_nothing_can_be_told(window: MainWindow, document: Document) -> None:
    document.start(document.plan, kept=False)
    window.registry.made("sheets.changed").trigger()
    assert "never saved" in window.statusBar().currentMessage()
