"""Where the files that come with the program lie, in a checkout or installed."""

from pathlib import Path

_PACKAGE = Path(__file__).parent


def _folder(name: str) -> Path:
    installed = _PACKAGE / f"_{name}"
    return installed if installed.is_dir() else _PACKAGE.parent / name


def resource(name: str) -> Path:
    """The path of a file or folder below `resources/`."""
    return _folder("resources") / name


def sample(name: str) -> Path:
    """The path of a sample plan, for example `sample("skerry-brae.gardenplot")`."""
    return _folder("samples") / name


def samples() -> Path:
    """The folder of the sample plans."""
    return _folder("samples")
