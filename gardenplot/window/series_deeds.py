"""What the menus do with series: repeat a planting, and take one out of its series."""

from collections.abc import Mapping
from typing import TYPE_CHECKING

from gardenplot.drawing import series_words
from gardenplot.drawing.sayings import name_of
from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures import series
from gardenplot.gestures.reading import whole_from
from gardenplot.plan import Plan, order_of, planting_of
from gardenplot.plan.series import leave_series
from gardenplot.season import market_days
from gardenplot.window.ask import Ask
from gardenplot.window.late import ask
from gardenplot.window.reasons import CHOOSE_PLANTING
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.gestures.series import Repeated
    from gardenplot.window.main import MainWindow

_MOST = 1000


class SeriesDeeds:
    """What is done to series; it says what came of it."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def repeat(self) -> None:
        """Ask how often the selected planting is repeated, and make the plantings that find ground."""
        one, plan = self._sight.planting, self._document.plan
        if one is None:
            self._window.tell(CHOOSE_PLANTING)
            return
        markets = series.other_markets(plan, one)

        def take(typed: Mapping[str, object]) -> Mapping[str, str]:
            texts = {name: str(value or "") for name, value in typed.items()}
            numbers, wrong = _numbers(texts, len(markets) or _MOST)
            if wrong:
                return wrong
            try:
                repeated = (
                    series.repeat_for_markets(plan, one, numbers["times"])
                    if markets
                    else series.repeat_every(plan, one, numbers["times"], numbers["every"])
                )
            except GardenplotError as error:
                return {error.field: error.says}
            return self._make(one, repeated)

        title, does = _("Repeat {crop} as a series").format(crop=name_of(plan, one)), _("Make series")
        ask(title, _asks(len(markets)), take, does, _note(plan, one, markets), self._window)

    def leave(self) -> None:
        """Take the selected planting out of its series."""
        one, plan = self._sight.planting, self._document.plan
        if one is None:
            self._window.tell(CHOOSE_PLANTING)
            return
        name = name_of(plan, one)
        if self._document.change(_("{crop} leaves its series").format(crop=name), leave_series(plan, one)):
            self._window.tell(_("{crop} has left its series: it is changed by itself from now on").format(crop=name))

    def _make(self, planting: str, repeated: "Repeated") -> Mapping[str, str]:
        """Make a series the plan and say what came of it; one that finds no ground at all is told in the dialog."""
        plan = repeated.plan
        words = series_words.series_words(plan, planting, len(repeated.made), repeated.without_ground)
        if not repeated.made:
            return {"": words}
        self._document.change(_("Series of {crop}").format(crop=name_of(plan, planting)), plan)
        self._window.tell(words)
        return {}


def _asks(markets: int) -> tuple[Ask, ...]:
    times = Ask("times", _("Plantings more"), str(markets) if markets else "", "3")
    return (times,) if markets else (times, Ask("every", _("Every so many days"), "", "7", default="7"))


def _note(plan: Plan, planting: str, markets: tuple[int, ...]) -> str:
    together = _(
        "Each goes into the first gap that is free on its days. A later change of pattern or size is for all of them."
    )
    order = planting_of(plan, planting).order
    if not markets or order is None:
        return together
    days = market_days(order_of(plan, order))
    return f"{series_words.markets_words([days[market - 1] for market in markets])} {together}"


def _numbers(texts: Mapping[str, str], most: int) -> tuple[dict[str, int], dict[str, str]]:
    """The numbers that were typed, and the words of what is wrong, by the name of the field."""
    numbers: dict[str, int] = {}
    wrong: dict[str, str] = {}
    limits = {"times": (None, most), "every": (7, 1500)}
    for name in texts:
        usual, limit = limits[name]
        try:
            number = whole_from(texts[name])
            numbers[name] = _within(usual if number is None else number, limit)
        except GardenplotError as error:
            wrong[name] = error.says
    return numbers, wrong


def _within(number: int | None, most: int) -> int:
    if number is None or not 1 <= number <= most:
        raise PlanError(_("from 1 to {most}").format(most=most))
    return number
