"""Open the program on a plan, by default a sample; without a screen, write its sheet and its picture instead."""

import os
import subprocess
import sys
from pathlib import Path

import setup

SAMPLE = setup.TOP / "samples" / "kestrel-howe.gardenplot"


def main() -> int:
    """Set up, then open the window or write the files; the exit status of the program."""
    setup.system(screen=False)
    setup.environment()
    plan = Path(sys.argv[1]).resolve() if len(sys.argv) > 1 else SAMPLE
    if _has_screen():
        return subprocess.run([setup.PYTHON, "-m", "gardenplot", str(plan)], check=False).returncode
    sheet, picture = Path(f"{plan.stem}-sheet.pdf").resolve(), Path(f"{plan.stem}.png").resolve()
    for command in (["sheet", plan, sheet], ["draw", plan, picture]):
        status = subprocess.run([setup.PYTHON, "-m", "gardenplot", *map(str, command)], check=False).returncode
        if status:
            return status
    print(f"There is no screen here. The bed sheets are in {sheet}, the drawing is in {picture}.")
    return 0


def _has_screen() -> bool:
    return not sys.platform.startswith("linux") or any(
        os.environ.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY")
    )


if __name__ == "__main__":
    sys.exit(main())
