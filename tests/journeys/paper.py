"""A bed sheet read back from its PDF, as it was kept."""

import re
from pathlib import Path

import pypdfium2

from tests.journeys.person import plain

_HEAD = re.compile(r"stake tape(, \w+)? here plant at")
_BESIDE = ("Square", "Across the bed")
"""What stands beside the table begins with one of these."""
_STAKE = re.compile(r"(\d+) (\d+\.\d\d|\d+′ \S+″) (.*)")


def size_of(path: Path) -> tuple[int, int]:
    """Width and height of the first page, in points."""
    width, height = pypdfium2.PdfDocument(path)[0].get_size()
    return round(width), round(height)


def lines_of(path: Path) -> list[str]:
    """The lines of the only page."""
    (lines,) = pages_of(path)
    return lines


def pages_of(path: Path) -> list[list[str]]:
    """The lines of each page."""
    texts = (page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(path))
    return [[plain(line) for line in text.splitlines()] for text in texts]


def stakes_of(lines: list[str]) -> list[tuple[str, str]]:
    """The tape reading of each stake and all that is written beside it, in walking order."""
    head = next(number for number, line in enumerate(lines) if _HEAD.match(line))
    table = lines[head + 1 : next(number for number, line in enumerate(lines) if line.startswith(_BESIDE))]
    stakes: list[tuple[str, str]] = []
    for line in table:
        if found := _STAKE.fullmatch(line):
            assert found[1] == str(len(stakes))
            stakes.append((found[2], found[3]))
        else:
            reading, words = stakes.pop()
            stakes.append((reading, f"{words} {line}"))
    return stakes
