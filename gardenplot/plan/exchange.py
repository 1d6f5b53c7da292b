"""Two files that change names in one step, where the system can do that."""

import ctypes
import errno
import os
import sys
from collections.abc import Callable
from pathlib import Path

_CANNOT = frozenset({"ENOSYS", "EINVAL", "ENOTSUP", "EOPNOTSUPP", "EPERM", "ENOENT"})
"""What the step comes to on a system or a disk that does not know it, and where one of the files is not there."""
_HERE, _EXCHANGE = -100, 2
"""AT_FDCWD and RENAME_EXCHANGE of Linux (rename(2)); RENAME_SWAP of macOS has the same number (renamex_np(2))."""


def exchange(one: Path, other: Path) -> bool:
    """Let two files change names, with no moment between in which either name is free.

    False where that cannot be done, and nothing is changed then. Raises OSError.
    """
    step = _step()
    if step is None:
        return False
    if step(os.fsencode(one), os.fsencode(other)) == 0:
        return True
    number = ctypes.get_errno()
    if errno.errorcode.get(number) in _CANNOT:
        return False
    raise OSError(number, os.strerror(number), str(other))


def _step() -> Callable[[bytes, bytes], int] | None:
    """The system's own step; None where it has none."""
    try:
        if sys.platform.startswith("linux"):
            rename = ctypes.CDLL(None, use_errno=True).renameat2
            return lambda one, other: int(rename(_HERE, one, _HERE, other, ctypes.c_uint(_EXCHANGE)))
        if sys.platform == "darwin":
            swap = ctypes.CDLL(None, use_errno=True).renamex_np
            return lambda one, other: int(swap(one, other, ctypes.c_uint(_EXCHANGE)))
    except (AttributeError, OSError):
        return None
    return None
