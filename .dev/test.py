"""Run every check: formatting, lint, types, import directions and tests; arguments go to pytest."""

import os
import subprocess
import sys
import time
from tempfile import TemporaryFile

import setup

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
    tests = [str(setup.PYTHON), "-m", "pytest", "-n", "auto", "--dist", "worksteal", *sys.argv[1:]]
    return beside(tests, [mypy])


def beside(long: list[str], short: list[str]) -> int:
    """Run two checks at once; what the shorter one says is told when it fails, else after the longer one's words."""
    told(long)
    with (
        TemporaryFile() as said,
        subprocess.Popen(short, cwd=setup.TOP, env=ENV, stdout=said, stderr=said) as quick,
        subprocess.Popen(long, cwd=setup.TOP, env=ENV) as slow,
    ):
        while slow.poll() is None and not quick.poll():
            time.sleep(0.2)
        if quick.poll():
            slow.terminate()
        elif slow.poll():
            quick.terminate()
            return slow.returncode
        status = quick.wait()
        told(short)
        said.seek(0)
        sys.stdout.buffer.write(said.read())
        sys.stdout.flush()
    return status


def told(check: list[str]) -> None:
    """Say which check it is."""
    print("$", " ".join(check), flush=True)


if __name__ == "__main__":
    sys.exit(main())
