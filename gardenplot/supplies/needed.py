"""What one planting, cover or bed needs of what is bought."""

from collections.abc import Iterable

from attrs import frozen

from gardenplot.plan import Good, GoodKind
from gardenplot.supplies.trays import Filled
from gardenplot.working import RULES, Number, Unit, added

Same = tuple[GoodKind, str | None, str, int | None]
"""Kind, crop, name and size: what is added up has them in common."""


@frozen(cache_hash=True)
class Need:
    """So much of a kind that one planting, cover or bed needs; `label` says which.

    Trays are needed `at_once` where they are in use on the day with most of them, else they are those of others.
    Cloth and film of several layers are cut into `pieces`, all of them as long.
    """

    kind: GoodKind
    number: Number
    crop: str | None = None
    name: str = ""
    size: int | None = None
    good: Good | None = None
    label: str = ""
    planting: str = ""
    filled: Filled | None = None
    at_once: bool = True
    pieces: int = 1

    @property
    def is_sized(self) -> bool:
        """Whether it stands on a list by its size: trays, hoops and the like, small before large."""
        return self.kind in (GoodKind.TRAY, GoodKind.HOOP, GoodKind.SPACER, GoodKind.ROW_MARKER)

    @property
    def same(self) -> Same:
        """What all that is added up with it has too."""
        return self.kind, self.crop, self.name, self.size


def sum_of(name: str, needs: Iterable[Need]) -> Number:
    """All that is needed together, by what each is for."""
    ones = tuple(needs)
    unit = ones[0].number.unit if ones else Unit.COUNT
    return added(name, unit, [need.number for need in ones], RULES, labels=[need.label for need in ones])
