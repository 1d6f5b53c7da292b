"""One action of the window: its words, its keys, what it does, and why it cannot be done now."""

from collections.abc import Callable, Iterable

from attrs import field, frozen
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

Keys = QKeySequence.StandardKey
Typable = str | Keys | Iterable[str]


def _sequences(keys: Typable) -> tuple[QKeySequence, ...]:
    """Keys as Qt has them; a standard key is what this system uses for it first."""
    texts = [keys] if isinstance(keys, str | Keys) else keys
    return tuple(made for text in texts if not (made := QKeySequence(text)).isEmpty())


def _always() -> str:
    return ""


def _nothing() -> None:
    """What a switch does besides telling of its state."""


@frozen(eq=False)
class Action:
    """What can be done, once; menus, keys, the index and the page of keys are all made from it.

    `why_not` gives the reason why it cannot be done now, nothing where it can. `also` holds further words by which it
    is found. `toggles` makes it a switch, and is told the new state; `is_on` is asked for the state where something
    else changes it too. `made` is an action that Qt keeps itself, as for undo and for panels.
    """

    id: str
    words: str
    does: Callable[[], object] = _nothing
    keys: tuple[QKeySequence, ...] = field(default="", converter=_sequences)
    why_not: Callable[[], str] = _always
    also: str = ""
    toggles: Callable[[bool], object] | None = None
    is_on: Callable[[], bool] | None = None
    made: QAction | None = None

    @property
    def name(self) -> str:
        """Its words without the mark of the letter that chooses it."""
        return plain(self.words)


class Rule:
    """A ruled line between the actions of a menu."""


@frozen(eq=False)
class Submenu:
    """A menu inside a menu: of actions, or filled anew whenever it opens."""

    words: str
    entries: tuple[Action, ...] = ()
    fill: Callable[[QMenu], None] | None = None


Entry = Action | Submenu | Rule


@frozen(eq=False)
class Menu:
    """A menu of the menu bar, in the order in which it is read."""

    id: str
    words: str
    entries: tuple[Entry, ...]

    @property
    def name(self) -> str:
        """Its words without the mark of the letter that opens it."""
        return plain(self.words)

    def path_of(self, action: Action) -> str:
        """The words through which one comes to an action: "File ▸ Open recent"."""
        inner = (one.words for one in self.entries if isinstance(one, Submenu) and action in one.entries)
        return " ▸ ".join((self.name, *map(plain, inner)))

    def actions(self) -> tuple[Action, ...]:
        """All its actions, those of its submenus where these stand."""
        found: list[Action] = []
        for entry in self.entries:
            if isinstance(entry, Action):
                found.append(entry)
            elif isinstance(entry, Submenu):
                found.extend(entry.entries)
        return tuple(found)


def plain(words: str) -> str:
    """Words without the & that marks a letter."""
    return words.replace("&&", "\0").replace("&", "").replace("\0", "&")


def key_words(keys: Iterable[QKeySequence]) -> str:
    """Keys as this system writes them, the first one first."""
    return ", ".join(one.toString(QKeySequence.SequenceFormat.NativeText) for one in keys)
