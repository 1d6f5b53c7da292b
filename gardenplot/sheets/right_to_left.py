"""Words of scripts that run from right to left, as a page draws them that is read from left to right.

A page draws sign after sign from left to right and joins none. So the words of such a script are turned round and
their figures left as they are (Unicode Standard Annex 9, with each stretch of such words as text of its own among
words that run from left to right), and letters of Arabic get the form that they have where they stand (The Unicode
Standard, 9.2). Figures behind a name stay where they are, since a reading is no part of a name; only a whole number
that ends it, as in a bed called by a word and a number, is turned with it.
"""

import re
import unicodedata
from collections.abc import Callable, Iterator
from functools import cache

_ANY = re.compile("[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]")
_TURNED = {"R", "AL"}
"""Bidirectional classes of letters that run from right to left (UAX 9, 3.2)."""
_PAIRS = {"(": ")", "[": "]", "{": "}", "<": ">", "«": "»", "‹": "›"}
_MIRRORED = _PAIRS | {right: left for left, right in _PAIRS.items()}
_NUMBER = re.compile(r"[ \u00a0-]?\d+(?=$|[,;:)\u2026]| [^\W\d]| ·)")
"""A whole number that ends a name, rather than begins a reading or a sum."""
_PART = re.compile(r"\d+(?:[.,:/]\d+)*|.[\u0300-\u036f\u0591-\u05bd\u05bf-\u05c7\u064b-\u065f\u0670]*", re.DOTALL)
"""A figure, or a sign with the marks that stand on it."""
_LAM, _TATWEEL = "\u0644", "\u0640"


def shown(text: str, has: Callable[[int], bool]) -> str:
    """A text in the order in which its signs are drawn; `has` tells which signs there are letters for."""
    if _ANY.search(text) is None:
        return text
    found, at = "", 0
    for start, end in _stretches(text):
        found += text[at:start] + _turned(_joined(text[start:end], has))
        at = end
    return found + text[at:]


def _stretches(text: str) -> Iterator[tuple[int, int]]:
    """From where to where words run from right to left: from such a letter to the last one before any of another."""
    start = last = -1
    for at, sign in enumerate(text):
        way = unicodedata.bidirectional(sign)
        if way in _TURNED:
            start, last = (at if start < 0 else start), at
        elif way == "L" and start >= 0:
            yield _whole(text, start, last + 1)
            start = -1
    if start >= 0:
        yield _whole(text, start, last + 1)


def _whole(text: str, start: int, end: int) -> tuple[int, int]:
    """A stretch with the marks, the number and the dots of a cut behind it, and with its brackets."""
    while end < len(text) and unicodedata.combining(text[end]):
        end += 1
    number = _NUMBER.match(text, end)
    end = number.end() if number else end
    end += text[end : end + 1] == "…"
    if end < len(text) and _MIRRORED.get(text[end]) in set(text[start:end]) and text[end] not in _PAIRS:
        end += 1
    before = text[start - 1] if start else ""
    if before in _PAIRS and end < len(text) and text[end] == _PAIRS[before]:
        return start - 1, end + 1
    return (start - 1, end) if before in _PAIRS and _PAIRS[before] in text[start:end] else (start, end)


def _turned(stretch: str) -> str:
    """A stretch from its last sign to its first; figures, and signs with their marks, stay as they are."""
    return "".join(_MIRRORED.get(part, part) for part in reversed(_PART.findall(stretch)))


@cache
def _forms() -> dict[str, dict[str, str]]:
    """The forms of each letter, and of lam with each alef, by how they join, as Unicode's own data has them."""
    found: dict[str, dict[str, str]] = {}
    for code in (*range(0xFB50, 0xFC00), *range(0xFE80, 0xFEFD)):
        how, *codes = unicodedata.decomposition(chr(code)).split() or [""]
        letters = "".join(chr(int(one, 16)) for one in codes)
        if len(letters) == 1 or (len(letters) == 2 and letters[0] == _LAM):
            found.setdefault(letters, {}).setdefault(how.strip("<>"), chr(code))
    found[_TATWEEL] = dict.fromkeys(("isolated", "initial", "medial", "final"), _TATWEEL)
    return found


def _joined(stretch: str, has: Callable[[int], bool]) -> str:
    """A stretch with the form of each letter of Arabic that it has beside its neighbours."""
    forms, parts = _forms(), _letters(stretch)
    found = []
    for at, (letter, marks) in enumerate(parts):
        own = forms.get(letter, {})
        before = forms.get(parts[at - 1][0], {}) if at else {}
        after = forms.get(parts[at + 1][0], {}) if at + 1 < len(parts) else {}
        joins_before, joins_after = "final" in own and "initial" in before, "initial" in own and "final" in after
        how = {
            (True, True): "medial", (True, False): "final", (False, True): "initial", (False, False): "isolated",
        }[joins_before, joins_after]  # fmt: skip
        # A letter that joins none is itself, as shapers have it; lam and alef are one sign even then.
        form = letter if how == "isolated" and len(letter) == 1 else own.get(how, letter)
        found.append((form if all(map(has, map(ord, form))) else letter) + marks)
    return "".join(found)


def _letters(stretch: str) -> list[tuple[str, str]]:
    """Letters, each with the marks that stand on it; lam and alef are one."""
    found: list[tuple[str, str]] = []
    for sign in stretch:
        if unicodedata.combining(sign) and found:
            found[-1] = (found[-1][0], found[-1][1] + sign)
        elif found and found[-1] == (_LAM, "") and _LAM + sign in _forms():
            found[-1] = (_LAM + sign, "")
        else:
            found.append((sign, ""))
    return found
