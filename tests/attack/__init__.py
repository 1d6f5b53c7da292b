"""Attacks on what must never be lost or let in: short ones with every run, long ones by `GARDENPLOT_ATTACK=long`."""

import os

IS_LONG = os.environ.get("GARDENPLOT_ATTACK") == "long"


def turns(short: int, long: int) -> int:
    """How often something is tried, by how much time there is."""
    return long if IS_LONG else short
