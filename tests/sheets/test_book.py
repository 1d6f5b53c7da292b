"""Several kinds of sheet in one PDF: bookmarks, page numbers, nothing left of what there is nothing of."""

import re

import pytest
from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.sheets.book import NothingToPrintError
from gardenplot.sheets.choices import NAMES, Choices, Kind
from gardenplot.sheets.kinds import ADDED, printed
from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import hand_worked
from tests.sheets.pdf_pages import bookmarks_of, pages_of

SINGLE = [kind for kind in Kind if kind is not Kind.CHANGED]


def test_every_kind_has_a_name_and_what_adds_it() -> None:
    assert set(Kind) == set(NAMES) == set(ADDED)


@pytest.mark.parametrize("paper", Paper)
def test_a_book_holds_the_pages_of_all_its_kinds_in_order(paper: Paper) -> None:
    plan = hand_worked("s1")
    single = [len(pages_of(printed(plan, paper, [kind]).pdf)) for kind in SINGLE]
    book = printed(plan, paper, SINGLE)
    assert len(pages_of(book.pdf)) == sum(single)
    chapters = [mark for mark in bookmarks_of(book.pdf) if mark[0] in NAMES.values()]
    starts = [sum(single[:number]) for number in range(len(SINGLE))]
    assert chapters == [(NAMES[kind], start) for kind, start in zip(SINGLE, starts, strict=True)]


@pytest.mark.parametrize("kinds", [[Kind.BEDS], [Kind.DATES], SINGLE])
def test_every_page_says_which_it_is_and_of_how_many(kinds: list[Kind]) -> None:
    pages = pages_of(printed(hand_worked("s3"), Paper.A4, kinds).pdf)
    for number, page in enumerate(pages, 1):
        assert re.findall(r"page (\d+) of (\d+)", page.text) == [(str(number), str(len(pages)))]


def test_the_page_of_each_bed_is_known_in_a_book_too() -> None:
    plan = hand_worked("s3")
    book = printed(plan, Paper.A4, [Kind.DATES, Kind.BEDS])
    pages = pages_of(book.pdf)
    for bed in plan.beds:
        assert bed.name in pages[book.first_page[bed.id]].text


def test_kinds_of_which_there_is_nothing_are_left_out_of_a_book() -> None:
    plan = evolve(hand_worked("s2"), covers=())
    with pytest.raises(NothingToPrintError):
        printed(plan, Paper.A4, [Kind.CARDS])
    marks = [words for words, _page in bookmarks_of(printed(plan, Paper.A4, SINGLE).pdf)]
    assert NAMES[Kind.BEDS] in marks
    assert NAMES[Kind.CARDS] not in marks


def test_a_plan_with_nothing_in_it_has_no_book() -> None:
    with pytest.raises(PlanError, match="nothing to print"):
        printed(Plan(), Paper.A4, SINGLE)


def test_only_the_beds_that_were_chosen_are_printed() -> None:
    plan = hand_worked("s3")
    first, *_others = plan.beds
    sheets = printed(plan, Paper.A4, [Kind.BEDS], choices=Choices(beds=frozenset([first.id])))
    assert set(sheets.first_page) == {first.id}


def test_the_same_book_has_the_same_bytes() -> None:
    plan = hand_worked("s1")
    assert printed(plan, Paper.A4, SINGLE).pdf == printed(plan, Paper.A4, SINGLE).pdf
