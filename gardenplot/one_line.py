"""Text on one line, without signs that steer a terminal, break a line, turn what follows, or are half of a letter."""

import unicodedata

_STEERING = {"Cc", "Cs", "Zl", "Zp"}
"""Unicode general categories: control, surrogate, line separator, paragraph separator."""


_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Signs that turn the direction of all that follows, also of words that are not this text's (UAX 9, 2.1 to 2.6)."""


def one_line(text: str) -> str:
    """The text with a space for each sign that has no place in a line."""
    if text.isprintable():
        # What steers or turns is no printable sign, so nearly all texts are done here.
        return text
    return "".join(" " if _steers(sign) else sign for sign in text)


def _steers(sign: str) -> bool:
    """Whether a sign steers, or is one of the last two of a plane, which Unicode keeps out of text."""
    return unicodedata.category(sign) in _STEERING or sign in _TURNING or ord(sign) & 0xFFFE == 0xFFFE
