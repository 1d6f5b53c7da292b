"""Set-up for both commands of the README: an environment in .venv, and the libraries that Qt needs from Debian."""

import hashlib
import os
import shutil
import subprocess
import sys
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
_SYSTEMS = Path("/usr/bin/python3")


def environment(extra: str = "") -> None:
    """Make .venv and install the program into it, with an extra of pyproject.toml, unless that was done already."""
    if sys.version_info < (3, 11):  # noqa: UP036  # said in words, before anything else fails
        sys.exit("Gardenplot needs Python 3.11 or newer; this is " + sys.version.split()[0])
    base = _base()
    asked = (TOP / "pyproject.toml").read_bytes() + extra.encode() + sys.version.encode()
    wanted = f"{base}\n{hashlib.sha256(asked).hexdigest()}"
    stamp = _STAMP.read_text(encoding="utf-8") if _STAMP.is_file() else ""
    if stamp == wanted:
        return
    print("Setting up .venv ...", flush=True)
    if not PYTHON.exists() or stamp.partition("\n")[0] != base:
        subprocess.run([base, "-m", "venv", "--clear", str(VENV)], check=True)
    target = f"{TOP}[{extra}]" if extra else str(TOP)
    # What is never loaded need not be compiled, which is most of what the libraries bring.
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-compile"]
    subprocess.run([*pip, "--editable", target], check=True, cwd=TOP)
    _STAMP.write_text(wanted, encoding="utf-8")


def _base() -> str:
    """The Python that .venv is made of: of this version the system's own, where there is one that can make it.

    Distributions build theirs with profile-guided optimisation, and most who build one from source do not: the tests
    take a third longer with it, and so does the start of the program.
    """
    asked = "import ensurepip, sys, venv; print('%d.%d' % sys.version_info[:2])"
    if _SYSTEMS.exists():
        said = subprocess.run([str(_SYSTEMS), "-c", asked], capture_output=True, text=True, check=False).stdout
        if said.strip() == "{}.{}".format(*sys.version_info[:2]):
            return str(_SYSTEMS)
    # What venv itself takes, also from within an environment.
    return str(getattr(sys, "_base_executable", sys.executable))


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
