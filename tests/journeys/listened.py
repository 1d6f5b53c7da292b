"""The window that a screen reader listens to, until it is told to end."""

import sys

from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from tests.plans import metric_plan
from tests.today import TODAY


def main() -> int:
    """Show two beds, with the keyboard in the drawing."""
    app = made_app()
    window = MainWindow()
    window.document.today = lambda: TODAY
    window.document.start(metric_plan())
    window.show()
    window.activateWindow()
    window.canvas.setFocus()
    return app.exec()


if __name__ == "__main__":
    sys.exit(main())
