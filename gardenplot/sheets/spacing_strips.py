"""Spacing strips and templates at true size, to stick on a board: first what to make, then the pieces to cut out."""

from collections.abc import Iterable

from attrs import evolve, frozen
from reportlab.lib.units import mm

from gardenplot.drawing.board_words import (
    BEGIN_ANEW,
    HAS_RUNS,
    PLACES_KEPT,
    begins_words,
    blocks_words,
    counted_words,
    crops_words,
    edges_words,
    ends_words,
    left_out_words,
    ring_words,
    sides_words,
    strip_size,
    strip_title,
    template_size,
    template_title,
    template_use,
)
from gardenplot.drawing.letters import looks
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.spacing_boards import Board, LeftOut, Why, boards_of, usual_board
from gardenplot.drawing.spacing_marks import Anchor, Purpose, Strip, What
from gardenplot.plan import Plan
from gardenplot.sheets.board_list import Entry, add_board_list, list_pages
from gardenplot.sheets.board_page import FOOT, HEAD, SIDE, TAB, draw_board_foot, draw_board_head
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices, chosen
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import POINT_PER_MM, SIZES, Paper
from gardenplot.sheets.strip_piece import HEIGHT, Piece, Said, pieces_of
from gardenplot.sheets.strip_pieces import draw_piece
from gardenplot.sheets.template_tiles import Tiled, Words, draw_tile, tiled
from gardenplot.units import MM
from gardenplot.words import _, ngettext

_BETWEEN: float = 3.4 * mm
"""Points between the pieces of a page."""
_LEGEND = _("Cut on the outer line. Glue the next piece on the hatched edge, up to the thick line, join 1 to join 1.")
_TILE = _("tile {number} of {tiles}: {row} of {rows} from the top, {column} of {columns} from the left")
_OF_ROWS = (Purpose.ROWS, Purpose.RANKS, Purpose.RADII)
"""What strips mark that are laid on once for all rows."""
_MANY = 8
"""From so many pieces on, what joins lose is worth a measure."""


@frozen
class _Numbered:
    """A board with its number, cut into pieces or tiles."""

    number: int
    board: Board
    pieces: tuple[Piece, ...] = ()
    tiles: Tiled | None = None


@frozen
class _Set:
    """All that is printed: the boards with their numbers, and what is left out, in words."""

    boards: tuple[_Numbered, ...]
    left_out: tuple[str, ...]


def add_strips(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the strips and templates of the plantings of the chosen beds, after a list of what to make.

    Raises NothingToPrintError where nothing stands at a spacing that could be marked.
    """
    whole = _set_of(plan, said, choices, book.paper)
    if not whole.boards:
        raise NothingToPrintError(_("no planting has plants at a spacing, so there are no spacing strips"))
    pages = [*_strip_pages(whole.boards, book.paper)]
    _add_list(book, plan, said, whole, pages)
    last = len(pages) + sum(len(one.tiles.tiles) for one in whole.boards if one.tiles)
    for number, page in enumerate(pages):
        told(number, last)
        _add_page(book, plan, said, page)
    for one in whole.boards:
        if one.tiles is not None:
            _add_tiles(book, plan, said, one, one.tiles)


def _set_of(plan: Plan, said: About, choices: Choices, paper: Paper) -> _Set:
    look, units = looks(plan), plan.place.units
    found = boards_of(chosen(plan, choices), choices.board or usual_board(units))
    most = int((SIZES[paper][0] - 2 * SIDE - TAB) / POINT_PER_MM) * MM
    made: list[_Numbered] = []
    words = [left_out_words(plan, one, look) for one in found.left_out]
    for board in found.made:
        number = len(made) + 1
        if isinstance(board.what, Strip):
            pieces = pieces_of(board.what, _said(plan, said, board, board.what, number), most)
            made.append(_Numbered(number, board, pieces=pieces))
            continue
        tiles = tiled(board.what, paper)
        pages, plants = len(tiles.tiles), len(tiles.template.spots)
        if pages > plants:
            # Mostly blank paper: the strips mark the same with less.
            words.append(left_out_words(plan, LeftOut(Why.LARGE, board.plantings), look, pages, plants))
            continue
        made.append(_Numbered(number, board, tiles=tiles))
    return _Set(tuple(made), tuple(words))


def _said(plan: Plan, said: About, board: Board, strip: Strip, number: int) -> Said:
    blocks = blocks_words(plan, board.plantings, looks(plan))
    return Said(
        name=f"{number} · {crops_words(plan, board.crops)}: ",
        title=strip_title(strip, plan.place.units),
        begins=begins_words(strip, begins_late=board.begins_late),
        ends=ends_words(strip),
        sides=sides_words(strip),
        about=" · ".join((blocks, *_cautions(board), *said.said)),
        edges=edges_words(strip),
    )


def _cautions(board: Board) -> tuple[str, ...]:
    """What is not planted of all that is marked."""
    is_of_places = not isinstance(board.what, Strip) or board.what.purpose not in _OF_ROWS
    words = BEGIN_ANEW if board.what.anchor is Anchor.ROW else HAS_RUNS
    runs = (words,) if board.has_runs and is_of_places else ()
    return (*((PLACES_KEPT,) if board.keeps_places else ()), *runs)


def _strip_pages(boards: Iterable[_Numbered], paper: Paper) -> list[list[tuple[_Numbered, Piece]]]:
    """The pieces of all strips on pages, as many on each as have room."""
    every = [(one, piece) for one in boards for piece in one.pieces]
    room = SIZES[paper][1] - MARGIN - HEAD - FOOT
    most = int((room + _BETWEEN) // (HEIGHT + _BETWEEN))
    return [every[at : at + most] for at in range(0, len(every), most)]


def _add_list(book: Book, plan: Plan, said: About, whole: _Set, pages: list[list[tuple[_Numbered, Piece]]]) -> None:
    """The list of all boards, each with the pages on which its pieces or tiles will be."""
    entries = tuple(_entry(plan, one, book.paper) for one in whole.boards)
    if whole.left_out:
        entries = (*entries, Entry(0, _("Left out"), whole.left_out))
    at = book.page_number + list_pages(entries, book.paper)
    places: dict[int, tuple[int, int]] = {}
    for number, page in enumerate(pages, at):
        for one, _piece in page:
            places[one.number] = places.get(one.number, (number, 0))[0], number
    at += len(pages)
    for one in whole.boards:
        if one.tiles is not None:
            places[one.number] = at, at + len(one.tiles.tiles) - 1
            at += len(one.tiles.tiles)
    paged = ((entry, *places.get(entry.number, (0, 0))) for entry in entries)
    add_board_list(book, tuple(evolve(entry, page=page, last=last) for entry, page, last in paged), said)


def _entry(plan: Plan, one: _Numbered, paper: Paper) -> Entry:
    units, blocks = plan.place.units, counted_words(plan, one.board.plantings, looks(plan))
    what, late = one.board.what, one.board.begins_late
    if isinstance(what, Strip):
        count = len(one.pieces)
        pieces = ngettext("{count} piece", "{count} pieces", count).format(count=count)
        lines = (
            f"{strip_size(what, units)}, {pieces}; {begins_words(what, begins_late=late)}",
            *ring_words(what, units),
            *(words for words in (edges_words(what),) if words),
        )
        if any(mark.what is What.CENTRE for mark in what.marks):
            lines = (*lines, _("the mark with a bar is the centre line"))
        if count >= _MANY:
            lines = (*lines, _("many joins: measure the marks with a tape once it is glued"))
        title = strip_title(what, units)
    else:
        tiles = tiled(what, paper)
        count = len(tiles.tiles)
        pieces = ngettext("{count} tile", "{count} tiles", count).format(count=count)
        use = template_use(tiles.template, begins_late=late)
        lines = (f"{template_size(tiles.template, units)}, {pieces}", "; ".join(use))
        title = template_title(tiles.template, units)
    told = *lines, *_cautions(one.board), _("for {blocks}").format(blocks=blocks)
    return Entry(
        one.number, f"{crops_words(plan, one.board.crops)}: {title}", told, is_template=one.tiles is not None
    )


def _add_page(book: Book, plan: Plan, said: About, page: list[tuple[_Numbered, Piece]]) -> None:
    """A page of pieces."""
    canvas = book.lying()
    y = draw_board_head(book, _("Spacing strips, true size 1 : 1"), _which(page), plan.place.units)
    for _one, piece in page:
        if piece.number == 1:
            book.bookmark(f"{piece.said.name}{piece.said.title}")
        draw_piece(canvas, piece, SIDE, y, plan.place.units)
        y -= HEIGHT + _BETWEEN
    draw_board_foot(book, _LEGEND, said)
    book.end_page()


def _which(page: list[tuple[_Numbered, Piece]]) -> str:
    """The strips of a page: "strip 4", "strips 4–6"."""
    first, last = page[0][0].number, page[-1][0].number
    if first == last:
        return _("strip {number}").format(number=first)
    return _("strips {first}–{last}").format(first=first, last=last)


def _add_tiles(book: Book, plan: Plan, said: About, one: _Numbered, whole: Tiled) -> None:
    """A page for each tile of a template."""
    words = _template_words(plan, said, one, whole)
    for tile in whole.tiles:
        canvas = book.upright() if whole.upright else book.lying()
        which = _TILE.format(
            number=tile.number, tiles=len(whole.tiles), row=tile.row, rows=whole.rows, column=tile.column,
            columns=whole.columns,
        )  # fmt: skip
        title = _("Template, true size 1 : 1") + f"   {words.name}"
        y = draw_board_head(book, title, which, plan.place.units, both_ways=True)
        if tile.number == 1:
            book.bookmark(f"{words.name}: {words.title}")
        draw_tile(canvas, whole, tile, words, y)
        draw_board_foot(book, _LEGEND, said)
        book.end_page()


def _template_words(plan: Plan, said: About, one: _Numbered, whole: Tiled) -> Words:
    template, blocks = whole.template, blocks_words(plan, one.board.plantings, looks(plan))
    return Words(
        name=f"{one.number} · {crops_words(plan, one.board.crops)}",
        title=template_title(template, plan.place.units),
        use=template_use(template, begins_late=one.board.begins_late),
        about=" · ".join((*_cautions(one.board), *said.said, blocks)),
    )
