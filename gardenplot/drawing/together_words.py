"""What all that deviates comes to when it is answered in one plan, in words."""

from gardenplot.drawing.again_words import done_words, stand_of
from gardenplot.drawing.changed_list import stakes_moved
from gardenplot.drawing.so_many import so_many_clumps, so_many_plants
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.together import Aim, Together
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext

AIMS = {
    Aim.FEWEST_MARKS: _("all together, fewest marks moved"),
    Aim.MOST_MET: _("all together, as much as can be sold"),
    Aim.NOTHING_BOUGHT: _("all together, nothing bought in"),
}
"""What is looked for first when all is answered together."""


def together_words(aim: Aim, one: Together) -> str:
    """What is chosen and what it comes to, in a line."""
    chosen = "; ".join(done_words(answer) for answer in one.answers) or _("nothing can be done")
    return f"{AIMS[aim]}: {chosen} – {comes_to(one)}"


def _bought(one: Together) -> str:
    """So many plants, or clumps where all that is bought in stands in clumps of so many."""
    bought = [answer for answer in one.answers if answer.buy]
    clumps = {stand_of(answer) for answer in bought}
    return so_many_clumps(one.buy, clumps.pop()) if len(clumps) == 1 else so_many_plants(one.buy)


def comes_to(one: Together) -> str:
    """What is short in the end, how many stakes move, the market days that it costs, and what is bought in."""
    short = ngettext("{count} unit short", "{count} units short", one.short).format(count=grouped(one.short))
    short = short if one.short else _("nothing short")
    stakes = stakes_moved(as_staked(one.before), one.plan)
    moved = ngettext("{count} stake moved", "{count} stakes moved", stakes).format(count=grouped(stakes))
    parts = [short, moved if stakes else _("no stake moved")]
    if one.costs:
        parts.append(
            ngettext("costs {count} market day", "costs {count} market days", one.costs).format(count=one.costs)
        )
    if one.buy:
        parts.append(_("{plants} bought in").format(plants=_bought(one)))
    return ", ".join(parts)
