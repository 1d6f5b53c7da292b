"""Pages of one PDF: upright or lying, numbered "page 3 of 12", with bookmarks, on one canvas."""

from datetime import date
from io import BytesIO
from itertools import count
from zlib import crc32

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot import __version__
from gardenplot.drawing.days import day_words
from gardenplot.errors import PlanError
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.plan.file import text_of
from gardenplot.sheets.archive import make_archive
from gardenplot.sheets.paper import FACE, MISSING, SIZES, Paper, Sheets, as_drawn, load_face, printable
from gardenplot.words import _

_LANGUAGE = "en"
_NOTE_AT: tuple[float, float] = (10 * mm, 8 * mm)
"""From the left and from above, nearer to the upper edge than all else."""
_LACKS_LETTERS = _("{sign} stands for a sign that these sheets have no letter for; the plan has it.")


class NothingToPrintError(PlanError):
    """A plan has nothing of what a sheet would show."""


@frozen
class About:
    """What every page says of the plan it was printed from."""

    plan_name: str
    version: str
    printed: date | None

    @property
    def said(self) -> tuple[str, ...]:
        """Version, day of printing and name of the plan, as far as they are known."""
        day = _("printed {day}").format(day=day_words(self.printed)) if self.printed else ""
        parts = _("version {version}").format(version=self.version), day, self.plan_name
        return tuple(part for part in parts if part)


def about(plan: Plan, name: str = "", printed: date | None = None) -> About:
    """What the pages of a plan say of it; its place's name stands for a file's."""
    return About(name or plan.place.name, version_of(plan), printed)


def version_of(plan: Plan) -> str:
    """Four letters or figures that another version of a plan hardly shares."""
    return f"{crc32(text_of(plan).encode()) & 0xFFFF:04x}"


@frozen
class _Number:
    """A page's number in a size, and whether it goes on with the next page."""

    page: int
    size: float
    more: bool

    @property
    def form(self) -> str:
        return f"number-{self.page}"

    def said(self, pages: int) -> str:
        words = (
            _("page {number} of {pages}, goes on with page {next}") if self.more else _("page {number} of {pages}")
        )
        return words.format(number=self.page, pages=pages, next=self.page + 1)


class _Page(Canvas):  # type: ignore[misc]  # reportlab tells no types
    """A canvas that prints what the face has letters for, and knows whether that was all."""

    lacks_letters = False

    def drawString(self, x: float, y: float, text: str) -> None:  # noqa: N802  # reportlab's name
        """Draw words from a point on."""
        super().drawString(x, y, self._letters(text))

    def drawRightString(self, x: float, y: float, text: str) -> None:  # noqa: N802  # reportlab's name
        """Draw words that end at a point."""
        super().drawRightString(x, y, self._letters(text))

    def drawCentredString(self, x: float, y: float, text: str) -> None:  # noqa: N802  # reportlab's name
        """Draw words with their middle at a point."""
        super().drawCentredString(x, y, self._letters(text))

    def _letters(self, text: str) -> str:
        said = printable(text)
        self.lacks_letters = self.lacks_letters or MISSING in said
        return as_drawn(said)


class Book:
    """A PDF in the making; the same that is drawn on it gives the same bytes."""

    def __init__(self, paper: Paper, title: str) -> None:
        load_face()
        self.paper = paper
        self._content = BytesIO()
        self.canvas = _Page(
            self._content, pagesize=SIZES[paper], invariant=1, pageCompression=1, lang=_LANGUAGE,
            initialFontName=FACE, pdfVersion=(1, 4),
        )  # fmt: skip
        self.canvas.setTitle(one_line(title))
        self.canvas.setCreator(f"gardenplot {__version__}")
        self.canvas.setSubject(_("Sheets for the beds of a market garden"))
        self.canvas.setAuthor("")
        make_archive(self.canvas, _LANGUAGE)
        self._first_page: dict[str, int] = {}
        self._numbers: list[_Number] = []
        self._anchors, self._chapter, self._depth = count(), "", 0

    def lying(self) -> Canvas:
        """The canvas, its next page in landscape."""
        self.canvas.setPageSize(SIZES[self.paper])
        return self.canvas

    def upright(self) -> Canvas:
        """The canvas, its next page in portrait."""
        width, height = SIZES[self.paper]
        self.canvas.setPageSize((height, width))
        return self.canvas

    @property
    def page_number(self) -> int:
        """The number of the page that is drawn, from 1."""
        return int(self.canvas.getPageNumber())

    def chapter(self, words: str) -> None:
        """Bookmarks from here on stand below one of the first page that comes."""
        self._chapter, self._depth = words, 0

    def bookmark(self, words: str, thing: str = "") -> None:
        """A bookmark of this page; the first page of a thing is known by the thing's id."""
        self._begin_chapter()
        self._outline(words)
        if thing:
            self._first_page.setdefault(thing, self.page_number - 1)

    def _begin_chapter(self) -> None:
        if self._chapter:
            self._outline(self._chapter)
            self._chapter, self._depth = "", 1

    def _outline(self, words: str) -> None:
        anchor = f"anchor-{next(self._anchors)}"
        self.canvas.bookmarkPage(anchor)
        self.canvas.addOutlineEntry(words, anchor, self._depth, closed=0)

    @property
    def is_empty(self) -> bool:
        """Whether no page has been ended."""
        return self.page_number == 1

    def number_page(self, right: float, base: float, size: float, *, more: bool = False) -> None:
        """Put "page 3 of 12" on this page, with its end at a point; it is written when all pages are known."""
        number = _Number(self.page_number, size, more)
        self._numbers.append(number)
        self.canvas.saveState()
        self.canvas.translate(right, base)
        self.canvas.doForm(number.form)
        self.canvas.restoreState()

    def end_page(self) -> None:
        """End the page."""
        self._begin_chapter()
        if self.canvas.lacks_letters:
            self.canvas.setFont(FACE, 8)
            left, down = _NOTE_AT
            self.canvas.drawString(left, self.canvas._pagesize[1] - down, _LACKS_LETTERS.format(sign=MISSING))
            self.canvas.lacks_letters = False
        self.canvas.showPage()

    def sheets(self) -> Sheets:
        """The PDF as it is to be kept; nothing can be drawn after it."""
        pages = self.page_number - 1
        for number in self._numbers:
            said = number.said(pages)
            width = pdfmetrics.stringWidth(said, FACE, number.size)
            self.canvas.beginForm(number.form, -width - 1, -number.size, 1, number.size)
            self.canvas.setFont(FACE, number.size)
            self.canvas.drawRightString(0, 0, said)
            self.canvas.endForm()
        self.canvas.save()
        return Sheets(self._content.getvalue(), self._first_page)
