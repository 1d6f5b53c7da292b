"""What stands against trays that harden off: too few or too many of them."""

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Plan
from gardenplot.supplies import raised_for


def find_trays(plan: Plan, laid_out: tuple[LaidOut, ...]) -> tuple[Finding, ...]:
    """Findings about all blocks of trays; `laid_out` are the plan's beds."""
    if all(one.hardens is None for one in plan.plantings):
        return ()
    layouts = {layout.planting: layout for laid in laid_out for layout in laid.layouts}
    found: list[Finding] = []
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.hardened is None:
                continue
            needed = raised_for(one.hardened, layouts[one.hardened.planting.id]).trays
            if needed is not None and needed != layout.plants:
                found.append(_trays(layout, needed))
    return tuple(found)


def _trays(layout: Layout, needed: int) -> Finding:
    return Finding(
        Kind.TRAYS, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=layout.plants,
        limit=needed,
    )  # fmt: skip
