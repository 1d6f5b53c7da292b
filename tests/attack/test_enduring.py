"""Eight hours of edits in quick motion leave nothing in memory that undo does not keep."""

from tests.attack import turns
from tests.attack.test_killed import run


def test_edits_leave_nothing_behind() -> None:
    edits = turns(150, 30_000)
    came = run("enduring", edits)
    assert came["edits"] >= edits
    # By the middle each part of the window has been looked at, and its modules are loaded.
    middle, last = came["held"][6], came["held"][-1]
    assert last["Python objects"] - middle["Python objects"] <= 2000
    assert last["Qt objects"] - middle["Qt objects"] <= 5
