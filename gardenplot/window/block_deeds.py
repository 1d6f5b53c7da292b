"""What the menus do with blocks on the drawing: choose all, copy, swap, split, join, measure."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from gardenplot.drawing import hand_words
from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures import choosing, copies, drags, kept, measure, split, swap
from gardenplot.gestures.reading import needed_length
from gardenplot.units import length_of
from gardenplot.window import canvas_keys
from gardenplot.window.ask import Ask
from gardenplot.window.late import ask
from gardenplot.window.reasons import CHOOSE_PLANTING, NO_BED
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.gestures.split import Parts
    from gardenplot.window.main import MainWindow


class BlockDeeds:
    """What is done to the chosen blocks; it says what came of it, or why it cannot be."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._stage, self._sight = window.canvas.stage, window.sight
        self._copied: tuple[str, ...] = ()
        self._told = ""
        self._sight.selected.connect(self._tell_chosen)

    def choose_all(self) -> None:
        """Choose all plantings of the bed, and once these are chosen all of the plan; on the ground all beds."""
        sight, plan = self._sight, self._stage.plan
        if self._window.views.shows_ground:
            sight.choose_beds((*sight.beds, *(bed.id for bed in plan.beds if bed.id not in sight.beds)))
        else:
            sight.choose(plan, choosing.all_of(plan, sight.day, sight.chosen, sight.bed))
        self._window.views.take_keys()

    def copy(self) -> None:
        """Keep in mind what is chosen, to be planted once more."""
        if self._lead() is not None:
            self._copied = self._sight.chosen
            words = _("{crop} copied: Paste plants it in the next gap, without the order")
            self._window.tell(words.format(crop=hand_words.chosen_name(self._stage.plan, self._copied)))
            self._window.registry.refresh()

    def why_no_paste(self) -> str:
        """Why nothing can be pasted: nothing was copied, or it is no longer in the plan."""
        known = {one.id for one in self._window.document.plan.plantings} if self._copied else set()
        is_there = bool(self._copied) and known.issuperset(self._copied)
        return "" if is_there else _("Copy a planting first: Edit ▸ Copy.")

    def paste(self) -> None:
        """Plant copies of what was copied in the first gap after it that holds them."""
        reason = self.why_no_paste()
        if reason:
            self._window.tell(reason)
            return
        _try(
            self._window,
            lambda: canvas_keys.settle(copies.try_next_gap(self._stage.plan, self._copied), drags.COPY, self._stage),
        )

    def swap(self, way: int) -> None:
        """Exchange the chosen block with the next one towards the foot or the head."""
        lead = self._lead()
        if lead is not None:
            _try(
                self._window,
                lambda: canvas_keys.settle(swap.try_swap(self._stage.plan, lead, way), swap.SWAP, self._stage),
            )

    def split(self) -> None:
        """Split the chosen block where the pointer is in it, or where its menu was opened, else in its middle."""
        canvas = self._window.canvas
        pointed = canvas.hand.at if canvas.menu_at is None else canvas.menu_at
        found = canvas.places.under(pointed) if pointed is not None else None
        planting = self._sight.planting or (found.planting if found is not None else None)
        if planting is None:
            self._window.tell(CHOOSE_PLANTING)
            return
        at = found.x if found is not None and found.planting == planting else None
        _try(
            self._window,
            lambda: _settle(
                self._window, split.try_split(self._stage.plan, planting, at), split.SPLIT, hand_words.parts_words
            ),
        )

    def split_at(self) -> None:
        """Ask for a tape reading and split the chosen block there."""
        lead = self._lead()
        if lead is None:
            return
        plan, units = self._stage.plan, self._stage.plan.place.units
        block = kept.layout_in(plan, lead)
        middle = length_of((block.start + block.end) // 2, units).text

        def take(typed: Mapping[str, object]) -> Mapping[str, str]:
            try:
                at = needed_length(str(typed["at"]), middle, units).nm
                _settle(
                    self._window, split.try_split(self._stage.plan, lead, at), split.SPLIT, hand_words.parts_words
                )
            except GardenplotError as error:
                return {"at": error.says}
            return {}

        asks = (Ask("at", _("Tape reading"), middle),)
        note = _("The block is split at the whole rank nearest to it; both parts stay with the order.")
        ask(_("Split the block"), asks, take, _("Split block"), note, self._window)

    def join(self, way: int) -> None:
        """Join the chosen block with the like one towards the foot or the head."""
        lead = self._lead()
        if lead is not None:
            _try(
                self._window,
                lambda: _settle(
                    self._window, split.try_join(self._stage.plan, lead, way), split.JOIN, hand_words.joined_words
                ),
            )

    def measure(self) -> None:
        """Take the measuring tool in hand; Escape puts it away."""
        plan, sight = self._stage.plan, self._sight
        bed = sight.bed or (plan.beds[0].id if plan.beds else None)
        if bed is None:
            self._window.tell(NO_BED)
            return
        self._stage.begin(
            measure.measure(self._stage, measure.measured_for(plan, bed, sight.planting)), measuring=True
        )
        self._window.canvas.setFocus()
        self._window.tell(
            _("Press and draw, or click two points. Keys: arrows, Ctrl for the next mark, Tab, Escape.")
        )

    def _tell_chosen(self) -> None:
        """Say how much is chosen where it is more than one planting."""
        bar, told = self._window.statusBar(), self._told
        if self._sight.others:
            self._told = hand_words.several_line(self._stage.plan, self._sight.chosen, self._sight.day)
            self._window.tell(self._told)
        elif told and bar.currentMessage() == told:
            bar.clearMessage()

    def _lead(self) -> str | None:
        if self._sight.planting is None:
            self._window.tell(CHOOSE_PLANTING)
        return self._sight.planting


def _try(window: "MainWindow", does: Callable[[], None]) -> None:
    """Do something to blocks, or say why it cannot be; the keyboard is on the drawing afterwards."""
    try:
        does()
    except PlanError as error:
        window.tell(str(error))
    window.canvas.setFocus()


def _settle(window: "MainWindow", parts: "Parts", verb: str, words: Callable[..., str]) -> None:
    """Make a split or a join the plan and say what came of it."""
    stage = window.canvas.stage
    canvas_keys.settle(parts.trial, verb, stage)
    if stage.plan is parts.trial.plan:
        window.tell(words(parts.trial.plan, parts.trial.planting, parts.first, parts.rest, parts.whole))
