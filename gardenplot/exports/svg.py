"""The drawing as SVG 1.1 with one user unit a millimetre of ground."""

from collections.abc import Iterator
from typing import assert_never
from xml.etree import ElementTree as ET

from gardenplot.drawing.marks import Hatch, Label, Line, Mark, Outline, Pen, Plants, Shape
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.style import LIGHT, Ink
from gardenplot.exports.sheet_of_beds import Placed, placed
from gardenplot.layout.positions import positions
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.units import MM

_MM_PER_WEIGHT = 4.0
"""Line widths are in ground millimetres: a row line of 4 mm is 0.2 mm at 1:20."""
_FONT = "DejaVu Sans Condensed, sans-serif"


def drawn(plan: Plan, told: Told = untold) -> bytes:
    """The SVG of a plan, drawn at 1:20."""
    beds = placed(plan)
    longest = max((bed.figure.length for bed in beds), default=1000)
    beside = longest * 0.01 + max((bed.figure.rim for bed in beds), default=0)
    width = longest + 2 * beside
    height = beds[-1].top + beds[-1].figure.width * 1.5 if beds else 1000
    root = ET.Element(
        "svg",
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"{-beside:g} 0 {width:g} {height:g}",
        width=f"{width / 20:g}mm",
        height=f"{height / 20:g}mm",
    )
    ET.SubElement(root, "title").text = one_line(plan.place.name)
    root.append(_hatches())
    for number, bed in enumerate(beds):
        told(number, len(beds))
        root.append(_bed(bed))
    text: bytes = ET.tostring(root, encoding="utf-8", xml_declaration=True)
    return text


def _bed(bed: Placed) -> ET.Element:
    group = ET.Element("g", transform=f"translate(0 {bed.top:g})")
    ET.SubElement(group, "title").text = one_line(bed.name)
    for mark in bed.figure.marks:
        group.extend(_elements(mark))
    return group


def _elements(mark: Mark) -> Iterator[ET.Element]:
    match mark:
        case Outline():
            yield from _outline(mark)
        case Plants():
            yield _plants(mark)
        case Line(start=start, end=end, pen=pen):
            ends = {"x1": _n(start[0]), "y1": _n(start[1]), "x2": _n(end[0]), "y2": _n(end[1])}
            yield ET.Element("line", ends | _pen(pen))
        case Label():
            yield _label(mark)
        case _:
            assert_never(mark)


def _outline(mark: Outline) -> Iterator[ET.Element]:
    points = " ".join(f"{x:g},{y:g}" for x, y in mark.points)
    fill = {"fill": LIGHT[mark.fill], "fill-opacity": _n(mark.tint)} if mark.fill else {"fill": "none"}
    yield ET.Element("polygon", {"points": points} | fill | (_pen(mark.pen) if mark.pen else {}))
    if mark.hatch:
        yield ET.Element("polygon", points=points, fill=f"url(#{mark.hatch})")


def _plants(mark: Plants) -> ET.Element:
    step = _step(mark.shape, mark.spread / 2)
    path = " ".join(f"M{x / MM:.10g} {y / MM:.10g}{step}" for x, y in positions(mark.layout).tolist())
    ink = LIGHT[mark.ink]
    fill = "none" if mark.shape in (Shape.RING, Shape.CROSS) else ink
    return ET.Element("path", {"d": path, "fill": fill, "stroke": ink, "stroke-width": _n(_MM_PER_WEIGHT)})


def _step(shape: Shape, radius: float) -> str:
    """A shape drawn from its centre by relative steps."""
    r, half = f"{radius:g}", radius * 0.8
    match shape:
        case Shape.DISC | Shape.RING:
            return f"m-{r} 0a{r} {r} 0 1 0 {2 * radius:g} 0a{r} {r} 0 1 0 -{2 * radius:g} 0z"
        case Shape.SQUARE:
            return f"m{-half:g} {-half:g}h{2 * half:g}v{2 * half:g}h{-2 * half:g}z"
        case Shape.DIAMOND:
            return f"m0 -{r}l{r} {r}l-{r} {r}l-{r} -{r}z"
        case Shape.TRIANGLE:
            return f"m0 -{r}l{r} {radius * 1.7:g}h{-2 * radius:g}z"
        case Shape.CROSS:
            return f"m{-half:g} {-half:g}l{2 * half:g} {2 * half:g}m0 {-2 * half:g}l{-2 * half:g} {2 * half:g}"


def _label(mark: Label) -> ET.Element:
    size = min(80.0, mark.room / (0.6 * max(1, len(mark.texts[0]))))
    text = ET.Element(
        "text",
        {
            "x": _n(mark.at[0]),
            "y": _n(mark.at[1] + size / 3),
            "fill": LIGHT[Ink.INK],
            "font-family": _FONT,
            "font-size": _n(size),
            "text-anchor": "middle",
            "font-weight": "bold" if mark.bold else "normal",
        },
    )
    text.text = one_line(mark.texts[0])
    return text


def _pen(pen: Pen) -> dict[str, str]:
    attributes = {"stroke": LIGHT[pen.ink], "stroke-width": _n(_MM_PER_WEIGHT * pen.weight)}
    return attributes | ({"stroke-dasharray": "40 30"} if pen.dashed else {})


def _hatches() -> ET.Element:
    defs = ET.Element("defs")
    for hatch, lines in (
        (Hatch.SLANTED, "M0 100L100 0"),
        (Hatch.CROSSED, "M0 100L100 0M0 0L100 100"),
        (Hatch.SOWN, "M20 20h1M70 45h1M40 80h1"),
    ):
        pattern = ET.SubElement(
            defs, "pattern", id=str(hatch), width="100", height="100", patternUnits="userSpaceOnUse"
        )
        stroke = {"stroke": LIGHT[Ink.EDGE], "stroke-width": "5", "stroke-linecap": "round"}
        ET.SubElement(pattern, "path", {"d": lines} | stroke)
    return defs


def _n(value: float) -> str:
    return f"{value:.10g}"
