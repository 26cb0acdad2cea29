"""Set up the test tools and a virtual screen, then run every test: `python3 tests/run.py`.

Arguments go on to pytest (`python3 tests/run.py tests/model -k rail`), and then only pytest runs.
Standard library only.
"""

import os
import signal
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from app import start  # first: it tells an old Python what it lacks
from app.setup_environment import places, prepare, wishes
from app.setup_system import CannotStart, need_programs, need_window_libraries, say

CHECKS = [
    ["ruff", "check"],
    ["ruff", "format", "--check"],
    ["mypy", "--strict", "--num-workers", "auto", "model"],
]
TESTS = ["pytest", "-W", "error::RuntimeWarning"]
# Neighbours share the beds that they look at, so each core keeps a run of neighbours.
EVERY_CORE = ["--dist", "worksteal", "-n"]
# Two windows that are opened at once on one screen would take each other's focus.
WINDOWS = ["-q", "tests/app"]
ALL_ELSE = ["-q", "--ignore", "tests/app", *EVERY_CORE, "auto"]
# The screens' names, one for each process of tests: `tests/conftest.py` shares them out.
SCREENS = "BEDWRIGHT_SCREENS"


def main(arguments: list[str]) -> int:
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))  # so that the screen is put away
    try:
        python = set_up()
        if sys.platform != "linux":
            return run_all(python, arguments, start.surroundings())
        with virtual_screens(processes(arguments)) as where:
            return run_all(python, arguments, where)
    except CannotStart as reason:
        say(str(reason))
    except KeyboardInterrupt:
        say("Stopped.")
    return 1


def set_up() -> Path:
    """The Python to test with. Its packages and the system's take a minute each: one waits for the
    network while the other unpacks.
    """
    with ThreadPoolExecutor(max_workers=1) as beside:
        system = beside.submit(need_system)
        python = prepare(wishes(with_tests=True), places())
        system.result()
    return python


def need_system() -> None:
    if sys.platform == "linux":
        need_window_libraries(on_x11=True)
        need_programs({"Xvfb": "xvfb"})
        offer_browser()


def processes(arguments: list[str]) -> int:
    """How many processes of tests run side by side: one for each core, if that is asked for."""
    return len(os.sched_getaffinity(0)) if not arguments or "-n" in arguments else 1


def offer_browser() -> None:
    """A browser opens the client's page as a client does; where none can be had, all else runs."""
    try:
        need_programs({"chromium": "chromium", "chromedriver": "chromium-driver"})
    except CannotStart as reason:
        say(f"{reason}\nUntil then the tests that open the client's page in a browser are skipped.")


def run_all(python: Path, arguments: list[str], where: dict[str, str]) -> int:
    """Tests come last, so that their counts are the last thing to read."""
    checks = [] if arguments else CHECKS
    failed = [check for check in checks if run(python, check, where) != 0]
    for check in failed:
        say(f"FAILED: {' '.join(check)} (see above); the tests run all the same.")
    rounds = [arguments] if arguments else all_tests(where)
    codes = [run(python, [*TESTS, *each], where) for each in rounds]
    return next((code for code in codes if code), len(failed))


def all_tests(where: dict[str, str]) -> list[list[str]]:
    """What pytest is told: all at once where each core has a screen, else windows by themselves."""
    if SCREENS not in where:
        return [ALL_ELSE, WINDOWS]
    return [["-q", *EVERY_CORE, str(len(where[SCREENS].split()))]]


def run(python: Path, tool: list[str], where: dict[str, str]) -> int:
    # Without compiled files, each process that a test starts would compile the program anew.
    kept = {key: value for key, value in where.items() if key != "PYTHONDONTWRITEBYTECODE"}
    return subprocess.run([python, "-P", "-m", *tool], cwd=ROOT, env=kept).returncode


@contextmanager
def virtual_screens(count: int) -> Iterator[dict[str, str]]:
    """A screen for each process of tests; what runs in one process takes the first."""
    with ExitStack() as stack:
        each = [stack.enter_context(virtual_screen()) for _ in range(count)]
        yield each[0] | {SCREENS: " ".join(where["DISPLAY"] for where in each)}


@contextmanager
def virtual_screen() -> Iterator[dict[str, str]]:
    """A screen of our own, so that no test depends on a desktop or takes its focus."""
    ours, theirs = os.pipe()
    options = ["-displayfd", str(theirs), "-screen", "0", "1600x1200x24", "-nolisten", "tcp"]
    server = subprocess.Popen(
        ["Xvfb", *options, "-noreset"],
        pass_fds=[theirs],
        stderr=subprocess.DEVNULL,
        start_new_session=True,  # Ctrl+C is for the tests: the screen goes after them
    )
    os.close(theirs)
    try:
        with os.fdopen(ours) as answer, tempfile.TemporaryDirectory() as runtime:
            number = answer.readline().strip()  # empty if the server ended without one
            if not number:
                raise CannotStart("Xvfb did not start. This shows why:\n  Xvfb :99")
            yield surroundings_on(f":{number}", runtime)
    finally:
        server.terminate()
        server.wait()


def surroundings_on(display: str, runtime: str) -> dict[str, str]:
    qt = {"DISPLAY": display, "QT_QPA_PLATFORM": "xcb", "XDG_RUNTIME_DIR": runtime}
    # Left alone, PyOpenGL goes by the desktop that the tests are started from.
    return start.surroundings() | qt | {"PYOPENGL_PLATFORM": "glx"}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
