"""The pages that tell about the program: help, and keys."""

from typing import TYPE_CHECKING

from gardenplot.window.late import change_keys, help_page

if TYPE_CHECKING:
    from gardenplot.window.help_page import HelpPage
    from gardenplot.window.main import MainWindow


class Pages:
    """Opens them; help stays open beside the work, keys are changed and closed."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self.page: HelpPage | None = None

    def help(self) -> None:
        """Show the help page, or bring it to the front."""
        if self.page is None:
            self.page = help_page(self._window.registry, self._window)
        self.page.show()
        self.page.raise_()
        self.page.activateWindow()

    def keys(self) -> None:
        """Show all actions with their keys, to change them."""
        change_keys(self._window.registry, self._window)
