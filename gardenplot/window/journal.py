"""The journal: work that is not saved is written down within a second of each edit, in a thread of its own."""

import os
import threading
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from gardenplot.errors import FileError
from gardenplot.plan.disk_words import why
from gardenplot.plan.file import flush_file, left_in, write_whole
from gardenplot.plan.holding import hold
from gardenplot.plan.unsaved import Pen, Unsaved
from gardenplot.window.document import Document
from gardenplot.window.garbage import Garbage
from gardenplot.window.own_folder import own_folder
from gardenplot.words import _

ENDS, HELD = ".journal", ".held"
"""How the files of a session end, and the one that it holds while it lives."""
_GATHER = 0.1
"""Seconds in which edits come along that follow one another."""


def journal_folder() -> Path:
    """Where every session that has unsaved work keeps a file of its own."""
    return own_folder() / "journal"


class Journal(QObject):
    """Follows a document: what is on the screen and not saved is in its files, which are gone as soon as it is saved.

    Every state is written whole, so that the program can be killed at any moment, and flushed to the disk later in
    another thread, which may have to wait for seconds. There are two files: a new state goes into the one that was
    not flushed last, so that there is always a whole one after the power fails, too. Files of other sessions are no
    concern of it. `failed` says why nothing can be written down, once until it can.
    """

    failed = Signal(str)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self._document = document
        name = os.urandom(8).hex()
        self.paths = tuple(journal_folder() / f"{name}.{slot}{ENDS}" for slot in "ab")
        self._held = journal_folder() / f"{name}{HELD}"
        self._turn = threading.Condition()
        self._wanted: Unsaved | None = None
        self._done: Unsaved | None = None
        self._ends = self._fails = False
        self._flushed: Path | None = None
        self._unflushed: tuple[Path, datetime] | None = None
        self._pen = Pen()
        self._garbage = Garbage(self)
        self._threads: list[threading.Thread] = []
        for signal in (document.changed, document.opened, document.saved):
            signal.connect(self._note)
        document.opened.connect(self._garbage.keep_all)
        self._garbage.take_over()
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
        for thread in self._threads:
            thread.join()
        self._garbage.hand_back()

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
                self._begin()
            self._turn.notify_all()

    def _begin(self) -> None:
        """Start the threads with the first thing that is to be written down."""
        if not self._threads:
            self._threads = [threading.Thread(target=work, daemon=True) for work in (self._follow, self._settle)]
            for thread in self._threads:
                thread.start()

    def _follow(self) -> None:
        """The thread that writes the last thing wanted, over and over, to the end."""
        held = None
        with suppress(OSError):
            self._held.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            held = hold(self._held)
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
            self._held.unlink(missing_ok=True)
        if held is not None:
            held.close()

    def _write(self, wanted: Unsaved | None) -> None:
        text = self._pen.text(wanted) if wanted is not None else b""
        with self._turn:
            path = self.paths[self._flushed == self.paths[0]]
            # What is just being flushed is written over: once it is flushed it is no longer what is there.
            self._unflushed = None
        try:
            if wanted is None:
                for one in self.paths:
                    one.unlink(missing_ok=True)
            else:
                write_whole(path, text, flush=False)
            for left in left_in(path.parent):
                left.unlink(missing_ok=True)
        except (OSError, FileError) as error:
            self._tell(error)
            return
        with self._turn:
            self._fails = False
            self._unflushed = (path, wanted.changed) if wanted else None
            self._flushed = self._flushed if wanted else None
            self._turn.notify_all()

    def _settle(self) -> None:
        """The thread that flushes what was written, as long as that takes."""
        while True:
            with self._turn:
                self._turn.wait_for(lambda: self._unflushed is not None or self._ends)
                written = self._unflushed
                if self._ends or written is None:
                    return
            try:
                flush_file(written[0])
                flushed = True
            except FileNotFoundError:
                flushed = False
            except OSError as error:
                self._tell(error)
                flushed = False
            with self._turn:
                # What was written anew meanwhile is flushed anew.
                if self._unflushed is written:
                    self._unflushed = None
                    self._flushed = written[0] if flushed else self._flushed

    def _tell(self, error: OSError | FileError) -> None:
        if not self._fails:
            reason = why(error) if isinstance(error, OSError) else str(error)
            self.failed.emit(_("unsaved work cannot be kept safe: {why}").format(why=reason))
        self._fails = True
