"""Windows that are attacked wear the program's own face and colours."""

from tests.window.conftest import dressed

__all__ = ["dressed"]
