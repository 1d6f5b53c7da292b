"""What is said about the covers of a bed and about how far its rows lie from its drip lines."""

from collections.abc import Mapping

from gardenplot.drawing.cautions import COVERS, FILM
from gardenplot.drawing.days import day_words
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import between
from gardenplot.layout import LaidOut
from gardenplot.plan import Cover, Plan, Sheeting, bed_of
from gardenplot.supplies import cover_cut
from gardenplot.units import Units
from gardenplot.units.figures import offset, span
from gardenplot.words import _, ngettext

SHEETINGS: Mapping[Sheeting, str] = {
    Sheeting.CLOTH: _("cloth"),
    Sheeting.FILM: _("clear film"),
    Sheeting.FILM_OVER_CLOTH: _("clear film over cloth"),
}


def cover_lines(plan: Plan, bed_id: str) -> tuple[str, ...]:
    """The covers of a bed under a heading, a line each, and what they do not bear; nothing where there are none."""
    here = [one for one in plan.covers if one.bed == bed_id]
    film = (FILM,) if any(one.sheeting.has_film for one in here) else ()
    return (_("Covers"), *(cover_words(plan, one) for one in here), COVERS, *film) if here else ()


def cover_words(plan: Plan, cover: Cover) -> str:
    """A cover in one line: "0.50 – 16.50 m, Wed 14 Apr to Fri 28 May, 15 hoops 1.14 m apart, 2 layers"."""
    units, cut = plan.place.units, cover_cut(bed_of(plan, cover.bed), cover)
    parts = [between(cover.start.nm, cover.end.nm, units)]
    if cover.sheeting.has_film:
        parts.append(SHEETINGS[cover.sheeting])
    if cover.on is not None and cover.off is not None:
        parts.append(_("{on} to {off}").format(on=day_words(cover.on), off=day_words(cover.off)))
    elif cover.on is not None:
        parts.append(_("from {on}").format(on=day_words(cover.on)))
    elif cover.off is not None:
        parts.append(_("until {off}").format(off=day_words(cover.off)))
    if cut.hoops is not None and cut.hoop_spacing is not None:
        apart = span(round(cut.hoop_spacing), units)
        parts.append(ngettext("{count} hoop", "{count} hoops {apart} apart", cut.hoops).format(
            count=cut.hoops, apart=apart
        ))  # fmt: skip
    if cover.layers > 1:
        parts.append(ngettext("{count} layer", "{count} layers", cover.layers).format(count=cover.layers))
    return ", ".join(parts)


def drip_lines(laid: LaidOut, look: dict[str, Look], units: Units) -> tuple[str, ...]:
    """How far each row along the bed lies from the nearest drip line, a line for each planting."""
    lines = [line.nm for line in laid.bed.drip_lines]
    if not lines:
        return ()
    found = []
    for layout in laid.layouts:
        if layout.grid.runs_across or layout.grid.turn is not None or not layout.rows:
            continue
        away = [str(offset(min(abs(row.offset - line) for line in lines), units)) for row in layout.rows]
        found.append(f"{look[layout.planting].letter}  {', '.join(away)}")
    return (_("Rows from the nearest drip line"), *found) if found else ()
