"""What really reaches a screen reader: the window on a display with an accessibility bus, read over that bus.

Run inside a session bus of its own; it prints one line for every part that is found: role, name, states.
"""

import os
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from shutil import which

from tests.journeys.display import display, surroundings

_REGISTRY = "org.a11y.atspi.Registry"
_ROOT_PATH = "/org/a11y/atspi/accessible/root"
_PART = re.compile(r"\('([^']+)', (?:objectpath )?'([^']+)'\)")
_PATIENCE = 60.0
_SELECTED, _FOCUSED = 23, 12
"""The numbers of states in AT-SPI (atspi-constants.h: ATSPI_STATE_SELECTED, ATSPI_STATE_FOCUSED)."""
NEEDED = ("Xvfb", "xdotool", "dbus-run-session", "gdbus")


def launcher() -> str | None:
    """The program that starts an accessibility bus; it stands in different places."""
    name = "at-spi-bus-launcher"
    places = (which(name), f"/usr/libexec/{name}", f"/usr/lib/at-spi2-core/{name}")
    return next((place for place in places if place and os.access(place, os.X_OK)), None)


class Bus:
    """The accessibility bus, asked by the command line."""

    def __init__(self, address: str) -> None:
        self._address = address

    def ask(self, part: tuple[str, str], method: str, *texts: str) -> str:
        """What a part answers, as text; nothing where it does not answer."""
        command = ["gdbus", "call", "--address", self._address, "--dest", part[0], "--object-path", part[1]]
        return subprocess.run(
            [*command, "--method", method, *texts], capture_output=True, encoding="utf-8", check=False
        ).stdout

    def inside(self, part: tuple[str, str]) -> list[tuple[str, str]]:
        """The parts inside of one."""
        return [(one[0], one[1]) for one in _PART.findall(self.ask(part, "org.a11y.atspi.Accessible.GetChildren"))]

    def says(self, part: tuple[str, str]) -> str:
        """A line about a part."""
        role = self.ask(part, "org.a11y.atspi.Accessible.GetRoleName").strip(" \n(',)")
        states = re.findall(r"\d+", self.ask(part, "org.a11y.atspi.Accessible.GetState").replace("uint32", "")) or [
            "0"
        ]
        words = [word for bit, word in ((_SELECTED, "selected"), (_FOCUSED, "focused")) if int(states[0]) >> bit & 1]
        return "|".join((role, self.name_of(part), " ".join(words)))

    def name_of(self, part: tuple[str, str]) -> str:
        """What a part is called."""
        named = self.ask(part, "org.freedesktop.DBus.Properties.Get", "org.a11y.atspi.Accessible", "Name")
        return named[named.find("<") + 2 : named.rfind(">") - 1].replace("\u2009", " ")

    def walk(self, part: tuple[str, str]) -> Iterator[str]:
        """Lines about a part and everything inside it."""
        yield self.says(part)
        for inner in self.inside(part):
            yield from self.walk(inner)

    def drawing(self, part: tuple[str, str], depth: int = 6) -> tuple[str, str] | None:
        """The drawing, somewhere inside a part."""
        for inner in self.inside(part) if depth else ():
            if self.name_of(inner) == "Drawing of the beds":
                return inner
            found = self.drawing(inner, depth - 1)
            if found is not None:
                return found
        return None


def bus_address() -> str:
    """Where the accessibility bus is, once it is there."""
    command = ["gdbus", "call", "--session", "--dest", "org.a11y.Bus", "--object-path", "/org/a11y/bus"]
    until = time.monotonic() + _PATIENCE
    while time.monotonic() < until:
        answer = subprocess.run(
            [*command, "--method", "org.a11y.Bus.GetAddress"], capture_output=True, encoding="utf-8", check=False
        ).stdout
        if "unix:" in answer:
            return answer.strip(" \n(',)")
        time.sleep(0.2)
    raise TimeoutError("no accessibility bus")


def main(folder: str) -> int:
    """Open the window, go down to the second planting by key, and print what a screen reader finds."""
    with display() as number:
        surround = surroundings(number, Path(folder)) | {"QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1"}
        os.environ.update(surround)
        with open(os.devnull, "w", encoding="utf-8") as nowhere:
            launched = [str(launcher()), "--launch-immediately"]
            bus = subprocess.Popen(launched, env=surround, stdout=nowhere, stderr=nowhere)
        command = [sys.executable, "-m", "tests.as_program", "tests.journeys.listened"]
        window = subprocess.Popen(command, env=surround)
        try:
            listened = Bus(bus_address())
            print("\n".join(_heard(listened)))
        finally:
            for running in (window, bus):
                running.terminate()
                running.wait()
    return 0


def _heard(bus: Bus) -> list[str]:
    """What is heard once the second planting has the focus; on a busy machine keys and answers come late."""
    heard: list[str] = []
    drawing: tuple[str, str] | None = None
    until = time.monotonic() + _PATIENCE
    while time.monotonic() < until:
        drawing = drawing or bus.drawing((_REGISTRY, _ROOT_PATH))
        heard = list(bus.walk(drawing)) if drawing is not None else []
        if any(line.startswith("tree item|B ") and line.endswith("|selected focused") for line in heard):
            return heard
        if heard:
            subprocess.run(["xdotool", "key", "Down"], check=True)
        time.sleep(0.5)
    raise TimeoutError(f"the second planting never had the focus: {heard}")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
