"""Families that pieces of one filling would bring back to a bed too soon, from one year of the plan to another."""

from attrs import evolve

from gardenplot.filling.piece import Pieces
from gardenplot.filling.task import Could, comes_back
from gardenplot.filling.wanted import Wanted
from gardenplot.layout import LaidOut
from gardenplot.plan import Place
from gardenplot.season.rotation import Stay


def may_return(wanted: tuple[Wanted, ...]) -> bool:
    """Whether a family is wanted in more than one year, so that pieces of one filling could bring it back."""
    years: dict[str, set[int]] = {}
    for one in wanted:
        if one.crop.family:
            seen = years.setdefault(_key(one.crop.family), set())
            seen.update(dates.in_ground.year for dates in one.days if dates.in_ground is not None)
    return any(len(seen) > 1 for seen in years.values())


def without_returns(place: Place, laid_out: tuple[LaidOut, ...], pieces: Pieces) -> Pieces:
    """The pieces without those that bring a family back too soon beside the others, of which the dearest are kept."""
    kept: Pieces = ()
    for one in sorted(pieces, key=lambda each: (-each.worth, each.number, each.start)):
        strip = one.way.strip
        beside = _stays(one.wanted, strip, kept)
        if not beside or not comes_back(place, laid_out[strip], one.wanted.crop, "", one.dates, beside):
            kept = (*kept, one)
    return tuple(one for one in pieces if one in kept)


def left_beside(place: Place, laid_out: tuple[LaidOut, ...], one: Wanted, could: Could, fixed: Pieces) -> Could:
    """The ways in which something brings no family back too soon beside fixed pieces."""
    stays = {strip: _stays(one, strip, fixed) for strip in {way.strip for way in could.ways}}
    if not any(stays.values()):
        return could
    left = [
        number
        for number, (way, dates) in enumerate(zip(could.ways, could.dates, strict=True))
        if not comes_back(place, laid_out[way.strip], one.crop, "", dates, stays[way.strip])
    ]
    return evolve(
        could,
        ways=tuple(could.ways[number] for number in left),
        plants=tuple(could.plants[number] for number in left),
        dates=tuple(could.dates[number] for number in left),
    )


def _stays(one: Wanted, strip: int, pieces: Pieces) -> tuple[Stay, ...]:
    """Where pieces of its family stand in a strip, by their years."""
    family = one.crop.family
    here = [each for each in pieces if each.way.strip == strip and family and _is_of(each.wanted, family)]
    return tuple(
        Stay(family, each.dates.in_ground.year, f"{number}")
        for number, each in enumerate(here)
        if family and each.dates.in_ground is not None
    )


def _is_of(one: Wanted, family: str) -> bool:
    return one.crop.family is not None and _key(one.crop.family) == _key(family)


def _key(family: str) -> str:
    return family.strip().casefold()
