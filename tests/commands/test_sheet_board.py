"""The length of a board, given to the command that writes sheets."""

from pathlib import Path

import pytest

from gardenplot.__main__ import main
from tests.sheets.pdf_pages import pages_of
from tests.sheets.strips_read import strips_in

PLAN = Path(__file__).parents[1] / "scenarios" / "s1.gardenplot"


@pytest.mark.parametrize(("board", "marks"), [((), 6), (("--board", "65 cm"), 3), (("--board", "2 ft"), 3)])
def test_strips_are_as_long_as_the_board_that_is_named(tmp_path: Path, board: tuple[str, ...], marks: int) -> None:
    out = tmp_path / "strips.pdf"
    assert main(["sheet", str(PLAN), str(out), "--what", "strips", *board]) == 0
    assert len(strips_in(pages_of(out.read_bytes()))[1].upper) == marks


def test_a_board_that_is_no_length_is_refused_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "strips.pdf"
    with pytest.raises(SystemExit) as stopped:
        main(["sheet", str(PLAN), str(out), "--what", "strips", "--board", "long"])
    assert stopped.value.code == 2
    assert "“long” is no length" in capsys.readouterr().err
    assert not out.exists()
