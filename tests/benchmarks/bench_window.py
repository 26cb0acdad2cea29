"""How long the window takes to show a bed, against a bare window with an empty 3D view.

Run by hand on a screen (real or virtual): `python tests/benchmarks/bench_window.py`. It prints
ratios of medians from the same run, and the steps that a dragged slider makes in a second.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
RUNS = 7
# A program that is installed has its byte code, as the packages of the bare window have theirs.
SURROUNDINGS = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}

FIRST_PICTURE = """
import sys, time
started = float(sys.argv[1])
from PySide6.QtCore import QCoreApplication, Qt, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
def done(*_):
    print(time.time() - started, flush=True)
    QTimer.singleShot(0, app.quit)
"""

BARE = (
    FIRST_PICTURE
    + """
QCoreApplication.setAttribute(Qt.ApplicationAttribute.AA_ShareOpenGLContexts)
app = QApplication([])
import pyqtgraph.opengl as gl
window, view = QMainWindow(), gl.GLViewWidget()
window.setCentralWidget(view)
window.resize(1280, 800)
view.frameSwapped.connect(done, Qt.ConnectionType.SingleShotConnection)
window.show()
app.exec()
"""
)

OURS = (
    FIRST_PICTURE
    + """
import app.window as ours
show = ours.Window.show
def watched(window):
    show(window)
    global app
    app = QApplication.instance()
    once = Qt.ConnectionType.SingleShotConnection
    swapped = window.view.canvas.frameSwapped
    if "bed" in sys.argv:
        window.session.changed.connect(lambda _: swapped.connect(done, once), once)
    else:
        swapped.connect(done, once)
ours.Window.show = watched
ours.open_window()
"""
)

DRAG = """
import time
from app import window as ours
from PySide6.QtCore import QCoreApplication, QEventLoop, Qt, QTimer
from PySide6.QtWidgets import QApplication
QCoreApplication.setAttribute(Qt.ApplicationAttribute.AA_ShareOpenGLContexts)
app = QApplication([])
from app.session import Session
from model.bed import Design
window = ours.Window(Session(Design()))
window.show()
def spin(ms):
    loop = QEventLoop(); QTimer.singleShot(ms, loop.quit); loop.exec()
spin(1000)
name, low, high = "rail_height", 380.0, 440.0
frames, beds = [], []
window.view.canvas.frameSwapped.connect(lambda: frames.append(time.perf_counter()))
window.session.changed.connect(lambda _: beds.append(time.perf_counter()))
start, step = time.perf_counter(), 0
while time.perf_counter() - start < 3.0:
    step += 1
    window.session.drag(name, low + (step * 1.5) % (high - low))
    spin(8)
took = time.perf_counter() - start
print(f"{len(beds) / took:.1f} {len(frames) / took:.1f}")
window.session.settle(name)
window.session.mark_saved(None)
window.close()
"""


def first_picture(script: str, *of: str) -> float:
    """Seconds from the start of Python to the first picture, of the window or of its bed."""
    command = [sys.executable, "-c", script, f"{time.time()}", *of]
    said = subprocess.run(
        command, cwd=ROOT, env=SURROUNDINGS, capture_output=True, text=True, check=True
    )
    return float(said.stdout.split()[0])


def main() -> None:
    for script in (BARE, OURS):
        first_picture(script)  # the disk is warm from here on
    runs = [
        (first_picture(BARE), first_picture(OURS), first_picture(OURS, "bed")) for _ in range(RUNS)
    ]
    bare, window, bed = (statistics.median(each) for each in zip(*runs, strict=True))
    print(f"bare window with an empty view: {bare:.2f} s")
    print(f"our window: {window:.2f} s, ratio {window / bare:.2f}")
    print(f"our window with its bed: {bed:.2f} s, ratio {bed / bare:.2f}")
    said = subprocess.run(
        [sys.executable, "-c", DRAG],
        cwd=ROOT,
        env=SURROUNDINGS,
        capture_output=True,
        text=True,
        check=True,
    )
    beds, frames = said.stdout.split()
    print(f"slider under the hand: {beds} beds and {frames} pictures a second")


if __name__ == "__main__":
    main()
