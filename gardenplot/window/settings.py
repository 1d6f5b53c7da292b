"""What the program remembers from one start to the next, besides files and panels."""

from PySide6.QtCore import QLocale, QSettings


def kept_paper() -> str:
    """The paper chosen last; at first Letter where people measure in inches, else A4."""
    metric = QLocale.system().measurementSystem() == QLocale.MeasurementSystem.MetricSystem
    return str(QSettings().value("paper", "a4" if metric else "letter"))


def keep_paper(paper: str) -> None:
    """Remember a paper."""
    QSettings().setValue("paper", str(paper))
