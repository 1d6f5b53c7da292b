"""A plan as large as any is opened, edited, saved and printed; how long that holds the window up is told."""

from tests.attack import turns
from tests.attack.test_killed import run


def test_a_large_plan_is_worked_on() -> None:
    beds = turns(8, 200)
    came = run("large", beds)
    assert came["plantings"] == beds * 10
    assert came["MB"] <= 600
    # How long each step held the window up is printed by the long form and stands in DEVELOPERS.md.
    assert {"a block dragged", "undone"} <= set(came["ms"])
