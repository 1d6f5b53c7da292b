"""What stands against trays that harden off: too few or too many of them, or the cold edge of a tunnel.

Trigonometry works in floats; less than a millimetre counts as nothing.
"""

from collections.abc import Iterator
from functools import lru_cache

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Bed, Plan, Standing, Tunnel
from gardenplot.plan.ground import frame_of
from gardenplot.supplies import raised_for
from gardenplot.units import MM


def find_trays(plan: Plan, laid_out: tuple[LaidOut, ...]) -> tuple[Finding, ...]:
    """Findings about all blocks of trays; `laid_out` are the plan's beds."""
    if all(one.hardens is None for one in plan.plantings):
        return ()
    layouts = {layout.planting: layout for laid in laid_out for layout in laid.layouts}
    places = {one.bed: one for one in plan.ground}
    found: list[Finding] = []
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.hardened is None:
                continue
            needed = raised_for(one.hardened.crop, layouts[one.hardened.planting.id]).trays
            if needed is not None and needed != layout.plants:
                found.append(_at(Kind.TRAYS, layout, layout.plants, needed))
            place = places.get(laid.bed.id)
            if place is not None:
                found += _cold(laid.bed, layout, place, plan.tunnels)
    return tuple(found)


def _at(kind: Kind, layout: Layout, amount: int, limit: int, lies_on: str | None = None) -> Finding:
    return Finding(
        kind, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=amount, limit=limit,
        lies_on=lies_on,
    )  # fmt: skip


@lru_cache(maxsize=256)
def _cold(bed: Bed, layout: Layout, place: Standing, tunnels: tuple[Tunnel, ...]) -> tuple[Finding, ...]:
    return tuple(_in_cold_edges(bed, layout, place, tunnels))


def _in_cold_edges(bed: Bed, layout: Layout, place: Standing, tunnels: tuple[Tunnel, ...]) -> Iterator[Finding]:
    """How near trays come to a wall of the tunnel that they stand in, where that is its cold strip."""
    frame, width = frame_of(place), bed.width.nm
    corners = [frame.to_ground(x, y) for x in (layout.start, layout.end) for y in (0, width)]
    for tunnel in tunnels:
        if tunnel.cold_edge is None:
            continue
        inside, (length, across) = frame_of(tunnel), (tunnel.length.nm, tunnel.width.nm)
        off = [min(x, length - x, y, across - y) for x, y in (inside.from_ground(*corner) for corner in corners)]
        if min(off) > -MM and round(min(off)) + MM <= tunnel.cold_edge.nm:
            yield _at(Kind.COLD_EDGE, layout, round(max(0.0, min(off))), tunnel.cold_edge.nm, tunnel.id)
