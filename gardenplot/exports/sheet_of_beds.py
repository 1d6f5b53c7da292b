"""Where each bed lies when all of them are drawn on one sheet: one under another, heads in line."""

from attrs import frozen

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.covers import on_paper
from gardenplot.drawing.letters import looks
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan


@frozen
class Placed:
    """A bed's figure, its name and the mm from the top of the sheet to its base line."""

    figure: BedFigure
    name: str
    top: float


def placed(plan: Plan) -> tuple[Placed, ...]:
    """All beds, as far apart as the widest of them is wide, so that captions have room."""
    look = looks(plan)
    figures = [
        draw_bed(laid, None, look, plan.place.units, over=on_paper(plan, laid.bed.id)) for laid in lay_out_plan(plan)
    ]
    path = max((figure.width for figure in figures), default=0)
    tops, top = [], path / 2
    for figure in figures:
        tops.append(top)
        top += figure.width + path
    return tuple(Placed(figure, bed.name, top) for figure, bed, top in zip(figures, plan.beds, tops, strict=True))
