"""The plan files that were opened or saved last, and the examples."""

from pathlib import Path

from PySide6.QtCore import QSettings

from gardenplot.files import samples
from gardenplot.plan.file import SUFFIX

_MOST = 8


def recent() -> list[Path]:
    """The files opened or saved last that are still there, the last one first."""
    kept = QSettings().value("recent", [])
    names = [kept] if isinstance(kept, str) else kept if isinstance(kept, list) else []
    return [Path(name) for name in names if isinstance(name, str) and Path(name).is_file()]


def remember(path: Path) -> None:
    """Put a file on top of the recent ones."""
    names = [str(path.resolve()), *(str(one) for one in recent() if one != path.resolve())]
    QSettings().setValue("recent", names[:_MOST])


def examples() -> list[Path]:
    """The sample plans."""
    return sorted(samples().glob(f"*{SUFFIX}"))
