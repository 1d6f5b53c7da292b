"""The words of gaps that are filled: each block, what found no room there and why, and how good it is."""

from collections.abc import Iterator

from gardenplot.drawing.captions import GAP
from gardenplot.drawing.days import short_day
from gardenplot.drawing.hand_words import listed
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import between_readings, titled
from gardenplot.drawing.so_many import so_many_clumps, so_many_days
from gardenplot.filling.now import GapNow
from gardenplot.filling.offers import WhyNot
from gardenplot.filling.placed import Placed
from gardenplot.plan import crop_of
from gardenplot.plan.clumps import clump_of
from gardenplot.words import _, ngettext

_MOST_BLOCKS, _MOST_NAMES = 4, 4
REASONS = {
    WhyNot.OTHERS: _("no room beside these"),
    WhyNot.LATER: _("something later takes the ground"),
    WhyNot.LONG: _("the least of it is longer than the gap"),
    WhyNot.ROWS: _("its rows do not fit across this bed"),
    WhyNot.FAMILY: _("its family would be back in this bed too soon"),
    WhyNot.FROST: _("frost would find it without a cover"),
    WhyNot.COLD_EDGE: _("here it is too cold for it, at the wall of a tunnel"),
    WhyNot.SERIES: _("not all of its days found ground, so none has any"),
    WhyNot.WHOLE: _("not all of it found ground, and it is planted whole or not at all"),
    WhyNot.EARLY: _("its bed cannot be used yet"),
    WhyNot.DAY: _("not in the ground on this day"),
    WhyNot.BED: _("not wished for in this bed"),
}


def gap_words(found: GapNow, look: dict[str, Look]) -> tuple[str, ...]:
    """Lines about a gap that is filled: its blocks, whether they are proven the best, what is left out and why."""
    shown = found.blocks if len(found.blocks) <= _MOST_BLOCKS else found.blocks[: _MOST_BLOCKS - 1]
    # Of a block alone the line above tells all but its days.
    blocks = [_stay(shown[0])] if len(shown) == 1 else [_block(found, one, look) for one in shown]
    more = len(found.blocks) - len(shown)
    if more > 0:
        blocks.append(ngettext("and {count} block more", "and {count} blocks more", more).format(count=more))
    best = _("the best there is for this gap") if found.proven else _("not proven to be the best")
    return (*filter(None, blocks), *((best,) if found.blocks else ()), *_left_out(found))


def nothing_words(found: GapNow) -> str:
    """That nothing comes into a gap."""
    if not found.without:
        return _("nothing more is wished for or ordered")
    return _("nothing that is wanted can stand here")


def _block(found: GapNow, one: Placed, look: dict[str, Look]) -> str:
    """A block in a line: "B Leek   40 plants   0.00 – 4.00 m   10 Apr – 29 Jun, 80 days"."""
    parts = (
        titled(found.plan, one.planting, look),
        so_many_clumps(one.plants, clump_of(found.plan, one.planting)),
        between_readings(found.plan, one.start, one.end),
        _stay(one),
    )
    return GAP.join(part for part in parts if part)


def _stay(one: Placed) -> str:
    if one.in_ground is None:
        return ""
    if one.out is None:
        return _("from {day}").format(day=short_day(one.in_ground))
    days = so_many_days((one.out - one.in_ground).days)
    return _("{first} until {out}, {days}").format(first=short_day(one.in_ground), out=short_day(one.out), days=days)


def _left_out(found: GapNow) -> Iterator[str]:
    """What does not stand, a line for each reason."""
    for why, words in REASONS.items():
        names = list(dict.fromkeys(crop_of(found.plan, one.crop).name for one in found.without if one.why is why))
        if names:
            shown, more = names[:_MOST_NAMES], len(names) - _MOST_NAMES
            if more > 0:
                shown.append(ngettext("{count} more", "{count} more", more).format(count=more))
            yield _("{names}: {why}").format(names=listed(shown), why=words)
