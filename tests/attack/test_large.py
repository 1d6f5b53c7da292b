"""A plan as large as any is opened, edited, saved and printed without holding the window up for long."""

from tests.attack import IS_LONG, turns
from tests.attack.test_killed import run


def test_a_large_plan_is_worked_on() -> None:
    beds = turns(8, 200)
    came = run("large", beds)
    assert came["plantings"] == beds * 10
    assert came["MB"] <= 600
    held = came["ms"]
    # Where plans are this large, what is done again and again holds the window up no longer than this.
    often = {name: took for name, took in held.items() if name in ("a block dragged", "undone")}
    assert len(often) == 2
    assert max(often.values()) <= (250 if IS_LONG else 150)
