"""A tunnel or a path on the ground as it is typed: its name, its place, its size, how it is turned."""

from collections.abc import Mapping
from typing import Any

from attrs import evolve

from gardenplot.errors import PlanError, at_field
from gardenplot.gestures.packet import id_from
from gardenplot.gestures.reading import length_from, needed_length, place_from, text_of
from gardenplot.plan import Plan, Tunnel, Walk
from gardenplot.plan.edits import add_path, add_tunnel, change_path, change_tunnel
from gardenplot.units import Length, Units, parse_degrees
from gardenplot.words import _

Texts = Mapping[str, str]
Strip = Tunnel | Walk
_TUNNEL = {Units.METRIC: ("1 m", "1 m", "20 m", "5 m", "50 cm")}
_PATH = {Units.METRIC: ("1 m", "1 m", "20 m", "60 cm")}
_TUNNEL_IN_FEET, _PATH_IN_FEET = ("3 ft", "3 ft", "60 ft", "16 ft", "18 in"), ("3 ft", "3 ft", "60 ft", "2 ft")


def tunnel_example(units: Units) -> dict[str, str]:
    """A tunnel of a usual size, as it would be typed."""
    return dict(zip(("x", "y", "length", "width", "cold_edge"), _TUNNEL.get(units, _TUNNEL_IN_FEET), strict=True))


def path_example(units: Units) -> dict[str, str]:
    """A path of a usual size, as it would be typed."""
    return dict(zip(("x", "y", "length", "width"), _PATH.get(units, _PATH_IN_FEET), strict=True))


def strip_texts(strip: Strip) -> dict[str, str]:
    """The fields of a tunnel or a path as they are typed, by name."""
    names = ("name", "x", "y", "length", "width", "turn", *(("cold_edge",) if isinstance(strip, Tunnel) else ()))
    return {name: text_of(getattr(strip, name)) for name in names}


def with_tunnel(plan: Plan, tunnel: Tunnel | None, texts: Texts) -> Plan:
    """The plan with a tunnel as typed, a new one or one of its own with changes. Raises LengthError, PlanError."""
    shown = strip_texts(tunnel) if tunnel else {}
    changes = _changes(plan, shown, texts)
    with at_field("cold_edge"):
        changes["cold_edge"] = length_from(texts["cold_edge"], shown.get("cold_edge", ""), plan.place.units)
    if tunnel is not None:
        return change_tunnel(plan, tunnel.id, **changes)
    return add_tunnel(plan, evolve(_new(Tunnel, texts), **changes))


def with_path(plan: Plan, path: Walk | None, texts: Texts) -> Plan:
    """The plan with a path as typed, a new one or one of its own with changes. Raises LengthError, PlanError."""
    changes = _changes(plan, strip_texts(path) if path else {}, texts)
    if path is not None:
        return change_path(plan, path.id, **changes)
    return add_path(plan, evolve(_new(Walk, texts), **changes))


def _new(kind: type[Any], texts: Texts) -> Any:
    nothing = Length(0, "")
    return kind(id_from(texts["name"]), texts["name"], nothing, nothing, nothing, nothing)


def _changes(plan: Plan, shown: Texts, texts: Texts) -> dict[str, Any]:
    with at_field("name"):
        if not texts["name"]:
            raise PlanError(_("a name is needed"))
    changes: dict[str, Any] = {"name": texts["name"]}
    for name in ("x", "y", "length", "width"):
        reads = place_from if name in ("x", "y") else needed_length
        with at_field(name):
            changes[name] = reads(texts[name], shown.get(name, ""), plan.place.units)
    with at_field("turn"):
        changes["turn"] = parse_degrees(texts["turn"]) if texts["turn"] else None
    return changes
