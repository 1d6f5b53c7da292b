"""Measure sheets on paper against floors taken in the same run.

    .venv/bin/python .dev/paper_benchmark.py            all rows, with their goals
    .venv/bin/python .dev/paper_benchmark.py --quick    few plants, to see that it runs; goals are not judged

The floor of the plants' marks is formatting the same numbers, compressing them and writing them down.
"""

import argparse
import zlib
from collections.abc import Iterator, Sequence
from io import BytesIO

from attrs import frozen
from measuring import Line, against, bare, race, within
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.marks import Plants, Shape
from gardenplot.drawing.style import Ink
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Bed, Crop, Plan, Planting
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import POINT_PER_MM, SIZES, Paper, load_face
from gardenplot.sheets.render import Frame, render
from gardenplot.units import CM, MM, Length, M, Units, length_of

BEDS = 20
_SCALE = POINT_PER_MM / 100


@frozen
class _Sizes:
    """How many beds of 1,000 plants, and how often each thing is timed."""

    beds: int
    turns: int


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table; 1 if the book of bed sheets is larger than it may be."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--quick", action="store_true", help="few plants; goals are not judged")
    quick = parser.parse_args(arguments).quick
    sizes = _Sizes(2, 1) if quick else _Sizes(BEDS, 9)
    for name, *cells in (("", "time", "floor", "ratio", "goal", ""), *_rows(sizes, judged=not quick)):
        print(f"{name:<60}" + "".join(f"{cell:>13}" for cell in cells), flush=True)
    size = len(printed(plan_of(sizes.beds), Paper.A4, [Kind.BEDS]).pdf)
    print(f"the book of bed sheets: {size / 1000:.0f} kB, at most 500 kB")
    return 0 if size <= 500_000 else 1


def _rows(sizes: _Sizes, *, judged: bool) -> Iterator[tuple[str, ...]]:
    for line in lines(sizes):
        verdict = ("met" if line.met else "MISSED") if judged else ""
        yield line.name, line.time, line.floor, line.ratio, line.goal, verdict


def plan_of(beds: int) -> Plan:
    """So many beds of 30 m with four rows of 250 plants each."""
    crop = Crop("leek", "Leek", _long(12 * CM), (_long(20 * CM),), edge=_long(10 * CM))
    return Plan(
        beds=tuple(Bed(f"b{one}", f"Bed {one}", _long(30 * M), _long(80 * CM)) for one in range(beds)),
        crops=(crop,),
        plantings=tuple(
            Planting(f"p{one}", f"b{one}", "leek", start=_long(0), length=_long(30 * M)) for one in range(beds)
        ),
    )


def _long(nm: int) -> Length:
    return length_of(nm, Units.METRIC)


def lines(sizes: _Sizes) -> Iterator[Line]:
    """The rows of the table."""
    plan = plan_of(sizes.beds)
    layouts = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
    count = sum(layout.plants for layout in layouts)
    load_face()
    marks, floor = race(sizes.turns, bare(lambda: marked(layouts)), bare(lambda: plainly(layouts)))
    yield against(f"marks of {count:,} plants on {sizes.beds} pages", marks, floor, 4)
    (book,) = race(sizes.turns, bare(lambda: printed(plan, Paper.A4, [Kind.BEDS])))
    yield within(f"the book of {sizes.beds} bed sheets", book, 1.0, floor)
    everything = [Kind.BEDS, Kind.DRAWING]
    (whole,) = race(max(1, sizes.turns // 3), bare(lambda: printed(plan, Paper.A4, everything)))
    yield within("the same with the drawing over pages", whole, 3.0, floor)


def marked(layouts: list[Layout]) -> bytes:
    """Pages with the marks of plants alone, as the sheets draw them."""
    content = BytesIO()
    page = Canvas(content, pagesize=SIZES[Paper.A4], invariant=1, pageCompression=1)
    for layout in layouts:
        render(page, (Plants(layout, 90.0, Ink.INK, Shape.DISC),), Frame(30, 400, _SCALE, _SCALE))
        page.showPage()
    page.save()
    return content.getvalue()


def plainly(layouts: list[Layout]) -> bytes:
    """The same numbers formatted, compressed and written, page by page."""
    content = BytesIO()
    for layout in layouts:
        places = (positions(layout) / MM * _SCALE).tolist()
        operators = "\n".join([f"q 1 0 0 1 {30 + x:.4f} {400 - y:.4f} cm /P Do Q" for x, y in places])
        content.write(zlib.compress(operators.encode()))
    return content.getvalue()


if __name__ == "__main__":
    raise SystemExit(main())
