"""Published answers to check against, each with the name of its source beside it."""

import json
from pathlib import Path
from typing import Any

import pytest
from attrs import frozen

ORIGINS = ("read in the source", "plain arithmetic")


@frozen
class Case:
    """One answer: what was put in, what came out, how far off a sum may be, and where it stands."""

    id: str
    source: str
    origin: str
    inputs: dict[str, Any]
    expected: Any
    within: float


def cases(file: str, start: str = "") -> list[Case]:
    """The cases of a file whose id starts so; a case must name a source that the file describes."""
    raw = json.loads((Path(__file__).parent / f"{file}.json").read_text(encoding="utf-8"))
    found = [Case(**one | {"source": raw["sources"][one["source"]]}) for one in raw["cases"]]
    chosen = [case for case in found if case.id.startswith(start)]
    assert chosen, f"{file}.json has no case {start}"
    assert all(case.origin in ORIGINS for case in chosen)
    return chosen


def each(file: str, start: str = "") -> pytest.MarkDecorator:
    """Run a test for each of those cases."""
    return pytest.mark.parametrize("case", [pytest.param(case, id=case.id) for case in cases(file, start)])
