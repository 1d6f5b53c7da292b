"""A wish as it is typed: how many plants, for how long, from when to when, worth what, in which beds."""

from collections.abc import Callable, Mapping
from typing import Any

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.reading import text_of, whole_from
from gardenplot.plan import Plan, Wish, bed_of
from gardenplot.units import number_in
from gardenplot.words import _

Texts = Mapping[str, str]


@frozen
class WishField:
    """A line of the wish: its name, how its text is read, and what holds while it is empty."""

    name: str
    read: Callable[[str], Any]
    default: Any = None


def _worth(text: str) -> float | None:
    if not text:
        return None
    if text.startswith(("-", "−")):
        raise PlanError(_("what a plant is worth is nothing or more, for example 0.80"))
    worth = number_in(text)
    if worth is None or worth >= 1e9:
        raise PlanError(_("“{typed}” is no number: write it like 0.80").format(typed=text[:40]))
    return float(worth)


_LINES = (
    WishField("least", whole_from, 1),
    WishField("most", whole_from),
    WishField("piece", whole_from),
    WishField("days", whole_from),
    WishField("earliest", date_from),
    WishField("latest", date_from),
    WishField("times", whole_from, 1),
    WishField("every_days", whole_from, 7),
    WishField("worth", _worth, 1.0),
)


def worth_text(worth: float) -> str:
    """What a plant is worth, as it is typed."""
    return f"{worth:.10g}"


def texts_of_wish(wish: Wish | None, plan: Plan) -> dict[str, str]:
    """The values of a wish as they are typed; nothing where none is there yet."""
    if wish is None:
        return {}
    texts = {line.name: text_of(getattr(wish, line.name)) for line in _LINES}
    beds = "; ".join(bed_of(plan, bed).name for bed in wish.beds)
    return texts | {"worth": worth_text(wish.worth), "beds": beds}


def wish_values(texts: Texts, plan: Plan) -> tuple[dict[str, Any], dict[str, str]]:
    """The values of typed texts by the wish's fields, and the words of what is wrong by the name of the line.

    `texts` has least, most, piece, days, earliest, latest, times, every_days, worth and beds.
    """
    values: dict[str, Any] = {}
    wrong: dict[str, str] = {}
    for line in (*_LINES, WishField("beds", lambda text: _beds(text, plan), ())):
        try:
            read = line.read(texts.get(line.name, "").strip())
            values[line.name] = line.default if read is None else read
        except GardenplotError as error:
            wrong[line.name] = error.says
    return values, wrong or dict(_contradictions(values))


def _contradictions(values: Mapping[str, Any]) -> list[tuple[str, str]]:
    """What cannot be met whatever the ground."""
    earliest, latest, most, days = (values[name] for name in ("earliest", "latest", "most", "days"))
    piece = values["piece"]
    if most is not None and most < max(1, values["least"]):
        return [
            ("most", _("at most {most} plants cannot be {least} or more").format(most=most, least=values["least"]))
        ]
    if most is not None and piece is not None and piece > most:
        return [("piece", _("at most {most} plants have no piece of {piece}").format(most=most, piece=piece))]
    if values["times"] > 1 and earliest is None:
        return [("earliest", _("from which day on, the first time?"))]
    if latest is not None and earliest is None:
        return [("earliest", _("from which day on? Without it the ground is taken all season"))]
    if earliest is not None and latest is not None and latest <= earliest:
        return [("latest", _("lies before the day from which it may go in"))]
    if days is not None and earliest is not None and latest is not None and (latest - earliest).days < days:
        return [("days", _("{days} days do not lie between these days").format(days=days))]
    return []


def _beds(text: str, plan: Plan) -> tuple[str, ...]:
    """Beds by their names, apart by semicolons."""
    known = {bed.name.casefold(): bed.id for bed in plan.beds}
    found = []
    for name in (part.strip() for part in text.split(";") if part.strip()):
        if name.casefold() not in known:
            raise PlanError(_("there is no bed “{name}”; write names apart by semicolons").format(name=name[:40]))
        found.append(known[name.casefold()])
    return tuple(dict.fromkeys(found))
