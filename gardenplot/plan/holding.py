"""A file that is held while a program lives: the system lets go of it when the program ends, however it ends."""

import sys
from pathlib import Path
from typing import BinaryIO

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl


def hold(path: Path) -> BinaryIO | None:
    """Hold a file, made if it is not there, until what is given back is closed; None where somebody holds it.

    Raises OSError.
    """
    file = path.open("ab")
    try:
        if sys.platform == "win32":
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        file.close()
        return None
    return file
