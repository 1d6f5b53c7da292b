"""What typed words find in the index: any beginnings of words of a name, of its place, or of other words for it."""

import re
import unicodedata
from collections.abc import Sequence
from functools import cached_property

from attrs import frozen

_WHOLE, _FIRST, _NAME, _WHERE, _WITHIN = range(5)
"""How well a typed word fits: a whole word of the name, the beginning of it, of another of its words, of where it
stands or of other words for it, or anything inside a name."""


class _Accents(dict[int, int | None]):
    """What takes accents off that follow their letters; each sign is looked up once."""

    def __missing__(self, sign: int) -> int | None:
        self[sign] = None if unicodedata.combining(chr(sign)) else sign
        return self[sign]


_WITHOUT_ACCENTS = _Accents()
_WORDS = re.compile(r"[^\W_]+")
"""Letters and figures of any script in a row."""


@frozen(slots=False)  # with a cached property, every attribute of a slotted class takes a search
class Sought:
    """A line of the index as it can be found: name, where it stands, other words for it, whether it can be."""

    name: str
    where: str = ""
    also: str = ""
    can_be: bool = True

    @cached_property
    def _named(self) -> tuple[str, ...]:
        return folded(self.name)

    @cached_property
    def _placed(self) -> tuple[str, ...]:
        return folded(f"{self.where} {self.also}")

    def fit(self, typed: Sequence[str]) -> int | None:
        """How badly typed words fit, 0 for best; None where one of them does not fit at all."""
        fits = [self._fit(word) for word in typed]
        return None if None in fits else sum(fit for fit in fits if fit is not None)

    def _fit(self, word: str) -> int | None:
        if word in self._named:
            return _WHOLE
        if self._named and self._named[0].startswith(word):
            return _FIRST
        if any(one.startswith(word) for one in self._named):
            return _NAME
        if any(one.startswith(word) for one in self._placed):
            return _WHERE
        return _WITHIN if len(word) > 2 and any(word in one for one in self._named) else None


def seek(lines: Sequence[Sought], text: str) -> tuple[int, ...]:
    """The numbers of the lines that a text finds, the best first; what cannot be comes a little later than it fits.

    For no text all of them, in their order.
    """
    typed = folded(text)
    found = [(fit, number) for number, line in enumerate(lines) if (fit := line.fit(typed)) is not None]
    if typed:
        found.sort(key=lambda one: (one[0] + (not lines[one[1]].can_be), not lines[one[1]].can_be, one[1]))
    return tuple(number for _fit, number in found)


def folded(text: str) -> tuple[str, ...]:
    """The words of a text without case, accents and signs, so that "Spätkohl" is found by "spatkohl"."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    if not plain.isascii():
        plain = plain.translate(_WITHOUT_ACCENTS)
    return tuple(_WORDS.findall(plain))
