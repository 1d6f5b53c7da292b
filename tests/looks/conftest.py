"""Pictures are taken of the program in its own face and colours."""

from tests.window.conftest import dressed, pytest_itemcollected

__all__ = ["dressed", "pytest_itemcollected"]
