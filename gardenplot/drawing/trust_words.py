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
