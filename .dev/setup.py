"""Set-up for both commands of the README: an environment in .venv, and the libraries that Qt needs from Debian."""

import hashlib
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

TOP = Path(__file__).resolve().parent.parent
VENV = TOP / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
_STAMP = VENV / "gardenplot-stamp"
_QT = [
    "libgl1", "libegl1", "libglib2.0-0", "libfontconfig1", "libxkbcommon0", "libdbus-1-3", "libxcb-cursor0",
    "libxkbcommon-x11-0", "libxcb-icccm4", "libxcb-keysyms1", "libxcb-shape0",
]  # fmt: skip
_SCREEN = ["xvfb", "xdotool"]


def environment(extra: str = "") -> None:
    """Make .venv and install the program into it, with an extra of pyproject.toml, unless that was done already."""
    if sys.version_info < (3, 11):  # noqa: UP036  # said in words, before anything else fails
        sys.exit("Gardenplot needs Python 3.11 or newer; this is " + sys.version.split()[0])
    wanted = hashlib.sha256((TOP / "pyproject.toml").read_bytes() + extra.encode() + sys.version.encode()).hexdigest()
    if _STAMP.is_file() and _STAMP.read_text() == wanted:
        return
    print("Setting up .venv ...", flush=True)
    if not PYTHON.exists():
        venv.create(VENV, with_pip=True)
    target = f"{TOP}[{extra}]" if extra else str(TOP)
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--editable", target]
    subprocess.run(pip, check=True, cwd=TOP)
    _STAMP.write_text(wanted)


def system(*, screen: bool) -> None:
    """Install what Qt, and with `screen` a virtual X display, needs from Debian; elsewhere say what is missing."""
    if not sys.platform.startswith("linux"):
        return
    missing = [name for name in _QT if not _installed(name)] if shutil.which("dpkg-query") else []
    missing += [name for name in _SCREEN if screen and shutil.which(name.replace("xvfb", "Xvfb")) is None]
    if not missing:
        return
    apt = ["apt-get", "install", "--yes", "--quiet", "--no-install-recommends", *missing]
    if shutil.which("apt-get") and os.geteuid() == 0:
        print("Installing " + " ".join(missing), flush=True)
        env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        for command in (["apt-get", "update", "--quiet"], apt):
            subprocess.run(command, check=False, stdout=subprocess.DEVNULL, env=env)
    else:
        print("Missing on this system, install with: sudo " + " ".join(apt))


def _installed(name: str) -> bool:
    found = subprocess.run(
        ["dpkg-query", "--show", "--showformat=${Status}", name], capture_output=True, text=True, check=False
    )
    return "install ok installed" in found.stdout
