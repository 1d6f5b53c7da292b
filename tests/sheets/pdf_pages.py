"""Pages of a PDF read back with another program's eyes: words, lines and plant marks where they lie on paper."""

import re
from ctypes import byref, c_float
from typing import Any

import pypdfium2
import pypdfium2.raw as pdfium
from attrs import frozen

POINT_PER_MM = 72 / 25.4
"""A point is 1/72 in (ISO 32000-1, 8.3.2.3)."""

Point = tuple[float, float]
Box = tuple[float, float, float, float]


@frozen
class Path:
    """The corners of a line or outline in points, from the lower left of the page."""

    corners: tuple[Point, ...]
    closed: bool

    @property
    def box(self) -> Box:
        """Left, bottom, right, top."""
        xs, ys = [x for x, _y in self.corners], [y for _x, y in self.corners]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def size(self) -> Point:
        """Width and height."""
        left, bottom, right, top = self.box
        return right - left, top - bottom


@frozen
class Words:
    """One line of text with its box, its size in points and whether its face is in the file."""

    text: str
    box: Box
    size: float
    embedded: bool


@frozen
class Page:
    """A page with all that is drawn on it."""

    size: Point
    text: str
    words: tuple[Words, ...]
    paths: tuple[Path, ...]
    marks: tuple[Point, ...]

    @property
    def ratio(self) -> int:
        """One to so many, as the page says it."""
        found = re.search(r"To scale .*?1 : (\d+)", self.text)
        assert found is not None
        return int(found[1])

    def outline(self, length_mm: float, width_mm: float) -> Box:
        """The box of the one outline that has that size on the ground, at the scale the page states."""
        wanted = [side / self.ratio * POINT_PER_MM for side in (length_mm, width_mm)]
        boxes = {
            path.box for path in self.paths
            if path.closed and all(abs(is_ - to_be) < 0.01 for is_, to_be in zip(path.size, wanted, strict=True))
        }  # fmt: skip
        (box,) = boxes
        return box


def pages_of(pdf: bytes) -> tuple[Page, ...]:
    """All pages of a PDF."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        return tuple(_page(page) for page in document)
    finally:
        document.close()


def bookmarks_of(pdf: bytes) -> list[tuple[str, int]]:
    """The bookmarks of a PDF, each with its page counted from 0."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        return [(mark.get_title(), mark.get_dest().get_index()) for mark in document.get_toc()]
    finally:
        document.close()


def plain(text: str) -> str:
    """A text with every run of spaces, thin ones too, as one."""
    return " ".join(text.split())


def _page(page: Any) -> Page:
    objects = list(page.get_objects(max_depth=1))
    text = page.get_textpage()
    words = [_words(one, text) for one in objects if one.type == pdfium.FPDF_PAGEOBJ_TEXT]
    numbered = {_origin(one) for one in objects if one.type == pdfium.FPDF_PAGEOBJ_FORM and _has_text(one)}
    return Page(
        size=page.get_size(),
        text=plain(text.get_text_range()),
        words=tuple(one for one in words if one.text),
        paths=tuple(_path(one) for one in objects if one.type == pdfium.FPDF_PAGEOBJ_PATH),
        marks=tuple(
            _origin(one) for one in objects
            if one.type == pdfium.FPDF_PAGEOBJ_FORM and _origin(one) not in numbered
        ),
    )  # fmt: skip


def _has_text(form: Any) -> bool:
    """Whether a form holds words, as the page's number does, and is no plant."""
    inside = (pdfium.FPDFFormObj_GetObject(form.raw, at) for at in range(pdfium.FPDFFormObj_CountObjects(form.raw)))
    return any(pdfium.FPDFPageObj_GetType(one) == pdfium.FPDF_PAGEOBJ_TEXT for one in inside)


def _words(one: Any, text: Any) -> Words:
    length = pdfium.FPDFTextObj_GetText(one.raw, text.raw, None, 0)
    buffer = (pdfium.FPDF_WCHAR * (length // 2))()
    pdfium.FPDFTextObj_GetText(one.raw, text.raw, buffer, length)
    said = plain(bytes(buffer).decode("utf-16-le").rstrip("\0"))
    size = c_float()
    pdfium.FPDFTextObj_GetFontSize(one.raw, byref(size))
    embedded = pdfium.FPDFFont_GetIsEmbedded(pdfium.FPDFTextObj_GetFont(one.raw)) == 1
    return Words(said, one.get_bounds(), size.value, embedded)


def _path(one: Any) -> Path:
    matrix, x, y, corners = one.get_matrix(), c_float(), c_float(), []
    at_x, at_y, segment = byref(x), byref(y), None
    for number in range(pdfium.FPDFPath_CountSegments(one.raw)):
        segment = pdfium.FPDFPath_GetPathSegment(one.raw, number)
        pdfium.FPDFPathSegment_GetPoint(segment, at_x, at_y)
        corners.append(matrix.on_point(x.value, y.value))
    return Path(tuple(corners), segment is not None and bool(pdfium.FPDFPathSegment_GetClose(segment)))


def _origin(one: Any) -> Point:
    """Where a mark that is drawn round its own origin lies."""
    matrix = one.get_matrix()
    return matrix.e, matrix.f
