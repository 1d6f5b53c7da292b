"""How far to trust a sum, in words."""

from gardenplot.words import _
from gardenplot.working import Number, Trust, Unit

TRUST = {
    Trust.EXACT: _("exact"),
    Trust.GOOD: _("good"),
    Trust.FAIR: _("fair: a week or two"),
    Trust.WEAK: _("weak"),
}
"""How far to trust a sum, in words."""

_FAIR = _("fair")


def trust_words(number: Number) -> str:
    """How far to trust a number; what "a week or two" is said of are days and dates alone."""
    is_of_days = number.unit in (Unit.DATE, Unit.DAYS)
    return TRUST[number.trust] if is_of_days or number.trust is not Trust.FAIR else _FAIR


EXACT = TRUST[Trust.EXACT]
WEAK = _("Weak numbers hang on a guess: the night, the soil and the season decide. They are told as a range.")
"""What is said wherever a weak number is."""
