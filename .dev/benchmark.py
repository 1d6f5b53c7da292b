"""Measure layouts against floors taken in the same run: bare numpy arrays, and what shapely takes on its own.

    .venv/bin/python .dev/benchmark.py            all rows, with their goals
    .venv/bin/python .dev/benchmark.py --quick    tiny sizes, to see that it runs; goals are not judged

Every time is the best of several turns, each on a new plan with all caches empty; what is compared takes turns.
"""

import argparse
import os
import platform
import sys
import tracemalloc
from collections.abc import Iterator, Sequence
from functools import partial
from math import cos, isqrt, pi, sin
from pathlib import Path

import numpy as np
import shapely
from attrs import frozen
from best_phase import best_phases
from measuring import Line, Runner, against, bare, faster, forget, race, within
from numpy.typing import NDArray

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.layout.along import first_in_row
from gardenplot.layout.outline import runs_across
from gardenplot.layout.positions import positions
from gardenplot.plan import Bed, Crop, Obstacle, Pattern, Plan, Planting
from gardenplot.plan.simple import fault_of
from gardenplot.units import CM, MM, Length, M, Units, length_of

Corners = tuple[tuple[int, int], ...]
Places = NDArray[np.int64]

IN_ROW, BETWEEN, EDGE = 10 * CM, 20 * CM, 10 * CM
"""Ten plants in a row for one across, in a bed five times as long as wide."""


@frozen
class Sizes:
    """How much is laid out: plants in one bed, beds that share as many, beds that grow, points asked one by one."""

    plants: int = 100_000
    beds: int = 200
    growing: tuple[int, ...] = (1_000, 10_000, 100_000, 1_000_000)
    sample: int = 2_000
    turns: int = 25
    judged: bool = True


QUICK = Sizes(plants=1_000, beds=4, growing=(100, 1_000), sample=20, turns=1, judged=False)


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the machine and the table; 1 if places differ from what shapely says, whatever the times."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--quick", action="store_true", help="tiny sizes; goals are not judged")
    sizes = QUICK if parser.parse_args(arguments).quick else Sizes()
    print(machine())
    print(written("", "time", "floor", "ratio", "goal", ""))
    for section in SECTIONS:
        for line in section(sizes):
            verdict = ("met" if line.met else "MISSED") if sizes.judged else ""
            print(written(line.name, line.time, line.floor, line.ratio, line.goal, verdict), flush=True)
    wrong = [name for name, corners, obstacles in shapes(sizes.plants) if not as_shapely_says(corners, obstacles)]
    print("every place as shapely says" if not wrong else f"PLACES DIFFER FROM SHAPELY: {', '.join(wrong)}")
    return 1 if wrong else 0


def written(name: str, *cells: str) -> str:
    """A row of the table."""
    return f"{name:<60}" + "".join(f"{cell:>13}" for cell in cells)


def machine() -> str:
    """What it ran on."""
    cpuinfo = Path("/proc/cpuinfo")
    models = [row for row in cpuinfo.read_text().splitlines() if "model name" in row] if cpuinfo.exists() else []
    cpu = models[0].partition(":")[2].strip() if models else platform.processor() or platform.machine()
    versions = f"Python {platform.python_version()}, numpy {np.__version__}, shapely {shapely.__version__}"
    return f"{cpu}, {os.cpu_count()} cores, {platform.system()}, {versions}"


def places_of(plan: Plan) -> tuple[tuple[LaidOut, ...], list[Places]]:
    """All layouts of a plan with the places of their plants: what the benchmark is about."""
    laid = lay_out_plan(plan)
    return laid, [positions(layout) for one in laid for layout in one.layouts]


def long(nm: int) -> Length:
    """A length from its nanometres."""
    return length_of(nm, Units.METRIC)


def rectangle(number: int, plants: int, larger: int = 0) -> Bed:
    """A bed for about so many plants, ten in a row for one across; `larger` nm both ways set it apart from others."""
    rows = max(2, isqrt(plants // 10))
    length, width = -(-plants // rows) * IN_ROW + larger, rows * BETWEEN + larger
    return Bed(f"b{number}", f"Bed {number}", long(length), long(width))


def outlined(number: int, corners: Corners, obstacles: tuple[Obstacle, ...]) -> Bed:
    """A bed with an outline."""
    length, width = long(max(x for x, _y in corners)), long(max(y for _x, y in corners))
    outline = tuple((long(x), long(y)) for x, y in corners)
    return Bed(f"b{number}", f"Bed {number}", length, width, outline=outline, obstacles=obstacles)


def planted(beds: Sequence[Bed], pattern: Pattern = Pattern.STRAIGHT, margin: Length | None = None) -> Plan:
    """A plan whose beds are all full of one crop."""
    crop = Crop("leek", "Leek", long(IN_ROW), (long(BETWEEN),), edge=long(EDGE))
    ones = (Planting(f"p-{bed.id}", bed.id, crop.id, pattern=pattern, end_margin=margin) for bed in beds)
    return Plan(beds=tuple(beds), crops=(crop,), plantings=tuple(ones))


def on_lattice(beds: Sequence[Bed]) -> Plan:
    """A plan whose plants all stand on one lattice, right up to the outline: what shapely can be asked about."""
    return planted(beds, Pattern.STAGGERED, long(0))


def l_shape(plants: int, longer: int = 0) -> Corners:
    """An L in a box for so many plants; `longer` nm sets one apart from the next."""
    bed = rectangle(0, plants)
    length, width = bed.length.nm + longer, bed.width.nm
    return ((0, 0), (length, 0), (length, width // 2), (length // 3, width // 2), (length // 3, width), (0, width))


def circle(plants: int, corners: int = 129) -> Corners:
    """A circle in a box for so many plants."""
    radius = isqrt(plants * IN_ROW * BETWEEN) // 2
    turns = (2 * pi * number / corners for number in range(corners))
    points = [(round(radius * (1 + cos(turn))), round(radius * (1 + sin(turn)))) for turn in turns]
    left, low = min(x for x, _y in points), min(y for _x, y in points)
    return tuple((x - left, y - low) for x, y in points)


def obstacles_in(corners: Corners, count: int) -> tuple[Obstacle, ...]:
    """Posts and boxes by turns along the lower half of an outline, with 15 cm to keep clear."""
    length, width = max(x for x, _y in corners), max(y for _x, y in corners)
    found = []
    for number in range(count):
        x, y = (2 * number + 1) * length // (2 * count) + MM, width * (number % 3 + 1) // 8 + MM
        at = partial(Obstacle, f"obstacle {number}", long(x), long(y), keep_clear=long(15 * CM))
        found.append(at(length=long(70 * CM), width=long(40 * CM)) if number % 2 else at(diameter=long(50 * CM)))
    return tuple(found)


def shapes(plants: int) -> list[tuple[str, Corners, tuple[Obstacle, ...]]]:
    """The free outlines, by name, with what stands in them."""
    angle, ring = l_shape(plants), circle(plants)
    return [
        ("L", angle, ()),
        ("circle of 129 corners", ring, ()),
        ("L with 6 obstacles", angle, obstacles_in(angle, 6)),
    ]


def lattice(plan: Plan) -> Places:
    """All places that the one block of a plan would have if its bed were a box."""
    (laid,) = lay_out_plan(plan)
    grid, rows = laid.layouts[0].grid, []
    for number in range(grid.rows):
        first = first_in_row(grid.pattern, number, grid.in_row, grid.ends)
        readings = np.arange(first, laid.bed.length.nm + 1, grid.in_row, dtype=np.int64)
        rows.append(np.column_stack((readings, np.full_like(readings, grid.edge + number * grid.between))))
    return np.concatenate(rows)


def bare_array(rows: int, in_row: int) -> Places:
    """The places of a rectangle and nothing else: two readings a plant, written once."""
    places = np.empty((rows, in_row, 2), dtype=np.int64)
    places[:, :, 0] = np.arange(in_row, dtype=np.int64) * IN_ROW + IN_ROW // 2
    places[:, :, 1] = (np.arange(rows, dtype=np.int64) * BETWEEN + BETWEEN // 2)[:, np.newaxis]
    return places.reshape(-1, 2)


def bare_staggered(beds: Sequence[Bed]) -> list[Places]:
    """The bare arrays of staggered rows, a pair at a time: one from the head on, one half a spacing further."""
    found = []
    for bed in beds:
        pairs, in_row = bed.width.nm // BETWEEN // 2, bed.length.nm // IN_ROW
        places = np.empty((pairs, 2 * in_row - 1, 2), dtype=np.int64)
        places[:, :in_row, 0] = np.arange(in_row, dtype=np.int64) * IN_ROW + IN_ROW // 2
        places[:, in_row:, 0] = np.arange(1, in_row, dtype=np.int64) * IN_ROW
        offsets = (np.arange(pairs, dtype=np.int64) * 2 * BETWEEN)[:, np.newaxis]
        places[:, :in_row, 1], places[:, in_row:, 1] = offsets + BETWEEN // 2, offsets + 3 * BETWEEN // 2
        found.append(places.reshape(-1, 2))
    return found


def bare_arrays(beds: Sequence[Bed]) -> list[Places]:
    """The bare arrays of rectangular beds."""
    return [bare_array(bed.width.nm // BETWEEN, bed.length.nm // IN_ROW) for bed in beds]


def zone(corners: Corners, obstacles: Sequence[Obstacle], quarter: int = 16) -> shapely.Geometry:
    """Where plants may stand as shapely sees it, in nm: less the edge distance across the bed, less the obstacles."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    edges = [
        shapely.MultiPoint([(x, y + away) for x, y in side for away in (-EDGE, EDGE)]).convex_hull for side in sides
    ]
    blocked = [_kept_clear(one, quarter) for one in obstacles]
    return shapely.Polygon(corners).difference(shapely.union_all(edges)).difference(shapely.union_all(blocked))


def _kept_clear(one: Obstacle, quarter: int) -> shapely.Geometry:
    x, y, clear = one.x.nm, one.y.nm, one.keep_clear.nm if one.keep_clear else 0
    if one.diameter is not None:
        return shapely.Point(x, y).buffer(one.diameter.nm / 2 + clear, quad_segs=quarter)
    half, beside = ((side.nm / 2 if side else 0) for side in (one.length, one.width))
    return shapely.box(x - half, y - beside, x + half, y + beside).buffer(clear, quad_segs=quarter)


def as_shapely_says(corners: Corners, obstacles: tuple[Obstacle, ...]) -> bool:
    """Whether each place of the lattice is taken just where shapely has it in the zone, the zone's edge included.

    contains_xy leaves the edge out, hence the buffer of 1 µm; circles get so many corners that they lose less.
    """
    plan = on_lattice([outlined(0, corners, obstacles)])
    (places,), candidates = places_of(plan)[1], lattice(plan)
    inside = shapely.contains_xy(zone(corners, obstacles, 1024).buffer(1000), *candidates.T.astype(float))
    return bool(len(places)) and np.array_equal(places, candidates[inside])


def one_rectangle(sizes: Sizes) -> Iterator[Line]:
    """A bed without outline, its counts from closed formulas, against its bare array."""
    beds = [rectangle(0, sizes.plants)]
    for pattern, places in ((Pattern.STRAIGHT, bare_arrays), (Pattern.STAGGERED, bare_staggered)):
        floor = bare(partial(places, beds))
        ours, least = race(sizes.turns, Runner(partial(planted, beds, pattern), places_of), floor)
        yield against(f"{sizes.plants:,} plants, one rectangle, {pattern} / bare array", ours, least, 3)


def many_beds(sizes: Sizes) -> Iterator[Line]:
    """A whole farm at once: rectangles of ten sizes, and of as many sizes as beds; then free outlines, each with two
    obstacles and unlike all others."""
    each = sizes.plants // sizes.beds
    for differ, alike in (("ten sizes", 10), ("no two alike", sizes.beds)):
        beds = [rectangle(number, each, number % alike * MM) for number in range(sizes.beds)]
        ours, floor = race(sizes.turns, Runner(partial(planted, beds), places_of), bare(partial(bare_arrays, beds)))
        name = f"{plants_of(planted(beds)):,} plants, {sizes.beds} rectangles, {differ}"
        yield within(f"{name} / bare arrays", ours, 5e-3, floor)
    angles = [l_shape(2 * each, number * MM) for number in range(sizes.beds)]
    free = [outlined(number, corners, obstacles_in(corners, 2)) for number, corners in enumerate(angles)]
    (ours,) = race(sizes.turns, Runner(partial(planted, free), places_of))
    yield within(f"{plants_of(planted(free)):,} plants, {sizes.beds} L with 2 obstacles", ours, 50e-3)


def free_outlines(sizes: Sizes) -> Iterator[Line]:
    """Free outlines against shapely on the same lattice: all its points at once, and one by one."""
    for name, corners, obstacles in shapes(sizes.plants):
        ready = partial(on_lattice, [outlined(0, corners, obstacles)])
        candidates, ground = lattice(ready()), zone(corners, obstacles)
        all_at_once = partial(shapely.contains_xy, ground, *candidates.T.astype(float))
        ours, floor = race(sizes.turns, Runner(ready, places_of), bare(all_at_once))
        yield against(f"{len(candidates):,} places, {name} / contains_xy", ours, floor, 1.5)
        some = candidates[:: max(1, len(candidates) // sizes.sample)]
        (slow,) = race(max(1, sizes.turns // 5), bare(partial(one_by_one, ground, some)))
        slow *= len(candidates) / len(some)
        yield faster(f"{len(candidates):,} places, {name} / point by point", ours, slow, 50)


def one_by_one(ground: shapely.Geometry, candidates: Places) -> list[bool]:
    """Whether the ground holds each place, asked in a plain loop."""
    return [ground.covers(shapely.Point(x, y)) for x, y in candidates.tolist()]


def plants_of(plan: Plan) -> int:
    """All plants that have a place."""
    return sum(len(places) for places in places_of(plan)[1])


def growth(sizes: Sizes) -> Iterator[Line]:
    """Ten times the plants: no more time for each, a tenth for noise apart, and little memory for each."""
    before = float("inf")
    for plants in sizes.growing:
        one = Runner(partial(planted, [rectangle(0, plants)]), places_of)
        (ours,) = race(sizes.turns, one)
        count = plants_of(one.ready())
        held = bytes_at_most(one) / count
        took = ours / count * 1e9
        yield Line(f"{count:,} plants, time for each", f"{took:.2f} ns", "", "", "not growing", took <= 1.1 * before)
        yield Line(f"{count:,} plants, memory for each", f"{held:.1f} B", "", "", "<= 100 B", held <= 100)
        before = took


def bytes_at_most(runner: Runner) -> int:
    """The most memory that one run takes at any moment, with nothing remembered from before."""
    plan = runner.ready()
    forget()
    tracemalloc.start()
    try:
        kept = runner.run(plan)
        peak = tracemalloc.get_traced_memory()[1]
        del kept
    finally:
        tracemalloc.stop()
    return peak


def outlines(sizes: Sizes) -> Iterator[Line]:
    """Rows of outlines with more and more corners, slicing included, and the check that an outline is simple."""
    per_corner = 20e-6 / 6
    for corners in (l_shape(sizes.plants), circle(sizes.plants), circle(sizes.plants, 500)):
        offsets = range(EDGE, max(y for _x, y in corners) - EDGE, BETWEEN)
        (took,) = race(sizes.turns, bare(partial(all_runs, corners, offsets)))
        yield within(f"a row of {len(corners)} corners", took / len(offsets), per_corner * len(corners))
    for name, corners in (("circle", circle(sizes.plants, 500)), ("comb", comb(500))):
        (took,) = race(sizes.turns, bare(partial(fault_of, corners)))
        yield within(f"whether a {name} of {len(corners)} corners is simple", took, 20e-3)


def phases(sizes: Sizes) -> Iterator[Line]:
    """Rows and cells shifted so that their ground holds the most plants."""
    yield from best_phases(few=not sizes.judged)


def all_runs(corners: Corners, offsets: Sequence[int]) -> int:
    """Every row of an outline."""
    return sum(len(runs_across(corners, offset - EDGE, offset + EDGE)) for offset in offsets)


def comb(corners: int) -> Corners:
    """Slanting teeth side by side, so that sides are near many others."""
    teeth = [(number * CM + number % 2 * 10 * M, number % 2 * 10 * M) for number in range(corners - 2)]
    return (*teeth, (corners * CM + 10 * M, -M), (0, -M))


SECTIONS = (one_rectangle, many_beds, free_outlines, growth, outlines, phases)
"""What is measured, in the order of the table: each gives its rows for the sizes it is told, and knows no other."""


if __name__ == "__main__":
    sys.exit(main())
