"""How quickly the 3D view follows: against an empty view of the same libraries, in the same run.

Run by name: `python3 tests/run.py tests/benchmarks/bench_view.py -s`. Prints; asserts no times.
"""

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pyqtgraph.opengl as gl
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QSlider, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.view.bed_view import BedView
from tests.app.view.sample_bed import SampleBed, sample_mesh

ROOT = Path(__file__).resolve().parents[2]
SIZE = (1000, 700)
FRAMES = 60
STARTS = 7

WINDOW = """
import sys, time
from PySide6 import QtCore, QtWidgets
QtCore.QCoreApplication.setAttribute(QtCore.Qt.ApplicationAttribute.AA_ShareOpenGLContexts)
app = QtWidgets.QApplication([])
window = QtWidgets.QMainWindow()
{view}
window.setCentralWidget(view)
window.resize(1000, 700)
{painter}.frameSwapped.connect(app.quit)
window.show()
app.exec()
"""
EMPTY = "import pyqtgraph.opengl as gl; view = gl.GLViewWidget()"
FULL = """
from app.view.bed_view import BedView
from tests.app.view.sample_bed import SampleBed, sample_mesh
bed = SampleBed(); view = BedView(); view.show_bed(bed, sample_mesh(bed))
"""


def median_ms(act: Callable[[int], None]) -> float:
    """The usual time of an act, with all that Qt does about it."""
    times = []
    for k in range(FRAMES):
        start = time.perf_counter()
        act(k)
        QApplication.processEvents()
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times)


def say(line: str, capsys: pytest.CaptureFixture[str]) -> None:
    with capsys.disabled():
        print("\n  " + line)


@pytest.fixture
def empty_ms(qtbot: QtBot) -> float:
    """A picture of an empty view."""
    empty = gl.GLViewWidget()
    qtbot.addWidget(empty)
    empty.resize(*SIZE)
    with qtbot.waitExposed(empty):
        empty.show()
    median_ms(lambda k: empty.repaint())
    return median_ms(lambda k: empty.repaint())


@pytest.fixture
def view(qtbot: QtBot) -> BedView:
    made = BedView()
    qtbot.addWidget(made)
    made.resize(*SIZE)
    bed = SampleBed()
    made.show_bed(bed, sample_mesh(bed))
    with qtbot.waitExposed(made):
        made.show()
    return made


@pytest.mark.gl
def test_turning(view: BedView, empty_ms: float, capsys: pytest.CaptureFixture[str]) -> None:
    def turn(k: int) -> None:
        view.canvas.look(view.canvas.camera.orbited(0.5, 0.0))
        view.canvas.repaint()

    frame = median_ms(turn)

    say(f"turning: {frame:.1f} ms a picture, {frame / empty_ms:.1f} x an empty view", capsys)


@pytest.mark.gl
def test_another_bed(view: BedView, empty_ms: float, capsys: pytest.CaptureFixture[str]) -> None:
    beds = [SampleBed(width=1400 + 5 * k) for k in range(FRAMES)]
    meshes = [sample_mesh(bed) for bed in beds]

    def show(k: int) -> None:
        view.show_bed(beds[k], meshes[k])
        view.canvas.repaint()

    frame = median_ms(show)

    say(f"another bed: {frame:.1f} ms a picture, {frame / empty_ms:.1f} x an empty view", capsys)


@pytest.mark.gl
def test_another_bed_by_its_strength(view: BedView, capsys: pytest.CaptureFixture[str]) -> None:
    """Its frame cut across, coloured and bent, against the same beds in wood."""
    from model.bed import Design, solve
    from model.solids.mesh import bed_mesh
    from model.structure.bent import body
    from model.structure.worst import shares

    beds = [solve(Design().with_choices({"rail_height": 380.0 + 2 * k})) for k in range(10)]
    carried = [bed.strength for bed in beds]
    meshes = [bed_mesh(bed.pieces, bed.parts) for bed in beds]
    cutting: list[float] = []

    def in_wood(k: int) -> None:
        view.show_bed(beds[k % 10], meshes[k % 10])
        view.canvas.repaint()

    def by_strength(k: int) -> None:
        view.show_bed(beds[k % 10], meshes[k % 10])
        start = time.perf_counter()
        made = body(meshes[k % 10], carried[k % 10])
        shares(carried[k % 10])
        cutting.append(time.perf_counter() - start)
        view.show_strength(beds[k % 10], carried[k % 10], made)
        view.canvas.repaint()

    wood = median_ms(in_wood)
    view.colour_by("strength")
    view.show_load("lying")
    strength = median_ms(by_strength)

    say(
        f"by strength: {strength:.1f} ms a bed, {strength / wood:.1f} x the same in wood; "
        f"cutting takes {1000 * statistics.median(cutting):.1f} ms of it",
        capsys,
    )


@pytest.mark.gl
def test_dragging_a_slider_of_a_real_bed(qtbot: QtBot, capsys: pytest.CaptureFixture[str]) -> None:
    """Solve, mesh and redraw at each move of the mouse, shadow and dimensions on."""
    from model.bed import Design, solve

    window, slider, view = QWidget(), QSlider(Qt.Orientation.Horizontal), BedView()
    layout = QVBoxLayout(window)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.addWidget(view)
    layout.addWidget(slider)
    view.setFixedSize(*SIZE)
    slider.setRange(380, 600)
    slider.setValue(400)
    beds = [solve(Design())]
    solving: list[float] = []
    frames: list[float] = []

    def redraw(value: int) -> None:
        start = time.perf_counter()
        beds.append(solve(beds[-1].design.with_choices({"rail_height": value}), beds[-1]))
        solving.append(time.perf_counter() - start)
        view.show_bed(beds[-1])

    slider.valueChanged.connect(redraw)
    view.show_bed(beds[-1])
    qtbot.addWidget(window)
    with qtbot.waitExposed(window):
        window.show()
    view.canvas.frameSwapped.connect(lambda: frames.append(time.perf_counter()))
    qtbot.wait(300)
    frames.clear()
    start = QPointF(slider.width() * 0.09, slider.height() / 2).toPoint()
    QTest.mousePress(slider, Qt.MouseButton.LeftButton, pos=start)
    begin = time.perf_counter()
    for k in range(120):  # 7 px: each move is another bed
        step = start + QPointF(7.0 * (k if k < 60 else 120 - k), 0).toPoint()
        QTest.mouseMove(slider, step)
        QApplication.processEvents()
    took = time.perf_counter() - begin
    QTest.mouseRelease(slider, Qt.MouseButton.LeftButton)

    share = sum(solving) / took
    say(
        f"slider, {len(beds[-1].pieces)} pieces: {len(solving) / took:.0f} beds and "
        f"{len(frames) / took:.0f} pictures a second; "
        f"solving takes {statistics.median(solving) * 1000:.1f} ms, {share:.0%} of the time",
        capsys,
    )


@pytest.mark.gl
def test_starting(capsys: pytest.CaptureFixture[str]) -> None:
    """From the start of the process to the first picture."""
    empty = WINDOW.format(view=EMPTY, painter="view")
    full = WINDOW.format(view=FULL, painter="view.canvas")
    times: dict[str, list[float]] = {empty: [], full: []}
    for _ in range(STARTS):
        for script, taken in times.items():
            start = time.perf_counter()
            subprocess.run([sys.executable, "-c", script], cwd=ROOT, check=True)
            taken.append(time.perf_counter() - start)
    bare, ours = (statistics.median(taken) for taken in times.values())

    say(f"starting: {ours * 1000:.0f} ms, {ours / bare:.2f} x an empty view's window", capsys)
