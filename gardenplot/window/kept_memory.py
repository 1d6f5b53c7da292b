"""Memory that a picture gave back is kept for the next one."""

import ctypes
import sys

_TRIM_THRESHOLD, _MMAP_THRESHOLD = -1, -3
"""What mallopt(3) of glibc calls so in `malloc.h`."""
_MOST_FREE, _LARGEST = 16 << 20, 8 << 20
"""Bytes that may lie free at the end, and those of a piece from which on it is no bed's and goes back at once."""


def keep_memory() -> None:
    """Have the C library keep what is given back.

    The one of most Linux systems hands pieces of some megabytes, which is what a bed's picture takes, back to the
    system each time and asks for the next picture's page by page. Elsewhere this does nothing.
    """
    if sys.platform == "linux":
        set_option = getattr(ctypes.CDLL(None), "mallopt", None)
        if set_option is not None:
            set_option(_TRIM_THRESHOLD, _MOST_FREE)
            set_option(_MMAP_THRESHOLD, _LARGEST)
