"""The figures that words tell, to be held against those that a working tells."""

import re

from gardenplot.plan import Plan

_ROWS = re.compile(r"\brows? \d+(, \d+)*(?![\d.½¼¾]|\s?(?:cm|m|in|ft|″|′))")
"""Rows are called by their numbers."""
_FRACTIONS = "½¼¾⅛⅜⅝⅞"
_FIGURE = re.compile(rf"\d+′\s?[\d{_FRACTIONS}]+″|[\d{_FRACTIONS}]+″|\d[\d.]*")


def figures(text: str) -> set[str]:
    """The figures of a text, without noughts behind a point; thousands are told with a thin space between."""
    text = text.replace("\u202f", "\u2009")
    closed = re.sub(r"(?<=\d)\u2009(?=\d{3}(?!\d))", "", text).replace("\u2009", " ")
    closed = re.sub(r"(\d{4})-\d\d-0?(\d+)", r"\1 \2", closed)
    found = (figure.rstrip(".") for figure in _FIGURE.findall(closed))
    return {figure.rstrip("0").rstrip(".") if "." in figure else figure for figure in found}


def without_names(text: str, plan: Plan) -> str:
    """A text without what the grower called things, and without the numbers that rows are called by."""
    named = [bed.name for bed in plan.beds] + [crop.name for crop in plan.crops] + [feed.name for feed in plan.feeds]
    named.append(plan.place.name)
    for name in filter(None, named):
        text = text.replace(name, "")
    return _ROWS.sub("", text)
