"""Any ground with any block in it, as plan files say it: rectangles, outlines, discs, boxes, with obstacles."""

from functools import cache

from hypothesis import assume
from hypothesis import strategies as st

from gardenplot.layout import LaidOut
from gardenplot.plan.simple import fault_of
from tests.layout.ground import Fields, laid_out

POINTS = st.lists(st.tuples(st.integers(0, 16), st.integers(0, 8)), min_size=3, max_size=7, unique=True)
Found = tuple[Fields, Fields, Fields]
"""A bed, a crop and a planting."""


@cache
def cm(least: int, most: int) -> st.SearchStrategy[str]:
    """Whole centimetres."""
    return st.integers(least, most).map("{} cm".format)


@st.composite
def outlined(draw: st.DrawFn) -> Fields:
    """Any simple outline on a grid of 25 cm."""
    corners = [(x * 25, y * 25) for x, y in draw(POINTS)]
    assume(fault_of(corners) is None)
    left, low = min(x for x, _y in corners), min(y for _x, y in corners)
    return {"outline": [[f"{x - left} cm", f"{y - low} cm"] for x, y in corners]}


@st.composite
def boxes(draw: st.DrawFn) -> Fields:
    """Boarded boxes with posts in their corners."""
    boards = {"board": draw(cm(1, 5)), "post": draw(cm(2, 12)), "width": draw(cm(60, 160))}
    return {"box": {"length": draw(cm(80, 400))} | boards}


@st.composite
def obstacles(draw: st.DrawFn) -> Fields:
    """A post or a case in the way."""
    spot: Fields = {"name": "tap", "x": draw(cm(0, 400)), "y": draw(cm(0, 200)), "keep_clear": draw(cm(0, 40))}
    if draw(st.booleans()):
        return spot | {"diameter": draw(cm(1, 40))}
    return spot | {"length": draw(cm(1, 90)), "width": draw(cm(1, 90))}


PLAIN = st.fixed_dictionaries({"length": cm(50, 400), "width": cm(20, 200)})
ROUND = st.fixed_dictionaries({"diameter": cm(50, 300)})


_SHAPES: st.SearchStrategy[Fields] = st.one_of(PLAIN, outlined(), ROUND, boxes())
_MARGINS: st.SearchStrategy[Fields] = st.just({}) | st.fixed_dictionaries(
    {"head_margin": cm(0, 20), "foot_margin": cm(0, 4)}
)


@cache
def _some_obstacles(most: int) -> st.SearchStrategy[list[Fields]]:
    return st.lists(obstacles(), max_size=most)


@st.composite
def grounds(draw: st.DrawFn, most: int = 2) -> Fields:
    """A bed of any shape with up to so many obstacles in it, perhaps with margins at its ends."""
    return draw(_SHAPES) | draw(_MARGINS) | {"obstacles": draw(_some_obstacles(most))}


_EDGES: st.SearchStrategy[Fields] = st.just({}) | st.fixed_dictionaries({"edge": cm(0, 25)})


@st.composite
def packets(draw: st.DrawFn) -> Fields:
    """A crop; without an edge of its own it keeps half its row spacing."""
    return {"in_row": draw(cm(7, 50)), "row_spacing": draw(cm(10, 60))} | draw(_EDGES)


ROWS = st.sampled_from(["straight", "staggered", "triangular"])
ALONG = st.fixed_dictionaries({"pattern": ROWS, "phase": st.sampled_from(["centred", "best"])})
ACROSS = st.fixed_dictionaries({"pattern": ROWS, "direction": st.just("across")})
TWIN = st.fixed_dictionaries({"pattern": st.just("twin"), "twin_spacing": cm(3, 9)})
OFFSETS = st.lists(st.integers(0, 150), min_size=1, max_size=4, unique=True).map(
    lambda some: {"pattern": "offsets", "offsets": [f"{one} cm" for one in sorted(some)]}
)
CELLS = st.fixed_dictionaries(
    {
        "pattern": st.just("cells"),
        "cell": cm(10, 50),
        "plants_per_cell": st.integers(1, 9),
        "phase": st.sampled_from(["centred", "best"]),
    }
)
RINGS = st.just({"pattern": "rings"})
BROADCAST = st.just({"pattern": "broadcast"})
ENDS: st.SearchStrategy[Fields] = st.one_of(st.just({}), st.fixed_dictionaries({"end_margin": cm(0, 20)}))


_LINES: st.SearchStrategy[Fields] = st.one_of(ALONG, ACROSS, TWIN, OFFSETS, CELLS)
_SPREAD: st.SearchStrategy[Fields] = st.sampled_from(({}, {"remainder": "spread"}))


@st.composite
def rows(draw: st.DrawFn) -> Fields:
    """Any pattern of rows or cells with what it keeps at its ends, perhaps with its remainder spread."""
    return draw(_LINES) | draw(ENDS) | draw(_SPREAD)


def some_length() -> st.SearchStrategy[Fields]:
    """The whole bed, or a stretch of it."""
    return st.just({}) | st.fixed_dictionaries({"from": cm(0, 100), "length": cm(5, 300)})


def only(found: Found) -> LaidOut:
    """Such a bed, laid out."""
    bed, crop, planting = found
    return laid_out(bed, crop, planting)
