"""What grew in a bed in earlier seasons, as it is typed: "2025 Brassicaceae, 2024 Solanaceae (tomato)"."""

import re

from gardenplot.errors import PlanError
from gardenplot.gestures.typed import TypedField
from gardenplot.plan import Past, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.words import _

_SEASON = re.compile(r"(?P<season>\d{1,4})\s+(?P<family>[^()]*[^()\s])\s*(\((?P<crop>[^()]*)\))?")
_EXAMPLE = "2025 Brassicaceae, 2024 Solanaceae"


def history_text(plan: Plan, bed_id: str) -> str:
    """What a bed remembers, as it is typed."""
    return ", ".join(
        f"{past.season} {past.family}" + (f" ({past.crop})" if past.crop else "")
        for past in bed_of(plan, bed_id).history
    )


def type_history(plan: Plan, bed_id: str, text: str, _shown: str = "") -> Plan:
    """Give a bed other seasons, apart by commas or semicolons; raises PlanError where one cannot be read."""
    known = bed_of(plan, bed_id).history
    parts = (part.strip() for part in re.split(r"[,;\n]", text))
    return change_bed(plan, bed_id, history=tuple(_past(part, known) for part in parts if part))


def _past(text: str, known: tuple[Past, ...]) -> Past:
    found = _SEASON.fullmatch(text) if text.isprintable() else None
    if found is None:
        raise PlanError(
            _("“{typed}” is no season with a family: write it like {example}").format(
                typed=text[:40], example=_EXAMPLE
            )
        )
    past = Past(int(found["season"]), found["family"], (found["crop"] or "").strip())
    return next(
        (one for one in known if (one.season, one.family, one.crop) == (past.season, past.family, past.crop)), past
    )


HISTORY = TypedField("history", _("Families of earlier seasons"), history_text, type_history, _EXAMPLE)
"""The line of the bed's panel."""
