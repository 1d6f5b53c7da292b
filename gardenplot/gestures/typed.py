"""What the hand types: the fields of a planting and of a bed, each as text shown and as an edit of the plan."""

from collections.abc import Callable

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.gestures import kept
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.examples import example_for, grey
from gardenplot.gestures.outline_typed import obstacles_text, outline_text, type_obstacles, type_outline
from gardenplot.gestures.reading import (
    length_from,
    list_from,
    list_text,
    needed_length,
    spacing_from,
    spacing_text,
    text_of,
    whole_from,
)
from gardenplot.gestures.shape_typed import (
    BOX_EXAMPLE,
    box_text,
    type_box,
    type_diameter,
    type_map_length,
    type_side,
    type_slope,
)
from gardenplot.layout import EdgeRule, least_edge
from gardenplot.plan import Pattern, Plan, bed_of, crop_of, planting_of
from gardenplot.plan.edits import change_bed, change_planting, resize_planting
from gardenplot.units import Length, length_of
from gardenplot.words import _

Shown = Callable[[Plan, str], str]
Edit = Callable[[Plan, str, str, str], Plan]
"""An edit of the part with an id, by the text typed and the text that stood there."""


@frozen
class Held:
    """What holds while a field is empty: its words, and its text where it is a length whose unit others take."""

    words: str
    text: str = ""


@frozen
class TypedField:
    """A field of one part of the plan: its label, the text that was typed, and the edit that another text makes.

    Where nothing was typed, `held` tells what holds, and an example what could be typed.
    """

    name: str
    label: str
    shown: Shown
    edit: Edit
    example: str = ""
    held: Callable[[Plan, str], Held] | str = ""

    def grey(self, plan: Plan, part_id: str) -> str:
        """The words that stand in the field while it is empty."""
        held = self._held(plan, part_id).words
        return grey(example_for(self.name, self.example, plan.place.units), held)

    def apply(self, plan: Plan, part_id: str, text: str, after: Plan | None = None) -> Plan:
        """The plan, or one that came `after` it, with a typed text in this field; what is shown changes nothing.

        Raises LengthError or PlanError where the text is no good.
        """
        shown = self.shown(plan, part_id)
        if text == shown:
            return after or plan
        return self.edit(after or plan, part_id, text, shown or self._held(plan, part_id).text)

    def _held(self, plan: Plan, part_id: str) -> Held:
        return Held(self.held) if isinstance(self.held, str) else self.held(plan, part_id)


def _planted(attribute: str) -> Shown:
    return lambda plan, planting_id: text_of(getattr(planting_of(plan, planting_id), attribute))


def _length_edit(attribute: str) -> Edit:
    return lambda plan, planting_id, text, shown: change_planting(
        plan, planting_id, **{attribute: length_from(text, shown, plan.place.units)}
    )


def _number_edit(attribute: str) -> Edit:
    return lambda plan, planting_id, text, _shown: change_planting(plan, planting_id, **{attribute: whole_from(text)})


def _plants_shown(plan: Plan, planting_id: str) -> str:
    return str(kept.layout_in(plan, planting_id).plants)


def _at(nm: int, given: Length | None, plan: Plan) -> str:
    """A place or length as it was typed, else as exact text."""
    return given.text if given is not None and given.nm == nm else length_of(nm, plan.place.units).text


def _from_shown(plan: Plan, planting_id: str) -> str:
    return _at(kept.layout_in(plan, planting_id).start, planting_of(plan, planting_id).start, plan)


def _from(plan: Plan, planting_id: str, text: str, shown: str) -> Plan:
    return change_planting(plan, planting_id, start=needed_length(text, shown, plan.place.units))


def _to_shown(plan: Plan, planting_id: str) -> str:
    return length_of(kept.layout_in(plan, planting_id).end, plan.place.units).text


def _to(plan: Plan, planting_id: str, text: str, shown: str) -> Plan:
    layout, units = kept.layout_in(plan, planting_id), plan.place.units
    end = needed_length(text, shown, units)
    if end.nm <= layout.start:
        raise PlanError(_("{end} is not beyond {start}").format(end=end, start=length_of(layout.start, units)))
    start = planting_of(plan, planting_id).start or length_of(layout.start, units)
    return resize_planting(plan, planting_id, start, length_of(end.nm - layout.start, units))


def _length_shown(plan: Plan, planting_id: str) -> str:
    return _at(kept.layout_in(plan, planting_id).length, planting_of(plan, planting_id).length, plan)


def _rows_shown(plan: Plan, planting_id: str) -> str:
    return str(kept.layout_in(plan, planting_id).grid.rows or "")


def _in_row_held(plan: Plan, planting_id: str) -> Held:
    return _of_packet(crop_of(plan, planting_of(plan, planting_id).crop).in_row.text)


def _of_packet(text: str) -> Held:
    return Held(_("packet: {value}").format(value=text), text)


def _in_row(plan: Plan, planting_id: str, text: str, shown: str) -> Plan:
    packet = crop_of(plan, planting_of(plan, planting_id).crop).in_row
    length = length_from(text, shown, plan.place.units)
    return change_planting(plan, planting_id, in_row=None if length == packet else length)


def _of_crop(attribute: str, default: str) -> Callable[[Plan, str], Held]:
    """What the packet says of a number, or what holds where it says nothing."""

    def held(plan: Plan, planting_id: str) -> Held:
        number = getattr(crop_of(plan, planting_of(plan, planting_id).crop), attribute)
        return Held(default) if number is None else _of_packet(str(number))

    return held


def _own_number(attribute: str) -> Edit:
    """A number of a planting; the one of its packet is none of its own."""

    def edit(plan: Plan, planting_id: str, text: str, _shown: str) -> Plan:
        packet = getattr(crop_of(plan, planting_of(plan, planting_id).crop), attribute)
        number = whole_from(text)
        return change_planting(plan, planting_id, **{attribute: None if number == packet else number})

    return edit


def _spacing_shown(plan: Plan, planting_id: str) -> str:
    return spacing_text(planting_of(plan, planting_id).row_spacing)


def _spacing_held(plan: Plan, planting_id: str) -> Held:
    return _of_packet(spacing_text(crop_of(plan, planting_of(plan, planting_id).crop).row_spacing))


def _spacing(plan: Plan, planting_id: str, text: str, shown: str) -> Plan:
    packet = crop_of(plan, planting_of(plan, planting_id).crop).row_spacing
    spacing = spacing_from(text, shown, plan.place.units)
    return change_planting(plan, planting_id, row_spacing=() if spacing == packet else spacing)


def _offsets_shown(plan: Plan, planting_id: str) -> str:
    return list_text(planting_of(plan, planting_id).offsets)


def _offsets(plan: Plan, planting_id: str, text: str, _shown: str) -> Plan:
    return change_planting(plan, planting_id, offsets=list_from(text, plan.place.units))


def _of_grid(attribute: str) -> Callable[[Plan, str], Held]:
    """A length that the pattern takes by itself, if it has one."""

    def held(plan: Plan, planting_id: str) -> Held:
        nm: int = getattr(kept.layout_in(plan, planting_id).grid, attribute)
        text = length_of(nm, plan.place.units).text if nm else ""
        return Held(_("usual: {size}").format(size=text) if text else "", text)

    return held


def _per_cell_held(plan: Plan, planting_id: str) -> Held:
    return Held(_("as fit: {count}").format(count=kept.layout_in(plan, planting_id).grid.per_cell))


def _edge_held(plan: Plan, planting_id: str) -> Held:
    """The least edge distance of the crop, else of the bed, else what follows from row spacing and bed."""
    planting = planting_of(plan, planting_id)
    crop, bed = crop_of(plan, planting.crop), bed_of(plan, planting.bed)
    if crop.edge is not None:
        return _of_packet(crop.edge.text)
    if bed.edge is not None:
        return Held(_("bed: {value}").format(value=bed.edge), bed.edge.text)
    least, rule = least_edge(bed, crop, evolve(planting, edge=None))
    usual = length_of(least, plan.place.units).text
    if rule is EdgeRule.MIDDLE:
        return Held(_("middle of the bed: {value}").format(value=usual), usual)
    return Held(_("half the row spacing: {value}").format(value=usual), usual)


PLANTING_FIELDS = (
    TypedField("cell", _("Cell"), _planted("cell"), _length_edit("cell"), held=_of_grid("cell")),
    TypedField(
        "plants_per_cell",
        _("In each cell"),
        _planted("plants_per_cell"),
        _number_edit("plants_per_cell"),
        held=_per_cell_held,
    ),
    TypedField(
        "twin_spacing",
        _("Inside a pair"),
        _planted("twin_spacing"),
        _length_edit("twin_spacing"),
        held=_of_grid("twin"),
    ),
    TypedField("offsets", _("Rows at, from the left edge"), _offsets_shown, _offsets, "15 cm; 60 cm"),
    TypedField("plants", _("Plants"), _plants_shown, _number_edit("plants")),
    TypedField("rows", _("Rows"), _rows_shown, _number_edit("rows"), held=_("as fit")),
    TypedField("from", _("From"), _from_shown, _from),
    TypedField("to", _("To"), _to_shown, _to),
    TypedField("length", _("Length"), _length_shown, _length_edit("length")),
    TypedField("in_row", _("In the row"), _planted("in_row"), _in_row, held=_in_row_held),
    TypedField("row_spacing", _("Between rows"), _spacing_shown, _spacing, held=_spacing_held),
    TypedField("edge", _("Least edge"), _planted("edge"), _length_edit("edge"), held=_edge_held),
    TypedField("slack", _("Slack"), _planted("slack"), _length_edit("slack"), held=_("none")),
    TypedField(
        "round_up_to", _("Round up to"), _planted("round_up_to"), _length_edit("round_up_to"), held=_("nothing")
    ),
    TypedField(
        "end_margin", _("End margin"), _planted("end_margin"), _length_edit("end_margin"), held=_("half a spacing")
    ),
    TypedField("keep_clear", _("Keep clear"), _planted("keep_clear"), _length_edit("keep_clear"), held=_("nothing")),
    TypedField(
        "seeds_per_cell",
        _("Seeds in a cell"),
        _planted("seeds_per_cell"),
        _own_number("seeds_per_cell"),
        held=_of_crop("seeds_per_cell", _("one")),
    ),
    TypedField(
        "clump", _("Left in a place"), _planted("clump"), _own_number("clump"), held=_of_crop("clump", _("one plant"))
    ),
)
"""The fields of a planting's block, in the order of the panel."""
PATTERN_FIELDS = {
    "twin_spacing": Pattern.TWIN,
    "cell": Pattern.CELLS,
    "plants_per_cell": Pattern.CELLS,
    "offsets": Pattern.OFFSETS,
}
"""The fields that only one pattern has."""


def _bed_length(attribute: str) -> Edit:
    return lambda plan, bed_id, text, shown: change_bed(
        plan, bed_id, **{attribute: length_from(text, shown, plan.place.units)}
    )


def _bed_side(attribute: str) -> Edit:
    return lambda plan, bed_id, text, shown: type_side(
        plan, bed_id, attribute, needed_length(text, shown, plan.place.units)
    )


def _bed_text(attribute: str) -> Shown:
    return lambda plan, bed_id: text_of(getattr(bed_of(plan, bed_id), attribute))


def _bed_name(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return change_bed(plan, bed_id, name=text)


def _usable_from(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return change_bed(plan, bed_id, usable_from=date_from(text))


def _bed_reach(attribute: str) -> Shown:
    """A bed's length or width, also where only its shape says it."""
    return lambda plan, bed_id: _at(
        getattr(bed_of(plan, bed_id), attribute).nm, _given(plan, bed_id, attribute), plan
    )


def _given(plan: Plan, bed_id: str, attribute: str) -> Length | None:
    length: Length = getattr(bed_of(plan, bed_id), attribute)
    return length if length.text else None


def _outline(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return type_outline(plan, bed_id, text)


def _diameter(plan: Plan, bed_id: str, text: str, shown: str) -> Plan:
    return type_diameter(plan, bed_id, length_from(text, shown, plan.place.units))


def _box(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return type_box(plan, bed_id, text)


def _map_length(plan: Plan, bed_id: str, text: str, shown: str) -> Plan:
    return type_map_length(plan, bed_id, length_from(text, shown, plan.place.units))


def _slope(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return type_slope(plan, bed_id, text)


def _obstacles(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return type_obstacles(plan, bed_id, text)


BED_FIELDS = (
    TypedField("name", _("Name"), _bed_text("name"), _bed_name),
    TypedField("length", _("Length"), _bed_reach("length"), _bed_side("length")),
    TypedField("width", _("Width"), _bed_reach("width"), _bed_side("width")),
    TypedField("head_margin", _("Head margin"), _bed_text("head_margin"), _bed_length("head_margin"), held=_("none")),
    TypedField("foot_margin", _("Foot margin"), _bed_text("foot_margin"), _bed_length("foot_margin"), held=_("none")),
    TypedField("edge", _("Least edge"), _bed_text("edge"), _bed_length("edge"), held=_("as the crop")),
    TypedField("gap", _("Gap"), _bed_text("gap"), _bed_length("gap"), held=_("none")),
    TypedField("usable_from", _("Usable from"), _bed_text("usable_from"), _usable_from, held=_("at once")),
    TypedField("diameter", _("Diameter"), _bed_text("diameter"), _diameter, held=_("not round")),
    TypedField("slope", _("Slope"), _bed_text("slope"), _slope, held=_("level")),
    TypedField("map_length", _("Map length"), _bed_text("map_length"), _map_length, held=_("follows")),
    TypedField("box", _("Box"), box_text, _box, BOX_EXAMPLE),
    TypedField("outline", _("Outline, tape by offset"), outline_text, _outline, "0 m by 0 m; 8 m by 0 m; 8 m by 1 m"),
    TypedField(
        "obstacles", _("Obstacles"), obstacles_text, _obstacles, _("post at 5 m by 50 cm, 12 cm round, 20 cm clear")
    ),
)
"""The fields of a bed, in the order of the panel."""
