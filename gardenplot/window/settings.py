"""What the program remembers from one start to the next, besides files and panels."""

from PySide6.QtCore import QLocale, QSettings
from PySide6.QtGui import QKeySequence

_PORTABLE = QKeySequence.SequenceFormat.PortableText


def measures_in_inches() -> bool:
    """Whether the people of this system measure in feet and inches."""
    return QLocale.system().measurementSystem() != QLocale.MeasurementSystem.MetricSystem


def kept_paper() -> str:
    """The paper chosen last; at first Letter where people measure in inches, else A4."""
    return str(QSettings().value("paper", "letter" if measures_in_inches() else "a4"))


def keep_paper(paper: str) -> None:
    """Remember a paper."""
    QSettings().setValue("paper", str(paper))


def kept_choice(name: str) -> str:
    """What was chosen last of a print, as the text that was kept; nothing at first."""
    return str(QSettings().value(f"print/{name}", ""))


def keep_choice(name: str, value: str) -> None:
    """Remember a choice of a print."""
    QSettings().setValue(f"print/{name}", value)


def kept_keys() -> dict[str, tuple[QKeySequence, ...]]:
    """The keys that the grower gave to actions, by their ids."""
    settings = QSettings()
    settings.beginGroup("keys")
    kept = {action: settings.value(action) for action in settings.childKeys()}
    return {action: _read_keys(keys) for action, keys in kept.items() if isinstance(keys, str)}


def _read_keys(keys: str) -> tuple[QKeySequence, ...]:
    return tuple(one for one in QKeySequence.listFromString(keys, _PORTABLE) if not one.isEmpty())


def keep_keys(action: str, keys: tuple[QKeySequence, ...], *, at_first: tuple[QKeySequence, ...]) -> None:
    """Remember the keys of an action; those that it has at first need no memory."""
    if keys == at_first:
        QSettings().remove(f"keys/{action}")
    else:
        QSettings().setValue(f"keys/{action}", QKeySequence.listToString(list(keys), _PORTABLE))
