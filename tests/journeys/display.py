"""A display of its own, Xvfb, for a window in a process of its own."""

import os
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def display() -> Iterator[str]:
    """A display of its own, by its name; a key that a busy machine lets go of late is not repeated there."""
    read, write = os.pipe()
    screen = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1600x1000x24", "-nolisten", "tcp", "-r"],
        pass_fds=[write],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    try:
        with os.fdopen(read) as number:
            yield f":{number.readline().strip()}"
    finally:
        screen.terminate()
        screen.wait()


def surroundings(display: str, folder: Path) -> dict[str, str]:
    """The environment of the window: that display, and a home where nothing is remembered yet."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith(("QT_", "WAYLAND_", "XDG_"))}
    runtime = folder / "runtime"
    runtime.mkdir(mode=0o700)
    return kept | {
        "DISPLAY": display,
        "QT_QPA_PLATFORM": "xcb",
        "HOME": str(folder),
        "XDG_CONFIG_HOME": str(folder / "settings"),
        "XDG_RUNTIME_DIR": str(runtime),
        "LC_ALL": "C.UTF-8",
    }
