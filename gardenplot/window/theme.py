"""The look of the window: the bundled face, the palette of a light or a dark screen, and the widgets' colours."""

from functools import cache, lru_cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.style import DARK, LIGHT, Ink, Palette
from gardenplot.files import resource

_USUAL_POINTS = 10.0
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
    """The palette that goes with the system's light or dark."""
    dark = QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark
    return DARK if dark else LIGHT


def colour(inks: Palette, ink: Ink, alpha: float = 1.0) -> QColor:
    """A role as a colour, more or less clear."""
    made = QColor(inks[ink])
    made.setAlphaF(alpha)
    return made


def dress(app: QApplication) -> None:
    """Give the whole program its face and its colours."""
    app.setStyle("Fusion")
    font = QFont(face())
    font.setPointSizeF(max(app.font().pointSizeF(), _USUAL_POINTS))
    app.setFont(font)
    inks = palette()
    app.setPalette(_qt_palette(inks))
    app.setStyleSheet(_sheet(inks))


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


def _arrow() -> str:
    return resource("marks/down.svg").as_posix()


def _sheet(inks: Palette) -> str:
    """What Fusion draws too loud: frames, headers and the one strong button."""
    rule, paper, panel, ink, accent = (inks[one] for one in (Ink.RULE, Ink.PAPER, Ink.PANEL, Ink.INK, Ink.ACCENT))
    return f"""
    QMainWindow, QDialog {{ background: {panel}; }}
    QMainWindow::separator {{ background: {rule}; width: 1px; height: 1px; }}
    QDockWidget::title {{ background: {panel}; padding: 6px 8px; text-align: left; }}
    QLineEdit, QComboBox, QSpinBox, QDateEdit {{ background: {paper}; border: 1px solid {rule}; border-radius: 3px;
        padding: 3px 6px; min-height: 1.3em; }}
    QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QDateEdit:focus {{
        border: 2px solid {accent}; padding: 2px 5px; }}
    QComboBox {{ combobox-popup: 0; }}
    QComboBox QAbstractItemView {{ border: 1px solid {rule}; background: {paper}; outline: none;
        selection-background-color: {ink}; selection-color: {paper}; }}
    QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; }}
    QComboBox::drop-down, QDateEdit::drop-down {{ border: none; width: 20px; }}
    QComboBox::down-arrow, QDateEdit::down-arrow {{ image: url({_arrow()}); width: 10px; height: 6px; }}
    QLineEdit[wrong="true"] {{ border: 2px solid {accent}; padding: 2px 5px; }}
    QPushButton {{ background: {paper}; border: 1px solid {rule}; border-radius: 3px; padding: 4px 12px; }}
    QPushButton:focus {{ border: 2px solid {accent}; padding: 3px 11px; }}
    QPushButton:disabled {{ color: {inks[Ink.SECOND]}; }}
    QPushButton[strong="true"] {{ background: {ink}; color: {paper}; border: 1px solid {ink}; font-weight: bold; }}
    QPushButton[strong="true"]:focus {{ border: 2px solid {accent}; }}
    QTableView, QListView {{ border: none; background: {paper}; gridline-color: {rule}; }}
    QHeaderView::section {{ background: {panel}; border: none; border-bottom: 1px solid {rule}; padding: 3px 6px; }}
    QTreeView::item {{ padding-left: 3px; }}
    QTabWidget::pane {{ border: none; }}
    QTabBar::tab {{ background: {panel}; padding: 5px 12px; border: none; }}
    QTabBar::tab:selected {{ background: {paper}; font-weight: bold; border-top: 2px solid {ink}; }}
    QTabBar::tab:focus {{ color: {accent}; }}
    QScrollArea {{ border: none; background: {panel}; }}
    QMenuBar, QStatusBar {{ background: {panel}; }}
    QMenu {{ background: {paper}; border: 1px solid {rule}; }}
    QMenu::item {{ padding: 4px 24px; }}
    QMenu::item:selected, QMenuBar::item:selected {{ background: {ink}; color: {paper}; }}
    QMenu::item:disabled {{ color: {inks[Ink.SECOND]}; }}
    """
