"""How far to trust a sum, in words."""

from gardenplot.words import _
from gardenplot.working import Trust

TRUST = {
    Trust.EXACT: _("exact"),
    Trust.GOOD: _("good"),
    Trust.FAIR: _("fair: a week or two"),
    Trust.WEAK: _("weak"),
}
"""How far to trust a sum, in words."""

EXACT = TRUST[Trust.EXACT]
WEAK = _("Weak numbers hang on a guess: the night, the soil and the season decide. They are told as a range.")
"""What is said wherever a weak number is."""
