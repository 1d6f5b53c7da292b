"""The program: its window, or one of the commands that need none."""

import builtins
import gc
import os
import signal
import sys
from argparse import ArgumentParser
from importlib import import_module
from types import ModuleType

from gardenplot import __version__
from gardenplot.errors import GardenplotError
from gardenplot.words import _

COMMANDS = ("count", "sheet", "draw", "dates", "supplies", "fill", "again", "check")
"""Each is a module of `gardenplot.commands`, loaded when it is called: a count needs no Qt, a window no reportlab."""


def main(argv: list[str] | None = None) -> int:
    """Run the program; exit status 2 with one line on standard error where a file or a request is no good."""
    words = sys.argv[1:] if argv is None else argv
    try:
        if words and words[0] in COMMANDS:
            return _command(words[0], words[1:])
        return _window(words)
    except GardenplotError as error:
        print(f"gardenplot: {error}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        # By the signal itself and not in good order: the solver's thread would be waited for.
        print(f"gardenplot: {_('stopped before it was done')}", file=sys.stderr, flush=True)
        signal.signal(signal.SIGINT, signal.SIG_DFL)
        signal.raise_signal(signal.SIGINT)
        return 130
    except BrokenPipeError:
        # Whoever read the output has seen enough, as `head` has; what is still to be written out goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0


def _command(name: str, words: list[str]) -> int:
    module = import_module(f"gardenplot.commands.{name}")
    parser = ArgumentParser(prog=f"gardenplot {name}", description=module.__doc__)
    module.add_arguments(parser)
    status: int = module.run(parser.parse_intermixed_args(words))
    return status


def _window(words: list[str]) -> int:
    parser = ArgumentParser(
        prog="gardenplot",
        description=_("Opens the window on a plan, or on the example. Commands without a window: {commands}.").format(
            commands=", ".join(COMMANDS)
        ),
    )
    parser.add_argument("plan", nargs="?", metavar="PLAN", help=_("a plan file"))
    parser.add_argument("--version", action="version", version=f"gardenplot {__version__}")
    arguments = parser.parse_args(words)
    try:
        start = load_window()
    except ImportError as error:
        libraries = import_module("gardenplot.window.libraries")
        lacking = libraries.missing()
        raise GardenplotError(libraries.missing_words(lacking) if lacking else str(error)) from error
    status: int = start.run(arguments.plan)
    return status


def load_window() -> ModuleType:
    """Load all that the window needs at its start; raises ImportError.

    What is loaded stays to the end, so nothing in it is garbage. Not looking for any saves a fifteenth of the start,
    and later no drag is held up by it.
    """
    gc.disable()
    # The program has no use for the threads that numpy would start for its linear algebra.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    try:
        import_module("PySide6.QtWidgets")
        # PySide reads the source of all that is imported after it, for a sign that is nowhere in this program.
        builtins.__import__ = getattr(builtins, "__orig_import__", builtins.__import__)
        import_module("gardenplot.window.put_off").put_off()
        return import_module("gardenplot.window.start")
    finally:
        gc.freeze()
        gc.enable()


if __name__ == "__main__":
    sys.exit(main())
