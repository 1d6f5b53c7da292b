"""Work that an earlier session left unsaved because it did not end as it should: offered, taken up or thrown away."""

from contextlib import suppress
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from attrs import frozen
from PySide6.QtWidgets import QDialog, QWidget

from gardenplot.drawing.version_words import holds, when
from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.holding import hold
from gardenplot.plan.unsaved import Unsaved, newest_of
from gardenplot.window.journal import ENDS, HELD, Journal, journal_folder
from gardenplot.window.plans_dialog import PlanRow, PlansDialog
from gardenplot.window.questions import is_sure
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

GO_ON, THROW_AWAY = 0, 1


@frozen(eq=False)
class Left:
    """What a session left, held so that no other one takes it up too; None where it cannot be read."""

    name: str
    held: BinaryIO
    unsaved: Unsaved | None
    says: str = ""

    def let_go(self) -> None:
        """Leave it for another start."""
        self.held.close()

    def remove(self) -> None:
        """Be done with it."""
        for path in (*_files(self.name), journal_folder() / f"{self.name}{HELD}"):
            path.unlink(missing_ok=True)
        self.held.close()


def left_work() -> list[Left]:
    """What sessions left that live no more, the last change first; what is in its file by now is cleared away."""
    found = []
    for name in sorted({path.name.partition(".")[0] for path in journal_folder().glob(f"*{ENDS}")}):
        with suppress(OSError):
            held = hold(journal_folder() / f"{name}{HELD}")
            if held is None:
                continue
            left = _read(name, held)
            # Another start may have been done with it in the very moment.
            if not _files(name) or (left.unsaved is not None and left.unsaved.is_in_its_file):
                left.remove()
            else:
                found.append(left)
    earliest = datetime.min.replace(tzinfo=UTC)
    return sorted(found, key=lambda one: one.unsaved.changed if one.unsaved else earliest, reverse=True)


def _files(name: str) -> list[Path]:
    return list(journal_folder().glob(f"{name}.*{ENDS}"))


def _read(name: str, held: BinaryIO) -> Left:
    try:
        return Left(name, held, newest_of(_files(name)))
    except FileError as error:
        return Left(name, held, None, str(error))


class LeftDialog(PlansDialog):
    """Each piece of work with its file, its last change and what it holds."""

    def __init__(self, left: list[Left], parent: QWidget) -> None:
        super().__init__(
            _("Unsaved work"),
            _("Gardenplot did not end as it should. This is what was on the screen and not saved yet."),
            (_("plan"), _("file"), _("last change"), _("holds")),
            [_row(one) for one in left],
            (_("Go on with it"), _("Throw away …")),
            parent,
            leave=_("Ask me next time"),
            need_no_plan=(THROW_AWAY,),
        )


def _row(left: Left) -> PlanRow:
    unsaved = left.unsaved
    if unsaved is None:
        return PlanRow((left.name, "", ""), partial(_refuse, left), lambda _plan: ())
    file = unsaved.path.name if unsaved.path else _("none yet")
    changed = when(unsaved.changed.astimezone(), datetime.now(UTC).astimezone().date())
    return PlanRow((_name(unsaved), file, changed), lambda: unsaved.plan, lambda plan: (holds(plan),))


def _refuse(left: Left) -> Plan:
    raise FileError(left.says)


def _name(unsaved: Unsaved) -> str:
    return unsaved.plan.place.name or (unsaved.path.stem if unsaved.path else _("New plan"))


def offer_left_work(window: "MainWindow", journal: Journal) -> None:
    """Offer what earlier sessions left, and take up what the grower wants to go on with."""
    left = left_work()
    try:
        while left:
            dialog = LeftDialog(left, window)
            if dialog.exec() != QDialog.DialogCode.Accepted:
                return
            chosen = left[dialog.chosen]
            if dialog.deed == GO_ON and chosen.unsaved is not None:
                if _take_up(window, chosen.unsaved, journal):
                    left.remove(chosen)
                    chosen.remove()
                return
            if _is_sure(window, chosen):
                left.remove(chosen)
                chosen.remove()
    finally:
        for one in left:
            one.let_go()


def _take_up(window: "MainWindow", unsaved: Unsaved, journal: Journal) -> bool:
    """Show it as it was; whether it is in the journal of this session, so that it need not be in the other."""
    window.document.start(unsaved.plan, unsaved.path, seen=unsaved.seen, kept=False)
    window.tell(_("taken up as it was left; it is not saved yet"))
    return journal.wait()


def _is_sure(window: "MainWindow", left: Left) -> bool:
    name = _name(left.unsaved) if left.unsaved else left.name
    words = _("Throw away the unsaved work on {name}? It cannot be brought back.").format(name=name)
    return is_sure(window, _("Unsaved work"), words, _("Throw away"))
