"""Cells of a CSV file (RFC 4180) that no spreadsheet takes for a formula."""

_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def plain(text: str) -> str:
    """Text as text, with a quote before what would be worked out."""
    return f"'{text}" if text.startswith(_FORMULA) else text
