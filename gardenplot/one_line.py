"""Text on one line, without the signs that steer a terminal, break a line, or are half of a letter."""

import unicodedata

_STEERING = {"Cc", "Cs", "Zl", "Zp"}
"""Unicode general categories: control, surrogate, line separator, paragraph separator."""


def one_line(text: str) -> str:
    """The text with a space for each sign that has no place in a line."""
    return "".join(" " if unicodedata.category(sign) in _STEERING else sign for sign in text)
