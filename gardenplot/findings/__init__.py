"""What a plan breaks or risks, as plain values."""

from gardenplot.findings.finding import Finding, Kind
from gardenplot.findings.ground import find_about, find_on_ground
from gardenplot.findings.search import find_all, find_in_bed, find_in_orders, find_of_planting
from gardenplot.findings.tools import find_unmarkable

__all__ = [
    "Finding",
    "Kind",
    "find_about",
    "find_all",
    "find_in_bed",
    "find_in_orders",
    "find_of_planting",
    "find_on_ground",
    "find_unmarkable",
]
