"""Run a module of the tests as `python -m` does, with the window loaded before it as the program itself loads it.

    python -m tests.as_program tests.attack.large 8

So it starts in half the time: PySide looks into nothing that is imported after it, and no garbage is looked for until
then. What such a process starts in turn for long work loads no more than what the program's own does: it loads anew
what was run as the main module, which is this one.
"""

import runpy
import sys

from gardenplot.__main__ import load_window

if __name__ == "__main__":
    load_window()
    del sys.argv[0]
    runpy.run_module(sys.argv[0], run_name="__main__")
