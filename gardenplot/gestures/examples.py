"""What stands in grey in an empty field: an example, which says that it is one, or what holds while it is empty."""

from gardenplot.units import Units
from gardenplot.words import _

IN_FEET = {
    "in_row": "10 in",
    "row_spacing": _("10 in to 16 in"),
    "seeds_per_row": "12 / ft",
    "plants_per_area": "40 / sq ft",
    "offsets": "6 in; 24 in",
    "box": _("8 ft by 4 ft, boards 1 1/2 in, posts 3 1/2 in"),
    "outline": "0 ft by 0 ft; 25 ft by 0 ft; 25 ft by 3 ft",
    "soil": "50 °F",
    "drip_lines": "8 in; 22 in",
    "obstacles": _("post at 16 ft by 18 in, 4 in round, 8 in clear"),
}
"""By the name of the field, for plans in feet; the fields themselves bring those for plans in metres."""


def example_for(field: str, example: str, units: Units) -> str:
    """The example of a field as it is written where the plan's units are in use."""
    return example if units is Units.METRIC or not example else IN_FEET.get(field, example)


def grey(example: str, default: str = "") -> str:
    """The words in an empty field: what holds while nothing is typed, else an example of what can be."""
    if default or not example:
        return default
    return _("like {example}").format(example=example)
