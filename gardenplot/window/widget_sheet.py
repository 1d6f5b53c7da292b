"""The style sheet of all widgets: quiet frames, fields with an outline, and a ring round what has focus."""

from gardenplot.drawing.style import DARK, Ink, Palette
from gardenplot.files import resource

_ACCEPTS_LAST = 3
"""The layout of Qt's own boxes, of a question or a warning, in which the button that accepts stands at the end."""


def sheet(inks: Palette, times: float) -> str:
    """The style sheet for text `times` as large as usual.

    Fields, boxes and sliders have an outline of 3 to 1 (WCAG 2.2, 1.4.11). What has focus wears a ring twice as thick
    as any other line, so that it is told by form and not by colour alone.
    """
    parts = (_grounds, _fields, _buttons, _boxes, _slider, _lists, _tabs, _calendar, _scroll_bars, _menus)
    return "".join(part(inks, times) for part in parts) + _inked(inks)


def _mark(name: str) -> str:
    return f"url({resource(f'marks/{name}.svg').as_posix()})"


def _inked(inks: Palette) -> str:
    return "".join(f'QFrame[ink="{ink}"] {{ color: {inks[ink]}; }}\n' for ink in Ink)


def _grounds(inks: Palette, _times: float) -> str:
    return f"""
    QMainWindow, QDialog {{ background: {inks[Ink.PANEL]}; }}
    QMainWindow::separator {{ background: {inks[Ink.RULE]}; width: 3px; height: 3px; }}
    QMainWindow::separator:hover {{ background: {inks[Ink.FIELD]}; }}
    QScrollArea {{ border: 2px solid {inks[Ink.PANEL]}; background: {inks[Ink.PANEL]}; }}
    QScrollArea:focus {{ border: 2px solid {inks[Ink.ACCENT]}; }}
    QAbstractScrollArea::corner {{ background: {inks[Ink.PANEL]}; border: none; }}
    Canvas {{ border: none; border-top: 2px solid {inks[Ink.PAPER]}; background: {inks[Ink.PAPER]}; }}
    Canvas:focus {{ border-top: 2px solid {inks[Ink.ACCENT]}; }}
    QStatusBar {{ background: {inks[Ink.PANEL]}; }}
    QToolTip {{ background: {inks[Ink.PAPER]}; color: {inks[Ink.INK]}; border: 1px solid {inks[Ink.FIELD]};
        padding: 3px; }}
    """


def _fields(inks: Palette, times: float) -> str:
    accent, arrow = inks[Ink.ACCENT], _mark("down")
    return f"""
    QLineEdit, QComboBox, QSpinBox, QDateEdit {{ background: {inks[Ink.PAPER]}; border: 1px solid {inks[Ink.FIELD]};
        border-radius: 3px; padding: 3px 6px; min-height: 1.3em; }}
    QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QDateEdit:focus {{
        border: 2px solid {accent}; padding: 2px 5px; }}
    QLineEdit:disabled, QComboBox:disabled, QDateEdit:disabled {{ background: {inks[Ink.PANEL]};
        border: 1px dotted {inks[Ink.FIELD]}; color: {inks[Ink.SECOND]}; }}
    QLineEdit[wrong="true"] {{ border: 2px dashed {accent}; padding: 2px 5px; }}
    QLineEdit[wrong="true"]:focus {{ border: 2px solid {accent}; }}
    QComboBox {{ combobox-popup: 0; }}
    QComboBox QAbstractItemView {{ border: 1px solid {inks[Ink.FIELD]}; background: {inks[Ink.PAPER]}; outline: none;
        selection-background-color: {inks[Ink.INK]}; selection-color: {inks[Ink.PAPER]}; }}
    QComboBox::drop-down, QDateEdit::drop-down {{ border: none; width: {round(20 * times)}px; }}
    QComboBox::down-arrow, QDateEdit::down-arrow {{ image: {arrow};
        width: {round(10 * times)}px; height: {round(6 * times)}px; }}
    """


def _buttons(inks: Palette, _times: float) -> str:
    # A strong button's ring lies round its dark ground: on it the accent would not stand out by 3 to 1.
    paper, ink, accent = inks[Ink.PAPER], inks[Ink.INK], inks[Ink.ACCENT]
    return f"""
    QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; button-layout: {_ACCEPTS_LAST}; }}
    QMessageBox {{ messagebox-question-icon: {_mark("ask")}; messagebox-warning-icon: {_mark("warn")}; }}
    QPushButton {{ background: {paper}; border: 1px solid {inks[Ink.FIELD]}; border-radius: 3px; padding: 4px 12px; }}
    QPushButton:focus {{ border: 2px solid {accent}; padding: 3px 11px; }}
    QPushButton:pressed {{ background: {inks[Ink.RULE]}; }}
    QPushButton:disabled {{ color: {inks[Ink.SECOND]}; border: 1px dotted {inks[Ink.FIELD]}; }}
    QPushButton[strong="true"] {{ background: {ink}; background-clip: padding; color: {paper}; font-weight: bold;
        border: 2px solid transparent; padding: 5px 12px; }}
    QPushButton[strong="true"]:disabled {{ background: {paper}; color: {inks[Ink.SECOND]};
        border: 2px dotted {inks[Ink.FIELD]}; }}
    QPushButton[strong="true"]:focus {{ border: 2px solid {accent}; }}
    """


def _boxes(inks: Palette, times: float) -> str:
    side, tick = round(12 * times), _mark("tick-dark" if inks is DARK else "tick")
    return f"""
    QCheckBox, QRadioButton {{ border: 2px solid transparent; border-radius: 3px; padding: 1px; spacing: 6px; }}
    QCheckBox:focus, QRadioButton:focus {{ border: 2px solid {inks[Ink.ACCENT]}; }}
    QCheckBox::indicator, QAbstractItemView::indicator {{ width: {side}px; height: {side}px; border-radius: 2px;
        border: 1px solid {inks[Ink.FIELD]}; background: {inks[Ink.PAPER]}; }}
    QCheckBox::indicator:checked, QAbstractItemView::indicator:checked {{ image: {tick};
        border: 1px solid {inks[Ink.INK]}; background: {inks[Ink.INK]}; }}
    QRadioButton::indicator {{ width: {side}px; height: {side}px; border-radius: {side // 2 + 1}px;
        border: 1px solid {inks[Ink.FIELD]}; background: {inks[Ink.PAPER]}; }}
    QRadioButton::indicator:checked {{ border: {max(3, side // 4)}px solid {inks[Ink.INK]};
        width: {side - 2 * max(3, side // 4) + 2}px; height: {side - 2 * max(3, side // 4) + 2}px; }}
    """


def _slider(inks: Palette, times: float) -> str:
    wide, off = round(10 * times), round(6 * times)
    return f"""
    QSlider {{ border: 2px solid transparent; border-radius: 3px; min-height: {round(20 * times)}px; }}
    QSlider:focus {{ border: 2px solid {inks[Ink.ACCENT]}; }}
    QSlider::groove:horizontal {{ height: 4px; background: {inks[Ink.FIELD]}; border-radius: 2px; margin: 0 3px; }}
    QSlider::handle:horizontal {{ width: {wide}px; margin: -{off}px -3px; border-radius: 3px;
        border: 1px solid {inks[Ink.INK]}; background: {inks[Ink.ACCENT]}; }}
    QSlider::handle:horizontal:disabled {{ border: 1px dotted {inks[Ink.FIELD]}; background: {inks[Ink.PANEL]}; }}
    """


def _lists(inks: Palette, _times: float) -> str:
    paper, accent = inks[Ink.PAPER], inks[Ink.ACCENT]
    return f"""
    QTableView, QListView, QTreeView {{ border: 2px solid {paper}; background: {paper};
        gridline-color: {inks[Ink.RULE]}; }}
    QTableView:focus, QListView:focus, QTreeView:focus {{ border: 2px solid {accent}; }}
    QHeaderView::section {{ background: {inks[Ink.PANEL]}; border: none; border-bottom: 1px solid {inks[Ink.RULE]};
        padding: 3px 6px; }}
    QTreeView::item {{ padding: 1px 0 1px 3px; }}
    QListView::item {{ padding: 1px 0; }}
    """


def _tabs(inks: Palette, _times: float) -> str:
    panel, paper = inks[Ink.PANEL], inks[Ink.PAPER]
    return f"""
    QTabWidget::pane {{ border: none; }}
    QTabBar::tab {{ background: {panel}; padding: 3px 10px; border: 2px solid {panel}; }}
    QTabBar::tab:selected {{ background: {paper}; font-weight: bold; border: 2px solid {paper};
        border-top: 2px solid {inks[Ink.INK]}; }}
    QTabBar::tab:selected:focus {{ border: 2px solid {inks[Ink.ACCENT]}; }}
    """


def _calendar(inks: Palette, _times: float) -> str:
    paper, panel, ink = inks[Ink.PAPER], inks[Ink.PANEL], inks[Ink.INK]
    return f"""
    QCalendarWidget QWidget#qt_calendar_navigationbar {{ background: {panel}; }}
    QCalendarWidget QToolButton {{ background: {panel}; color: {ink}; border: 2px solid {panel}; padding: 3px 6px;
        font-weight: bold; }}
    QCalendarWidget QToolButton:hover {{ border: 2px solid {inks[Ink.FIELD]}; }}
    QCalendarWidget QToolButton:focus {{ border: 2px solid {inks[Ink.ACCENT]}; }}
    QCalendarWidget QToolButton#qt_calendar_prevmonth {{ qproperty-icon: {_mark("left")}; }}
    QCalendarWidget QToolButton#qt_calendar_nextmonth {{ qproperty-icon: {_mark("right")}; }}
    QCalendarWidget QTableView {{ border: none; background: {paper}; }}
    """


def _scroll_bars(inks: Palette, times: float) -> str:
    wide, least = round(12 * min(times, 1.5)), round(28 * times)
    return f"""
    QScrollBar {{ background: {inks[Ink.PANEL]}; border: none; }}
    QScrollBar:vertical {{ width: {wide}px; }}
    QScrollBar:horizontal {{ height: {wide}px; }}
    QScrollBar::handle {{ background: {inks[Ink.FIELD]}; border: 3px solid {inks[Ink.PANEL]}; border-radius: 5px; }}
    QScrollBar::handle:hover {{ background: {inks[Ink.SECOND]}; }}
    QScrollBar::handle:vertical {{ min-height: {least}px; }}
    QScrollBar::handle:horizontal {{ min-width: {least}px; }}
    QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
    QScrollBar::add-page, QScrollBar::sub-page {{ background: {inks[Ink.PANEL]}; }}
    """


def _menus(inks: Palette, _times: float) -> str:
    paper, ink = inks[Ink.PAPER], inks[Ink.INK]
    return f"""
    QMenuBar {{ background: {inks[Ink.PANEL]}; }}
    QMenu {{ background: {paper}; border: 1px solid {inks[Ink.FIELD]}; }}
    QMenu::item {{ padding: 4px 24px; }}
    QMenu::item:selected, QMenuBar::item:selected {{ background: {ink}; color: {paper}; }}
    QMenu::item:disabled {{ color: {inks[Ink.SECOND]}; }}
    """
