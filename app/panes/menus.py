"""Menus and their keys: every command of the window can be reached without the mouse."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from app.panes.look_strip import VIEWS

Keys = QKeySequence.StandardKey | str


class Commands(NamedTuple):
    """What the menus call."""

    new: Callable[[], object]
    new_from: Callable[[Path], object]
    open: Callable[[], object]
    save: Callable[[], object]
    save_as: Callable[[], object]
    write_plan: Callable[[], object]
    print_plans: Callable[[], object]
    save_plans: Callable[[], object]
    close: Callable[[], object]
    undo: Callable[[], object]
    redo: Callable[[], object]
    find_choice: Callable[[], object]
    find_part: Callable[[], object]
    copy_list: Callable[[], object]
    show_list: Callable[[int], object]
    look_from: Callable[[str], object]
    fit: Callable[[], object]


class Menus:
    """The menu bar; `undo` and `redo` are switched on and off by the window."""

    def __init__(self, window: QMainWindow, commands: Commands, demos: Path) -> None:
        key = QKeySequence.StandardKey
        file = window.menuBar().addMenu("&File")
        _add(file, "&New bed", key.New, commands.new)
        _demo_menu(file, demos, commands.new_from)
        _add(file, "&Open …", key.Open, commands.open)
        file.addSeparator()
        _add(file, "&Save", key.Save, commands.save)
        _add(file, "Save &as …", "Ctrl+Shift+S", commands.save_as)
        file.addSeparator()
        _add(file, "&Print the plan set …", key.Print, commands.print_plans)
        _add(file, "Save the plan set as P&DF …", "Ctrl+E", commands.save_plans)
        _add(file, "&Write plan package …", "Ctrl+Shift+E", commands.write_plan)
        file.addSeparator()
        _add(file, "&Close", "Ctrl+Q", commands.close)
        edit = window.menuBar().addMenu("&Edit")
        self.undo = _add(edit, "&Undo", key.Undo, commands.undo)
        self.redo = _add(edit, "&Redo", "Ctrl+Shift+Z", commands.redo)
        edit.addSeparator()
        _add(edit, "&Find a choice", key.Find, commands.find_choice)
        _add(edit, "Find a &part", "Ctrl+Shift+F", commands.find_part)
        _add(edit, "&Copy the list as text", "Ctrl+Shift+C", commands.copy_list)
        view = window.menuBar().addMenu("&View")
        lists = (
            "&Parts", "C&learances", "Chec&ks", "&Strength", "&Materials", "St&ock",
            "&Boards and sheets", "Cos&t", "Pla&n set",
        )  # fmt: skip
        for place, words in enumerate(lists):
            _add(view, words, f"Ctrl+{place + 1}", lambda p=place: commands.show_list(p))
        view.addSeparator()
        look = view.addMenu("&Look from")
        for place, name in enumerate(VIEWS):
            words = {"above": "Above", "corner": "A corner"}.get(name, f"The {name}")
            _add(look, words, f"Alt+{place + 1}", lambda n=name: commands.look_from(n))
        _add(view, "Show the &whole bed", "Ctrl+0", commands.fit)


def _add(menu: QMenu, words: str, keys: Keys, act: Callable[[], object]) -> QAction:
    action = menu.addAction(words)
    action.setShortcut(QKeySequence(keys))
    action.triggered.connect(lambda: act())
    return action


def _demo_menu(menu: QMenu, folder: Path, act: Callable[[Path], object]) -> None:
    demos = sorted(folder.glob("*.bedwright"))
    sub = menu.addMenu("New bed &from a demo")
    sub.setEnabled(bool(demos))
    for path in demos:
        words = path.stem.replace("_", " ").capitalize()
        sub.addAction(words).triggered.connect(lambda _=False, p=path: act(p))
