"""The command that writes sheets: which kinds, which beds, which scale, and words for what cannot be."""

from pathlib import Path

import pytest

from gardenplot.__main__ import main
from gardenplot.files import sample
from gardenplot.plan.file import read_plan
from tests.sheets.pdf_pages import bookmarks_of, pages_of

PLAN = sample("larch-bend.gardenplot")


def written(out: Path, *more: str) -> bytes:
    """What the command writes; it must end with status 0."""
    assert main(["sheet", str(PLAN), str(out), *more]) == 0
    return out.read_bytes()


def test_bed_sheets_are_written_unless_other_kinds_are_named(tmp_path: Path) -> None:
    marks = [words for words, _page in bookmarks_of(written(tmp_path / "a.pdf"))]
    assert "Bed sheets" not in marks
    assert len(marks) > 1
    assert "Dates by week" in pages_of(written(tmp_path / "b.pdf", "--what", "dates"))[0].text


def test_all_kinds_go_into_one_file_with_bookmarks(tmp_path: Path) -> None:
    marks = [words for words, _page in bookmarks_of(written(tmp_path / "a.pdf", "--what", "all"))]
    for kind in ("Bed sheets", "Drawing to scale", "Dates by week"):
        assert kind in marks


def test_only_the_beds_named_are_drawn_at_the_scale_named_with_strings_beside_the_rows(tmp_path: Path) -> None:
    bed = read_plan(PLAN).plan.beds[0]
    drawing = written(tmp_path / "a.pdf", "--what", "drawing", "--scale", "24", "--bed", bed.id)
    assert all("(1 : 24)" in page.text or "To scale 1 : 24" in page.text for page in pages_of(drawing))
    assert {words.partition(",")[0] for words, _page in bookmarks_of(drawing)} == {bed.name.partition(",")[0]}
    beside = written(tmp_path / "b.pdf", "--string", "2 in")
    assert any("left of the rows" in page.text for page in pages_of(beside))


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--what", "poems"), "poems"),
        (("--scale", "0"), "a scale is 1 to a number from 1 to"),
        (("--scale", "ten"), "ten"),
        (("--string", "soon"), "soon"),
        (("--string=-5 cm",), "-5 cm"),
    ],
)
def test_what_cannot_be_is_told_and_nothing_is_written(
    more: tuple[str, ...], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["sheet", str(PLAN), str(tmp_path / "a.pdf"), *more])
    assert ended.value.code == 2
    assert says in capsys.readouterr().err
    assert not (tmp_path / "a.pdf").exists()


def test_a_bed_that_is_not_in_the_plan_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", str(PLAN), str(tmp_path / "a.pdf"), "--bed", "no such"]) == 2
    assert "no such" in capsys.readouterr().err
    assert not (tmp_path / "a.pdf").exists()
