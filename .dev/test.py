"""Run every check: formatting, lint, types, import directions and tests; arguments go to pytest."""

import os
import subprocess
import sys

import setup


def main() -> int:
    """Set up, then check; the first check that fails ends the run with its status."""
    setup.system(screen=True)
    setup.environment("dev")
    tools = setup.BIN
    checks: list[list[object]] = [
        [tools / "ruff", "format", "--check", "."],
        [tools / "ruff", "check", "."],
        [tools / "mypy"],
        [tools / "lint-imports"],
        [setup.PYTHON, "-m", "pytest", "-n", "auto", "--dist", "worksteal", *sys.argv[1:]],
    ]
    env = {**os.environ, "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen")}
    for check in checks:
        print("$", " ".join(str(word) for word in check), flush=True)
        status = subprocess.run([str(word) for word in check], check=False, cwd=setup.TOP, env=env).returncode
        if status:
            return status
    return 0


if __name__ == "__main__":
    sys.exit(main())
