"""Modules that the first picture has no use for: each is loaded when something of it is first asked for.

They are imported at the top, as any other, by their own name: `from gardenplot.gestures import drags`. Where nothing
is put off, as in commands and most tests, that is all there is to it. What saves, and what asks about it, does not
wait: the program may be replaced on the disk while it runs.
"""

import sys
from importlib import import_module
from types import ModuleType

PUT_OFF = {
    "drawing": (
        "cover_words", "date_list", "hand_words", "handle_words", "number_words", "opened", "series_words",
        "shopping_list", "spoken_words", "timing_words", "today_words", "trays",
    ),
    "exports": ("apart", "counts_csv"),
    "gestures": (
        "choosing", "copies", "cover_typed", "drags", "hardening", "kept", "measure", "obstacle_moved", "orders",
        "outline_drawn", "outline_traced", "push", "series", "sought", "split", "stage", "supply_typed", "swap",
        "trials",
    ),
    "layout": ("candidate", "shade"),
    "season": ("emergence",),
    "sheets": ("choices",),
    "supplies": ("shopping",),
    "window": (
        "beside_drawing", "canvas_handles", "canvas_keys", "gap_keys", "hand_lines", "index_lines", "long_work",
        "measure_keys", "pattern_choice", "prints", "tracing_keys",
    ),
}  # fmt: skip
"""By their rooms. None may stand for a base or a decorator, or in what is worked out as a module is loaded."""


class _Waits(ModuleType):
    """Stands for a module in its room, for those that import it before it is loaded."""

    def __getattr__(self, name: str) -> object:
        return getattr(import_module(self.__name__), name)


def put_off() -> None:
    """Have all of them wait that are not loaded by now: who imports one from here on has what stands for it."""
    for room, names in PUT_OFF.items():
        at = import_module(f"gardenplot.{room}")
        for name in names:
            if f"{at.__name__}.{name}" not in sys.modules:
                setattr(at, name, _Waits(f"{at.__name__}.{name}"))
