"""The drawing as DXF in millimetres of ground, each role and each planting on a layer of its own."""

import io
from typing import assert_never

from ezdxf import units
from ezdxf.document import Drawing
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace

from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Label, Line, Outline, Plants
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.sayings import titled
from gardenplot.exports.sheet_of_beds import Placed, placed
from gardenplot.layout.positions import positions
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.units import MM

_FORBIDDEN = str.maketrans(dict.fromkeys('<>/\\":;?*|=`,', "_"))

_WITH_WRITING = 2
"""Writing the file takes about as long as drawing all beds."""


def drawn(plan: Plan, told: Told = untold) -> bytes:
    """The DXF of a plan; y runs up, so beds lie below one another at negative y."""
    document = new("R2010", setup=True)
    document.units = units.MM
    layers = {planting: _layer(titled(plan, planting, looks(plan))) for planting in looks(plan)}
    for name in ("BED", "STAKES", "TEXT", *layers.values()):
        if name not in document.layers:
            document.layers.add(name)
    beds = placed(plan)
    for number, bed in enumerate(beds):
        told(number, len(beds) * _WITH_WRITING)
        _bed(document, bed, layers)
    text = io.StringIO()
    document.write(text)
    return text.getvalue().encode("utf-8", "backslashreplace")


def _bed(document: Drawing, bed: Placed, layers: dict[str, str]) -> None:
    space = document.modelspace()
    space.add_text(one_line(bed.name), height=100, dxfattribs={"layer": "TEXT"}).set_placement((0, 60 - bed.top))
    for mark in bed.figure.marks:
        match mark:
            case Outline(points=points):
                corners = [(x, -bed.top - y) for x, y in points]
                space.add_lwpolyline(corners, close=True, dxfattribs={"layer": "BED"})
            case Plants():
                _plants(space, mark, bed.top, layers[mark.layout.planting])
            case Line(start=start, end=end):
                first, last = (start[0], -bed.top - start[1]), (end[0], -bed.top - end[1])
                space.add_line(first, last, dxfattribs={"layer": "STAKES"})
            case Label(at=at, texts=texts):
                text_mark = space.add_text(one_line(texts[0]), height=60, dxfattribs={"layer": "TEXT"})
                text_mark.set_placement((at[0], -bed.top - at[1]))
            case _:
                assert_never(mark)


def _plants(space: Modelspace, mark: Plants, top: float, layer: str) -> None:
    for x, y in positions(mark.layout).tolist():
        space.add_circle((x / MM, -top - y / MM), mark.spread / 2, dxfattribs={"layer": layer})


def _layer(name: str) -> str:
    """A layer name without the signs that DXF keeps for itself."""
    return one_line(name).translate(_FORBIDDEN)[:200]
