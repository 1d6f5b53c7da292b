"""Work that is not saved yet, as it is written down while it goes on: the plan, its file, and when it was changed."""

import json
import os
from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.parse import quote_from_bytes, unquote_to_bytes

from attrs import define, field, frozen

from gardenplot.errors import FileError
from gardenplot.plan.codec import LISTS, VERSION
from gardenplot.plan.file import content_of, mark_of, plan_of_text, text_of
from gardenplot.plan.json_text import json_of
from gardenplot.plan.part_text import part_text
from gardenplot.plan.value import Plan
from gardenplot.words import _

_KEY, _FORMAT = "gardenplot journal", 1


@frozen
class Unsaved:
    """What was on the screen: a plan that is not what its file holds, or has none."""

    plan: Plan
    path: Path | None
    seen: str | None
    """The mark of what the file was known to hold."""
    changed: datetime

    @property
    def is_in_its_file(self) -> bool:
        """Whether the file holds the very plan by now, so that nothing is left to be saved."""
        try:
            return self.path is not None and mark_of(content_of(self.path)) == mark_of(text_of(self.plan).encode())
        except FileError:
            return False


@define
class Pen:
    """Writes the states of one plan one after another; what has not changed since the last one is not made anew."""

    _known: dict[int, tuple[object, str]] = field(factory=dict)
    """The text of each part by its identity, with the part, so that no other one comes by it."""

    def text(self, unsaved: Unsaved) -> bytes:
        """What is written down, each part as it stands in a plan file, so that saving finds it made already."""
        head = {
            _KEY: _FORMAT,
            # Names of files are bytes, which need be no text.
            "path": quote_from_bytes(os.fsencode(unsaved.path)) if unsaved.path else None,
            "seen": unsaved.seen,
            "changed": unsaved.changed.astimezone(UTC).isoformat(),
        }
        return f'{json.dumps(head)[:-1]}, "plan": {self._plan_text(unsaved.plan)}}}'.encode()

    def _plan_text(self, plan: Plan) -> str:
        before, self._known = self._known, {}
        fields = [f'"gardenplot": {VERSION}', f'"place": {self._part_text(plan.place, before)}']
        for name in LISTS:
            parts = ", ".join(self._part_text(part, before) for part in getattr(plan, name))
            fields.append(f'"{name}": [{parts}]')
        fields += (f"{json.dumps(name)}: {text}" for name, text in plan.unknown)
        return f"{{{', '.join(fields)}}}"

    def _part_text(self, part: object, before: dict[int, tuple[object, str]]) -> str:
        known = before.get(id(part))
        if known is None:
            known = part, part_text(part)
        self._known[id(part)] = known
        return known[1]


def read_unsaved(path: Path) -> Unsaved:
    """Read what was written down; raises FileError."""
    try:
        raw = json_of(content_of(path).decode())
        if not isinstance(raw, dict) or raw.get(_KEY) != _FORMAT:
            raise FileError(_("{path}: is no unsaved work of this program").format(path=path))
        return _unsaved_of(raw)
    except (KeyError, TypeError, ValueError):
        raise FileError(_("{path}: is damaged").format(path=path)) from None


def newest_of(paths: Iterable[Path]) -> Unsaved:
    """The last of what was written down in some files, of which one may be damaged; raises FileError."""
    found, wrong = [], FileError(_("nothing was written down"))
    for path in paths:
        try:
            found.append(read_unsaved(path))
        except FileError as error:
            wrong = error
    if not found:
        raise wrong
    return max(found, key=lambda one: one.changed)


def _unsaved_of(raw: dict[str, Any]) -> Unsaved:
    """Raises FileError, KeyError, TypeError and ValueError."""
    return Unsaved(
        plan=plan_of_text(json.dumps(raw["plan"])).plan,
        path=Path(os.fsdecode(unquote_to_bytes(str(raw["path"])))) if raw["path"] else None,
        seen=raw["seen"] if raw["seen"] is None else str(raw["seen"]),
        changed=datetime.fromisoformat(raw["changed"]).astimezone(UTC),
    )
