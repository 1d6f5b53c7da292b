"""The folder where the program keeps what is its own: earlier versions of plans, and work that is not saved yet."""

import os
from pathlib import Path

from PySide6.QtCore import QStandardPaths

from gardenplot.plan.versions import Versions

VARIABLE = "GARDENPLOT_FOLDER"
"""The variable of the environment that names another folder."""


def own_folder() -> Path:
    """Where this system keeps what belongs to a program and a person, not to be sent to other machines."""
    place = QStandardPaths.StandardLocation.AppLocalDataLocation
    return Path(os.environ.get(VARIABLE) or QStandardPaths.writableLocation(place))


def versions() -> Versions:
    """The earlier versions of all plan files."""
    return Versions(own_folder() / "versions")
