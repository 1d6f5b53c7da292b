"""What a plan breaks or risks, as plain values."""

from gardenplot.findings.finding import Finding, Kind
from gardenplot.findings.search import find_all, find_in_bed, find_in_orders

__all__ = ["Finding", "Kind", "find_all", "find_in_bed", "find_in_orders"]
