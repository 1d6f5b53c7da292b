"""The day on which the windows of tests look at their plans."""

from datetime import date

TODAY = date(2025, 1, 1)
"""Before the seasons of these."""
