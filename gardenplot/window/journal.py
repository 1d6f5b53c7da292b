"""The journal: work that is not saved is written down within a second of each edit, in a thread of its own."""

import threading
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import QObject, Signal

from gardenplot.errors import FileError
from gardenplot.plan.disk_words import why
from gardenplot.plan.file import left_in, write_whole
from gardenplot.plan.holding import hold
from gardenplot.plan.unsaved import Unsaved, unsaved_text
from gardenplot.window.document import Document
from gardenplot.window.own_folder import own_folder
from gardenplot.words import _

ENDS, HELD = ".journal", ".held"
"""How the file of a session ends, and that which it holds while it lives."""
_GATHER = 0.2
"""Seconds in which edits come along that follow one another."""


def journal_folder() -> Path:
    """Where every session that has unsaved work keeps a file of its own."""
    return own_folder() / "journal"


class Journal(QObject):
    """Follows a document: what is on the screen and not saved is in its file, which is gone as soon as it is saved.

    Files of other sessions are no concern of it. `failed` says why nothing can be written down, once until it can.
    """

    failed = Signal(str)

    def __init__(self, document: Document) -> None:
        super().__init__(document)
        self._document = document
        self.path = journal_folder() / f"{uuid4()}{ENDS}"
        self._turn = threading.Condition()
        self._wanted: Unsaved | None = None
        self._done: Unsaved | None = None
        self._ends = self._fails = False
        self._thread: threading.Thread | None = None
        for signal in (document.changed, document.opened, document.saved):
            signal.connect(self._note)
        self._note()

    def wait(self, seconds: float = 10.0) -> bool:
        """Wait until what is on the screen is written down; False where that takes longer or cannot be."""
        with self._turn:
            return self._turn.wait_for(lambda: self._wanted is self._done, seconds) and not self._fails

    def end(self) -> None:
        """The session is finished, and leaves nothing."""
        with self._turn:
            self._wanted, self._ends = None, True
            self._turn.notify_all()
        if self._thread is not None:
            self._thread.join()

    def _note(self) -> None:
        """Have written down what is on the screen now; the plan is a value, so a thread can read it at leisure."""
        document = self._document
        with self._turn:
            if self._ends:
                return
            if document.is_saved:
                self._wanted = None
            else:
                self._wanted = Unsaved(document.plan, document.path, document.seen, datetime.now(UTC))
                if self._thread is None:
                    self._thread = threading.Thread(target=self._follow, name="journal", daemon=True)
                    self._thread.start()
            self._turn.notify_all()

    def _follow(self) -> None:
        """The thread: write the last thing wanted, over and over, to the end."""
        held = None
        with suppress(OSError):
            self.path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            held = hold(self.path.with_suffix(HELD))
        while True:
            with self._turn:
                self._turn.wait_for(lambda: self._wanted is not self._done or self._ends)
                self._turn.wait_for(lambda: self._ends, _GATHER)
                wanted, ends = self._wanted, self._ends
            self._write(wanted)
            with self._turn:
                self._done = wanted
                self._turn.notify_all()
            if ends:
                break
        with suppress(OSError):
            self.path.with_suffix(HELD).unlink(missing_ok=True)
        if held is not None:
            held.close()

    def _write(self, wanted: Unsaved | None) -> None:
        try:
            if wanted is None:
                self.path.unlink(missing_ok=True)
            else:
                write_whole(self.path, unsaved_text(wanted))
            for left in left_in(self.path.parent):
                left.unlink(missing_ok=True)
            self._fails = False
        except (OSError, FileError) as error:
            if not self._fails:
                reason = why(error) if isinstance(error, OSError) else str(error)
                self.failed.emit(_("unsaved work cannot be kept safe: {why}").format(why=reason))
            self._fails = True
