"""Beside the stake table: the drip lines of a bed, and what its covers lie over, from when until when."""

from collections.abc import Iterator

from gardenplot.drawing.carried import covers_over
from gardenplot.drawing.covers import drip_runs
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import titled
from gardenplot.layout import LaidOut, Layout
from gardenplot.layout.staked import staked
from gardenplot.plan import Cover, Plan
from gardenplot.sheets.flow import as_typed
from gardenplot.sheets.section import Section, heading, measured, offsets, sentence, space, stacked
from gardenplot.supplies import cover_cut
from gardenplot.units import CM, FOOT, INCH, Units
from gardenplot.units.figures import offset, span, tape
from gardenplot.words import _, ngettext

_MOST_HOOPS = 40
"""More readings of hoops go on in a section of their own."""
_READ = {Units.METRIC: CM, Units.FEET_AND_INCHES: INCH // 4, Units.DECIMAL_FEET: FOOT // 100}
"""The finest step in nm that tape readings on the sheet have."""


def drip_sections(plan: Plan, laid: LaidOut) -> tuple[Section, ...]:
    """How many drip lines a bed has, where they lie across it, and from where to where they reach along the tape."""
    bed, units = laid.bed, plan.place.units
    across = sorted(line.nm for line in bed.drip_lines)
    runs = [run for line in across for run in drip_runs(bed, line)]
    if not runs:
        return ()
    name = ngettext("{count} drip line", "{count} drip lines", len(across)).format(count=len(across))
    first, last = (tape(at, units).number for at in (min(run[0] for run in runs), max(run[1] for run in runs)))
    reach = heading(name, _(", tape {first} to {last}"), first=first, last=last)
    return (stacked(reach, offsets(across, bed.width.nm, units), space(4)),)


def cover_sections(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look]
) -> Iterator[Section]:
    """Each cover over a bed in a turn: its days, the blocks under it, how deep it stands, how far it reaches."""
    for cover in covers_over(plan, laid, layouts):
        under = ", ".join(_under(plan, laid, layouts, look, cover))
        over = _(" over {blocks}").format(blocks=as_typed(under)) if under else ""
        first, *further = _hoops(laid, cover, plan.place.units) or [space(0)]
        lies = _lies(laid, cover, plan.place.units)
        yield stacked(heading(_cover_title(cover), over), first, *lies, space(5))
        for more in further:
            yield stacked(heading(_("Cover, continued")), more, space(5))


def _under(
    plan: Plan, laid: LaidOut, layouts: tuple[Layout, ...], look: dict[str, Look], cover: Cover
) -> Iterator[str]:
    """The blocks that stand under a cover on any of its days: "A Broccoli", "part of B Beets"."""
    dates = {one.planting.id: one.dates for one in laid.grown}
    for layout in layouts:
        start, end = staked(laid.bed, layout)
        begins, out = dates[layout.planting].in_ground, dates[layout.planting].out
        too_late = cover.off is not None and begins is not None and begins >= cover.off
        too_early = cover.on is not None and out is not None and out <= cover.on
        if start < cover.end.nm and cover.start.nm < end and not too_late and not too_early:
            is_whole = cover.start.nm <= start and end <= cover.end.nm
            name = titled(plan, layout.planting, look)
            yield name if is_whole else _("part of {block}").format(block=name)


def _cover_title(cover: Cover) -> str:
    """When it goes on and comes off, as far as that is known."""
    on = "" if cover.on is None else short_day(cover.on)
    off = "" if cover.off is None else short_day(cover.off)
    if on and off:
        return _("Cover on {on}, off {off}").format(on=on, off=off)
    return _("Cover on {on}").format(on=on) if on else _("Cover off {off}").format(off=off) if off else _("Cover")


def _hoops(laid: LaidOut, cover: Cover, units: Units) -> list[Section]:
    """Where its hoops stand along the tape: every so far or, where that is no round figure, each."""
    cut = cover_cut(laid.bed, cover)
    readings, apart = cut.hoop_readings, cut.hoop_spacing
    if len(readings) < 2 or apart is None:
        return []
    hoops = ngettext("{count} hoop", "{count} hoops", len(readings)).format(count=len(readings))
    figures = [tape(at, units).number for at in readings]
    if apart % _READ[units] == 0:
        words = _("{hoops} from {first} to {last}, every {spacing}").format(
            hoops=hoops, first="{first}", last="{last}", spacing="{spacing}",
        )  # fmt: skip
        return [measured(words, first=figures[0], last=figures[-1], spacing=span(round(apart), units))]
    found = []
    for at in range(0, len(figures), _MOST_HOOPS):
        piece = {f"at{number}": one for number, one in enumerate(figures[at : at + _MOST_HOOPS])}
        words = ", ".join(f"{{{name}}}" for name in piece)
        said = _("{hoops} at {readings}").format(hoops=hoops, readings=words) if at == 0 else words
        found.append(measured(said, **piece))
    return found


def _lies(laid: LaidOut, cover: Cover, units: Units) -> Iterator[Section]:
    """How deep its hoops go, and how far what lies over them reaches beyond them."""
    cut = cover_cut(laid.bed, cover)
    if cut.hoops is None:
        first, last = (tape(at.nm, units).number for at in (cover.start, cover.end))
        yield measured(_("from {first} to {last}"), first=first, last=last)
    elif cover.leg is None:
        yield sentence(_("how deep the hoops go is not in the plan"), 9)
    else:
        yield measured(_("each {leg} deep in the ground at both sides"), leg=offset(cover.leg.nm, units))
    if cut.cloth is not None and cover.apron is not None and cover.cloth_end is not None:
        words = _("cloth {end} beyond both ends, {apron} on the ground at both sides")
        if cover.layers > 1:
            more = _("{count} layers of cloth, {end} beyond both ends, {apron} on the ground at both sides")
            words = more.format(count=cover.layers, end="{end}", apron="{apron}")
        yield measured(words, end=span(cover.cloth_end.nm, units), apron=offset(cover.apron.nm, units))
    if cut.film is not None and cover.buried is not None:
        yield measured(_("film {buried} in the ground all round"), buried=offset(cover.buried.nm, units))
