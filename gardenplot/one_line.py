"""Text on one line, without the signs that steer a terminal, break a line, or are half of a letter."""

import unicodedata

_STEERING = {"Cc", "Cs", "Zl", "Zp"}
"""Unicode general categories: control, surrogate, line separator, paragraph separator."""


def one_line(text: str) -> str:
    """The text with a space for each sign that has no place in a line."""
    return "".join(" " if _steers(sign) else sign for sign in text)


def _steers(sign: str) -> bool:
    """Whether a sign steers, or is one of the last two of a plane, which Unicode keeps out of text."""
    return unicodedata.category(sign) in _STEERING or ord(sign) & 0xFFFE == 0xFFFE
