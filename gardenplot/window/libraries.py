"""The system libraries that Qt needs on Linux, and the words when some are missing."""

import ctypes
import os
import sys

from gardenplot.words import _

_ALWAYS = {
    "libGL.so.1": "libgl1",
    "libEGL.so.1": "libegl1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libfontconfig.so.1": "libfontconfig1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libdbus-1.so.3": "libdbus-1-3",
}
_ON_X = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
}
"""Shared libraries and the Debian packages that hold them."""


def missing() -> list[str]:
    """The Debian packages of the libraries that are not there; none on other systems."""
    if not sys.platform.startswith("linux"):
        return []
    on_x = bool(os.environ.get("DISPLAY")) and os.environ.get("QT_QPA_PLATFORM", "xcb").startswith("xcb")
    wanted = _ALWAYS | (_ON_X if on_x else {})
    return [package for library, package in wanted.items() if not _loads(library)]


def missing_words(packages: list[str]) -> str:
    """What to say, and do, about missing packages."""
    return _("Qt needs libraries that are missing here: {packages}; on Debian: apt-get install {packages}").format(
        packages=" ".join(packages)
    )


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True
