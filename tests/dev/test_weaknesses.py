"""The check for weaknesses says plainly what it found and what it could not look up."""

import runpy
import sys
from collections.abc import Callable
from typing import Any

import pytest

from tests.rules.source_tree import ROOT

Told = Callable[[list[dict[str, Any]], list[str]], int]
SOUND = {"name": "attrs", "version": "24.1.0", "vulns": []}
WEAK = {"name": "numpy", "version": "1.26.0", "vulns": [{"id": "X-1"}]}
SKIPPED = {"name": "numpy", "skip_reason": "could not be looked up"}


@pytest.fixture(scope="module")
def told() -> Told:
    """What tells of what was found."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sys, "path", [str(ROOT / ".dev"), *sys.path])
        found: Told = runpy.run_path(str(ROOT / ".dev" / "weaknesses.py"))["told"]
    return found


@pytest.mark.parametrize(
    ("found", "status", "words"),
    [
        ([SOUND], 2, "Not checked: numpy==1.26.0."),
        ([SOUND, SKIPPED], 2, "Not checked: numpy==1.26.0."),
        ([SOUND, WEAK], 1, "numpy 1.26.0: X-1"),
        ([SOUND, {**WEAK, "vulns": []}], 0, "No weakness is known of any of them."),
    ],
)
def test_what_could_not_be_looked_up_is_never_said_to_be_sound(
    told: Told, found: list[dict[str, Any]], status: int, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert told(found, ["attrs==24.1.0", "numpy==1.26.0"]) == status
    assert words in capsys.readouterr().out
