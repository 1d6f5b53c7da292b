"""The look of the window: the bundled face, the palette of a light or a dark screen, and the widgets' colours."""

from functools import cache, lru_cache, partial

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.drawing.style import DARK, LIGHT, Ink, Palette
from gardenplot.files import resource
from gardenplot.window.widget_sheet import sheet

_USUAL_POINTS = 10.0
_IS_DARK = "dark"
_FACES = ("DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf")


@cache
def face() -> str:
    """The family of the bundled face, loaded once; systems differ in whether its cut is part of the family's name."""
    loaded = [QFontDatabase.addApplicationFont(str(resource(f"fonts/{name}"))) for name in _FACES]
    families = QFontDatabase.applicationFontFamilies(loaded[0])
    return next((family for family in families if "Condensed" in family), families[0])


def magnified() -> float:
    """How many times larger than usual the system wants its text; the drawing grows along with it."""
    return QApplication.font().pointSizeF() / _USUAL_POINTS if QApplication.instance() else 1.0


def widget_font(px: float, *, bold: bool = False) -> QFont:
    """The face of the drawing in a list or on a button, at a size that grows with the system's text."""
    return drawing_font(px * magnified(), bold=bold)


@lru_cache(maxsize=256)
def drawing_font(px: float, *, bold: bool = False) -> QFont:
    """The face of the drawing at a size in pixels, without hinting and kerning so that it measures as on paper.

    The same object is given again, so nobody may change it.
    """
    font = QFont(face())
    font.setPixelSize(max(1, round(px)))
    font.setBold(bold)
    font.setKerning(False)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font


def palette() -> Palette:
    """The palette that the program wears, of a light or a dark screen; the light one where there is none."""
    app = QCoreApplication.instance()
    return DARK if app is not None and app.property(_IS_DARK) else LIGHT


def colour(inks: Palette, ink: Ink, alpha: float = 1.0) -> QColor:
    """A role as a colour, more or less clear.

    The same object is given again, so nobody may change it.
    """
    return _colour(inks[ink], alpha)


@lru_cache(maxsize=256)
def _colour(name: str, alpha: float) -> QColor:
    made = QColor(name)
    made.setAlphaF(alpha)
    return made


def write_in(widget: QWidget, ink: Ink) -> None:
    """Let a label or a line be in an ink, on a light screen and on a dark one, also after a change between them."""
    widget.setProperty("ink", ink.value)


def dress(app: QApplication) -> None:
    """Give the whole program its face and its colours, which follow the system from now on."""
    app.setStyle("Fusion")
    font = QFont(face())
    font.setPointSizeF(max(app.font().pointSizeF(), _USUAL_POINTS))
    app.setFont(font)
    _wear(app, app.styleHints().colorScheme())
    _follow(app)


@cache
def _follow(app: QApplication) -> None:
    app.styleHints().colorSchemeChanged.connect(partial(_wear, app))


def _wear(app: QApplication, scheme: Qt.ColorScheme) -> None:
    """Put on the colours of a light or a dark screen; what is drawn is drawn anew, as Qt tells it of its palette."""
    app.setProperty(_IS_DARK, scheme == Qt.ColorScheme.Dark)
    app.setPalette(_qt_palette(palette()))
    worn = sheet(palette(), magnified())
    if app.styleSheet() != worn:
        # Every part of every window is polished anew, even by the same sheet.
        app.setStyleSheet(worn)


def _qt_palette(inks: Palette) -> QPalette:
    roles = {
        QPalette.ColorRole.Window: Ink.PANEL,
        QPalette.ColorRole.Base: Ink.PAPER,
        QPalette.ColorRole.AlternateBase: Ink.PANEL,
        QPalette.ColorRole.Button: Ink.PAPER,
        QPalette.ColorRole.ToolTipBase: Ink.PAPER,
        QPalette.ColorRole.WindowText: Ink.INK,
        QPalette.ColorRole.Text: Ink.INK,
        QPalette.ColorRole.ButtonText: Ink.INK,
        QPalette.ColorRole.ToolTipText: Ink.INK,
        QPalette.ColorRole.PlaceholderText: Ink.SECOND,
        QPalette.ColorRole.Highlight: Ink.ACCENT,
        QPalette.ColorRole.HighlightedText: Ink.PAPER,
        QPalette.ColorRole.Link: Ink.ACCENT,
        QPalette.ColorRole.Mid: Ink.RULE,
        QPalette.ColorRole.Light: Ink.PAPER,
        QPalette.ColorRole.Midlight: Ink.PANEL,
        QPalette.ColorRole.Dark: Ink.EDGE,
    }
    made = QPalette()
    for role, ink in roles.items():
        made.setColor(role, QColor(inks[ink]))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(inks[Ink.SECOND]))
    return made
