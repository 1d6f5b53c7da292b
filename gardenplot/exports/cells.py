"""Cells of a CSV file (RFC 4180) that no spreadsheet takes for a formula."""

from gardenplot.units import MM

_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def plain(text: str) -> str:
    """Text as text, with a quote before what would be worked out."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def in_mm(nm: int) -> str:
    """A length in millimetres, with as many decimals as it has."""
    whole, part = divmod(nm, MM)
    return f"{whole}.{part:06}".rstrip("0").rstrip(".")
