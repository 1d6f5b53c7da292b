"""Whether a weakness is known of any library that the program needs, by pip-audit, which has to be installed for it.

    python3 .dev/weaknesses.py       0: none is known; 1: some are, and are named; 2: not all were checked, and why

It looks up the very versions in .venv. pip-audit by itself says that none is known where it could look up nothing.
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

from setup import PYTHON

_AUDIT = (
    "pip-audit",
    "--format",
    "json",
    "--progress-spinner",
    "off",
    "--no-deps",
    "--disable-pip",
    "-r",
)
_NEEDED = """
import re
from importlib.metadata import PackageNotFoundError, distribution
wanted, seen = ["gardenplot"], {}
while wanted:
    name = re.sub("[-_.]+", "-", wanted.pop()).lower()
    try:
        one = None if name in seen else distribution(name)
    except PackageNotFoundError:
        one = None  # for another system, or another Python
    if one is not None:
        seen[name] = one.version
        wanted += [re.match(r"[\\w.-]+", line)[0] for line in one.requires or [] if "extra ==" not in line]
print("\\n".join(f"{name}=={version}" for name, version in sorted(seen.items()) if name != "gardenplot"))
"""


def main() -> int:
    """Check and tell."""
    needed = subprocess.run([PYTHON, "-c", _NEEDED], check=True, capture_output=True, encoding="utf-8").stdout
    try:
        with tempfile.TemporaryDirectory() as folder:
            listed = Path(folder) / "needed.txt"
            listed.write_text(needed)
            came = subprocess.run([*_AUDIT, listed], check=False, capture_output=True, encoding="utf-8")
        found = json.loads(came.stdout)["dependencies"]
    except (OSError, ValueError, KeyError) as error:
        print(f"Not checked: pip-audit is not there or told nothing ({error}).")
        return 2
    return told(found, needed.split())


def told(found: list[dict[str, Any]], needed: list[str]) -> int:
    """Say what was found of what is needed; what nothing was told of was not checked."""
    checked = {f"{one['name']}=={one['version']}".lower() for one in found if "vulns" in one}
    weak = [one for one in found if one.get("vulns")]
    for one in weak:
        print(f"{one['name']} {one['version']}: {', '.join(each['id'] for each in one['vulns'])}")
    missed = [one for one in needed if one.lower() not in checked]
    if missed:
        print(f"Not checked: {', '.join(missed)}.")
    if weak:
        return 1
    if not missed:
        print("No weakness is known of any of them.")
    return 2 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
