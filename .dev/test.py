"""Run every check: formatting, lint, types, import directions and tests; arguments go to pytest."""

import os
import subprocess
import sys
import time
from tempfile import TemporaryFile

import setup

_JOURNEYS = "tests/journeys"
ENV = {
    **os.environ,
    "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen"),
    # Some machines forbid it, and every process that a test starts would compile the whole program again.
    "PYTHONDONTWRITEBYTECODE": "",
}


def main() -> int:
    """Set up, then check; the first check that fails ends the run with its status."""
    setup.system(screen=True)
    setup.environment("dev")
    ruff, mypy, lint_imports = (str(setup.BIN / tool) for tool in ("ruff", "mypy", "lint-imports"))
    for check in ([ruff, "format", "--check", "."], [ruff, "check", "."], [lint_imports]):
        told(check)
        if status := subprocess.run(check, check=False, cwd=setup.TOP, env=ENV).returncode:
            return status
    pytest = [str(setup.PYTHON), "-m", "pytest"]
    spread = [*pytest, "-n", "auto", "--dist", "worksteal"]
    # What is checked once, in a clone of its own, need not be remembered: that takes a quarter as long again.
    types = [mypy, "--cache-dir", os.devnull] if "CI" in os.environ else [mypy]
    if sys.argv[1:]:
        return beside([*spread, *sys.argv[1:]], types)
    # On a journey there is more waiting for a screen than work, which would leave a processor idle.
    return beside([*spread, "--ignore", _JOURNEYS], types, [*pytest, _JOURNEYS])


def beside(long: list[str], *short: list[str]) -> int:
    """Run short checks one after another beside a long one; what they say is told at the end, or where one fails."""
    told(long)
    with TemporaryFile() as said, subprocess.Popen(long, cwd=setup.TOP, env=ENV) as slow:
        failed = 0
        for check in short:
            said.write(f"$ {' '.join(check)}\n".encode())
            said.flush()
            with subprocess.Popen(check, cwd=setup.TOP, env=ENV, stdout=said, stderr=said) as quick:
                while quick.poll() is None and not slow.poll():
                    time.sleep(0.2)
                if slow.poll():
                    quick.terminate()
                    return slow.returncode
            if failed := quick.returncode:
                slow.terminate()
                break
        slow.wait()
        said.seek(0)
        sys.stdout.buffer.write(said.read())
        sys.stdout.flush()
    return failed or slow.returncode


def told(check: list[str]) -> None:
    """Say which check it is."""
    print("$", " ".join(check), flush=True)


if __name__ == "__main__":
    sys.exit(main())
