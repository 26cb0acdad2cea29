"""What every test runs under: a calm Qt, a quiet log, no windows left behind.

Nothing here imports Qt until a test asks for it, so the tests of the model stay quick.
"""

import gc
import logging
import os
import sys
import tempfile
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import settings

from tests.run import SCREENS

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication, QWidget
    from pytestqt.qtbot import QtBot


LONG = {"properties", "journeys"}

# The same examples on every run, however busy the machine is; with `--hypothesis-profile search`
# more of them, and new ones each time.
settings.register_profile("repeatable", derandomize=True, database=None, deadline=None)
settings.register_profile("search", max_examples=1000, derandomize=False, deadline=None)
settings.load_profile("repeatable")


def pytest_configure(config: pytest.Config) -> None:
    """Keep the tests and the settings of whoever runs them apart, and windows on screens apart."""
    own_screen()
    folder = tempfile.TemporaryDirectory(prefix="bedwright-tests-")
    config.add_cleanup(folder.cleanup)
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        os.environ[name] = str(Path(folder.name, name.lower()))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What takes long and is shared by many tests comes first: a core that has nothing left takes
    over from the end of another's.
    """
    items.sort(key=lambda item: not LONG.intersection(item.path.parts))


def own_screen() -> None:
    """Give each process of tests that run side by side a screen that no other one uses."""
    screens = os.environ.get(SCREENS, "").split()
    worker = os.environ.get("PYTEST_XDIST_WORKER", "").removeprefix("gw")
    if screens and worker:
        os.environ["DISPLAY"] = screens[int(worker) % len(screens)]


@pytest.fixture(scope="session")
def qapp_cls() -> type["QApplication"]:
    """The application's class, with what must be set before the application is made.

    pyqtgraph keeps its compiled shaders for the whole process: without shared contexts the
    second window that shows a bed draws nothing.
    """
    from PySide6 import QtCore, QtWidgets

    share = QtCore.Qt.ApplicationAttribute.AA_ShareOpenGLContexts
    QtCore.QCoreApplication.setAttribute(share)
    # Under a German locale a spin box reads "1600.5" as 0: tests type decimal points.
    QtCore.QLocale.setDefault(QtCore.QLocale.c())
    return QtWidgets.QApplication


@pytest.fixture
def shown(qtbot: "QtBot") -> "Callable[[QWidget], QWidget]":
    """Show a widget and wait until it is the active window.

    A virtual screen has no window manager: without this, focus and shortcuts go nowhere.
    """

    def show(widget: "QWidget") -> "QWidget":
        qtbot.addWidget(widget)
        with qtbot.waitActive(widget):
            widget.show()
            widget.activateWindow()
        return widget

    return show


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_teardown(item: pytest.Item) -> Generator[None, Any, Any]:
    """Delete closed windows for real, and fail the test that leaves one open."""
    result = yield
    if "PySide6.QtWidgets" in sys.modules:
        left_over = _open_windows()
        _delete_closed_windows()
        if not gc.isenabled():  # a window's worker took over, and no timer runs between tests
            gc.collect(1)
        if left_over:
            pytest.fail(f"The test left windows open: {', '.join(left_over)}", pytrace=False)
    return result


def _open_windows() -> list[str]:
    from PySide6.QtWidgets import QApplication

    if not isinstance(QApplication.instance(), QApplication):
        return []
    visible = [widget for widget in QApplication.topLevelWidgets() if widget.isVisible()]
    names = [f"{type(widget).__name__} {widget.windowTitle()!r}" for widget in visible]
    for widget in visible:
        widget.close()
        widget.deleteLater()
    return names


def _delete_closed_windows() -> None:
    from PySide6 import QtCore

    if QtCore.QCoreApplication.instance() is not None:
        QtCore.QCoreApplication.sendPostedEvents(None, QtCore.QEvent.Type.DeferredDelete)


class _Warnings(logging.Handler):
    """Keeps the log records that say something went wrong."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.records: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def _quiet_log(request: pytest.FixtureRequest) -> Iterator[None]:
    """A warning in the log fails the test, unless the test asks for `caplog` and looks itself."""
    handler = _Warnings()
    logging.getLogger().addHandler(handler)

    yield

    logging.getLogger().removeHandler(handler)
    if handler.records and "caplog" not in request.fixturenames:
        said = "\n".join(f"{each.name}: {each.getMessage()}" for each in handler.records)
        pytest.fail(f"The test logged what it did not expect:\n{said}", pytrace=False)
