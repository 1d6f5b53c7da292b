"""What stands in the cold edge of a tunnel and should not: trays that harden off, and tender crops.

That tender crops are kept out of it is common practice, no source.
"""

from collections.abc import Iterator
from functools import lru_cache

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import LaidOut, Layout
from gardenplot.layout.cold_edge import in_cold_edges
from gardenplot.plan import Bed, Plan, Standing, Tunnel
from gardenplot.season.frost import is_tender


def find_in_cold_edges(plan: Plan, laid_out: tuple[LaidOut, ...]) -> Iterator[Finding]:
    """Findings about blocks in a cold edge; `laid_out` are beds of the plan, those without a place are in none."""
    tunnels = tuple(tunnel for tunnel in plan.tunnels if tunnel.cold_edge is not None)
    places = {one.bed: one for one in plan.ground} if tunnels else {}
    for laid in laid_out:
        place = places.get(laid.bed.id)
        if place is None:
            continue
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.hardened is not None or is_tender(one.crop):
                yield from _cold(laid.bed, layout, place, tunnels)


@lru_cache(maxsize=256)
def _cold(bed: Bed, layout: Layout, place: Standing, tunnels: tuple[Tunnel, ...]) -> tuple[Finding, ...]:
    return tuple(
        Finding(
            Kind.COLD_EDGE, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=off,
            limit=tunnel.cold_edge.nm if tunnel.cold_edge else 0, lies_on=tunnel.id,
        )
        for tunnel, off in in_cold_edges(bed, layout.start, layout.end, place, tunnels)
    )  # fmt: skip
