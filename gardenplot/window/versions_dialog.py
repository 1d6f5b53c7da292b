"""The earlier versions of the plan's file: looked at, opened as a plan of their own, brought back."""

from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from PySide6.QtWidgets import QDialog, QWidget

from gardenplot.drawing.version_words import differs, holds, when
from gardenplot.plan import Plan
from gardenplot.plan.versions import MOST, Version
from gardenplot.window.document import Document
from gardenplot.window.own_folder import versions
from gardenplot.window.plans_dialog import PlanRow, PlansDialog
from gardenplot.words import _

BRING_BACK, OWN = 0, 1
"""What can be done with a version: brought back into the plan, or opened as a plan of its own."""


class VersionsDialog(PlansDialog):
    """Each version with its time, what it holds, and in what it differs from the plan as it is now."""

    def __init__(self, path: Path, now: Plan | None, parent: QWidget) -> None:
        self._versions = versions().of(path)
        own, heads = _("Open as a plan of its own"), [_("saved"), _("holds")]
        deeds = [own] if now is None else [_("Bring back"), own]
        if now is not None:
            heads.append(_("beside the plan as it is now"))
        says = _("What was in {file} when it was saved, the newest first. The last {count} versions are kept.")
        super().__init__(
            _("Earlier versions"),
            says.format(file=path.name, count=MOST),
            heads,
            [_row(version, now) for version in self._versions],
            deeds,
            parent,
            leave=_("Close"),
        )

    @property
    def saved(self) -> str:
        """When the chosen version was saved, in words."""
        return _when(self._versions[self.chosen])


def _row(version: Version, now: Plan | None) -> PlanRow:
    def words(plan: Plan) -> tuple[str, ...]:
        return (holds(plan),) if now is None else (holds(plan), differs(plan, now))

    return PlanRow((_when(version),), partial(_read, version), words)


def _read(version: Version) -> Plan:
    return version.read().plan


def _when(version: Version) -> str:
    return when(version.saved.astimezone(), datetime.now(UTC).astimezone().date())


def show_versions(document: Document, path: Path, parent: QWidget, *, damaged: bool = False) -> Plan | None:
    """Show the versions of a file and bring one back as one step of undo; or the plan that is to be opened instead.

    Where the file itself is `damaged`, its versions can only be opened.
    """
    dialog = VersionsDialog(path, None if damaged else document.plan, parent)
    if dialog.exec() != QDialog.DialogCode.Accepted or dialog.plan is None:
        return None
    if damaged or dialog.deed == OWN:
        return dialog.plan
    document.change(_("Bring back the version of {when}").format(when=dialog.saved), dialog.plan)
    return None
