"""Set up Bedwright where that has not been done, then open it: `python3 app/start.py`.

Arguments go on to the command `bedwright`. Standard library only, and no grammar newer than
Python 3.8 in this file: an old Python must get far enough to read the sentence below.
"""

import sys

if sys.version_info < (3, 11):
    sys.exit(
        "Bedwright needs Python 3.11 or newer; this is Python {}.{}. Install a newer one beside "
        "it and start with that, for instance: python3.11 app/start.py".format(*sys.version_info)
    )

import os
import subprocess
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
if not __package__:  # run as a file: Python looks beside it, the imports start one folder up
    sys.path[:] = [str(ROOT), *(each for each in sys.path if each != str(ROOT / "app"))]

from app.setup_environment import places, prepare, wishes
from app.setup_screen import has_screen, wayland_answers
from app.setup_system import CannotStart, need_window_libraries, say

COMMAND = "import sys; from app.cli import main; sys.exit(main(sys.argv[1:]))"


def main(arguments: list[str]) -> int:
    try:
        return start(arguments)
    except CannotStart as reason:
        say(str(reason))
    except OSError as trouble:
        say(f"Bedwright could not set itself up: {trouble}. Nothing is broken: start again.")
    except KeyboardInterrupt:
        say("Stopped. Nothing is broken: the next start goes on.")
    return 1


def start(arguments: list[str]) -> int:
    if not wants_window(arguments):
        return hand_over(prepare(wishes(), places()), arguments)
    if has_screen():
        need_window_libraries(on_x11=not wayland_answers())
        return hand_over(prepare(wishes(), places()), arguments or ["window"])
    if arguments:
        raise CannotStart(
            "There is no screen here, so no window can open. The other commands need none: "
            "python3 app/start.py --help lists them."
        )
    say("There is no screen here, so no window opens: writing the demo bed's plan package.")
    return write_demo(prepare(wishes(), places()))


def wants_window(arguments: list[str]) -> bool:
    asks_for_help = not {"-h", "--help"}.isdisjoint(arguments)
    return not asks_for_help and (not arguments or arguments[0] == "window")


def hand_over(python: Path, arguments: list[str]) -> int:
    """Become the program, so that signals and the exit code are its own."""
    command = [str(python), "-P", "-c", COMMAND, *arguments]
    if sys.platform == "win32":  # there, becoming another program would free the console at once
        return subprocess.call(command, env=surroundings())
    os.execve(python, command, surroundings())


def write_demo(python: Path) -> int:
    design, folder = demo_design(), demo_folder()
    command = [str(python), "-P", "-c", COMMAND, "plan", str(design), "-o", str(folder)]
    done = subprocess.call(command, env=surroundings())
    if done == 0:
        print(f"The plan package of {design.name} is in {folder}")
    return done


def demo_design() -> Path:
    designs = sorted((ROOT / "resources" / "demos").glob("*.bedwright"))
    if not designs:
        raise CannotStart("resources/demos holds no design: fetch the program again, whole.")
    return designs[0]


def demo_folder() -> Path:
    """In the home folder, or a temporary one: where the program lies stays as it was."""
    home = Path(os.path.expanduser("~"))
    parent = home if os.access(home, os.W_OK) else Path(tempfile.gettempdir())
    return parent / "bedwright-demo-plan"


def surroundings() -> dict[str, str]:
    clean = {key: value for key, value in os.environ.items() if key != "PYTHONHOME"}
    return clean | {"PYTHONPATH": str(ROOT)}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
