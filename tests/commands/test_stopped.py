"""A command that is stopped by hand ends at once, whatever of it still works in a thread."""

import signal

import pytest

from gardenplot.__main__ import main
from gardenplot.commands import fill


def test_a_command_that_is_stopped_says_so_and_ends_by_the_signal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stopped(_arguments: object) -> int:
        raise KeyboardInterrupt

    done: list[object] = []
    monkeypatch.setattr(fill, "run", stopped)
    monkeypatch.setattr(signal, "signal", lambda *how: done.append(how))
    monkeypatch.setattr(signal, "raise_signal", done.append)
    main(["fill", "any.json"])
    assert done == [(signal.SIGINT, signal.SIG_DFL), signal.SIGINT]
    assert capsys.readouterr().err == "gardenplot: stopped before it was done\n"
