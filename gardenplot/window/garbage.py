"""Garbage is looked for in the window's own thread alone, and there by the clock."""

import gc

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

_EVERY = 2000
"""Milliseconds from one look for garbage to the next."""
_YOUNG = 30
"""Of so many looks, one is for all garbage that is not kept."""


class Garbage(QObject):
    """Takes over from Python, which looks for garbage in whichever thread has made the most of it by then.

    Parts of a window that are thrown away in another thread than their own bring the program down, and any thread
    that makes a list may be the one that throws them away: Python cannot be told to spare one. So its own looks are
    put off, and a clock of the window looks instead. Nothing else would do: what threads write down is made of lists,
    and a process of its own would have to be handed a plan of thousands of parts at every edit.

    What has outlived a look for all garbage is kept, that is, not looked at again: a large plan is a million parts,
    none of which is ever garbage of this kind, and to look through them would hold the window up for a quarter of a
    second. So what there is when a plan is opened is kept unseen, and Python's own looks are put off from the start:
    they would hold up whatever is being done just then, a drag or a filling that is drawn. All is looked through when
    nobody waits for the window: when another program is turned to.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._clock = QTimer(self)
        self._clock.setInterval(_EVERY)
        self._clock.timeout.connect(self._look)
        self._looks = 0
        app = QGuiApplication.instance()
        if isinstance(app, QGuiApplication):
            app.applicationStateChanged.connect(self._look_while_away)

    def take_over(self) -> None:
        """Look for garbage here from now on, and nowhere else."""
        gc.disable()
        gc.freeze()
        self._clock.start()

    def hand_back(self) -> None:
        """Leave it to Python again."""
        if self._clock.isActive():
            self._clock.stop()
            gc.unfreeze()
            gc.enable()

    def keep_all(self) -> None:
        """Keep what there is; to be told when there is much of it at once."""
        if self._clock.isActive():
            gc.freeze()

    def _look(self) -> None:
        """Look for garbage: often for what is young, now and then for all that came since the last such look."""
        self._looks += 1
        if self._looks % _YOUNG:
            gc.collect(1)
        else:
            gc.collect()
            gc.freeze()

    def _look_while_away(self, state: Qt.ApplicationState) -> None:
        """Look through all there is, which may take a while; what is no garbage is kept."""
        if state != Qt.ApplicationState.ApplicationActive and self._clock.isActive():
            gc.unfreeze()
            gc.collect()
            gc.freeze()
