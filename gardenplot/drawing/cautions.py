"""What can hurt somebody, in a line where it matters: codes, makers and services know better than a program."""

from collections.abc import Iterable, Iterator, Mapping

from gardenplot.plan import GoodKind
from gardenplot.words import _

COVERS = _("Snow and wind bring covers down: what they bear is for their makers and local codes to say.")
TUNNELS = _("What snow and wind a tunnel bears is for its maker and local codes to say; in the sun it gets hot fast.")
FILM = _("Film gets hot fast in the sun, on a cold day too: ventilate it.")
JUGS = _(
    "Full jugs are heavy. Water with bleach against algae never on plants, and never mixed with other cleaners. "
    "No jugs that held chemicals."
)
WATER = _("Water on food crops has to be clean: have it tested, and follow the local rules for it.")
PACKETS = _("Packets and labels come before these sums. Treated seed is no food: gloves on, and keep its packet.")
_OF_KINDS: Mapping[str, frozenset[GoodKind]] = {
    COVERS: frozenset((GoodKind.HOOP, GoodKind.CLOTH, GoodKind.FILM)),
    FILM: frozenset((GoodKind.FILM,)),
    JUGS: frozenset((GoodKind.JUG,)),
    WATER: frozenset((GoodKind.DRIP_LINE,)),
}


def cautions_of(kinds: Iterable[GoodKind]) -> Iterator[str]:
    """What is said of things of some kinds, with what is said of every list first."""
    listed = frozenset(kinds)
    yield PACKETS
    yield from (words for words, of in _OF_KINDS.items() if of & listed)
