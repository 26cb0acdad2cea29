"""The program's own Python environment: where it lies, whether it is whole, how it is made.

Standard library only: this runs before anything is installed.
"""

import hashlib
import importlib.util
import json
import os
import re
import subprocess
import sys
import tomllib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from shutil import rmtree

from app.setup_system import CannotStart, need, say

ROOT = Path(__file__).resolve().parents[1]

# Lies in every environment made here. It tells which wishes are fulfilled; it tells of none
# from the first change until the last, so that a set-up that broke off is never taken for whole.
MARK = "bedwright-setup.json"
LOCK = "bedwright-setup.lock"

NETWORK_TROUBLE = re.compile(
    "NewConnectionError|ConnectTimeout|ConnectionError|ProxyError|SSLError|Max retries"
    "|name resolution|unreachable|ReadTimeout|Connection(?: was)? (?:refused|reset)",
    re.IGNORECASE,
)


def wishes(*, with_tests: bool = False) -> dict[str, list[str]]:
    """What the environment is to hold: package requirements by purpose."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    run = {"run": project["dependencies"]}
    return run | ({"tests": project["optional-dependencies"]["tests"]} if with_tests else {})


def places() -> list[Path]:
    """Beside the program, or in the user's own folder where that cannot be written."""
    checkout = hashlib.sha256(str(ROOT).encode()).hexdigest()[:12]
    return [ROOT / ".venv", cache_folder() / "bedwright" / checkout]


def cache_folder() -> Path:
    home = Path(os.path.expanduser("~"))
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    if sys.platform == "darwin":
        return home / "Library" / "Caches"
    return Path(os.environ.get("XDG_CACHE_HOME") or home / ".cache")


def prepare(wanted: dict[str, list[str]], choices: list[Path]) -> Path:
    """The Python that runs the program, with all that is wanted installed."""
    for place in choices:
        if is_whole(place, wanted):
            return python_of(place)
    place = first_usable(choices)
    with locked(place):
        if not is_whole(place, wanted):  # or another start was quicker
            set_up(place, wanted)
    return python_of(place)


def python_of(place: Path) -> Path:
    return place / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")


def is_whole(place: Path, wanted: dict[str, list[str]]) -> bool:
    mark = read_mark(place)
    return marks(wanted).items() <= mark.items() and is_sound(place, mark)


def is_sound(place: Path, mark: dict[str, str]) -> bool:
    """A set-up that ended, by the Python that answers there now: a system's upgrade swaps it."""
    return bool(mark) and mark.get("python") == version_of(python_of(place))


def version_of(python: Path) -> str | None:
    ask = [str(python), "-I", "-S", "-c", "import sys; print('%d.%d' % sys.version_info[:2])"]
    try:
        return subprocess.run(ask, capture_output=True, text=True).stdout.strip()
    except OSError:
        return None


def marks(wanted: dict[str, list[str]]) -> dict[str, str]:
    """One short code for each purpose: it changes when the list of packages does."""
    return {
        purpose: hashlib.sha256("\n".join(sorted(packages)).encode()).hexdigest()
        for purpose, packages in wanted.items()
    }


def read_mark(place: Path) -> dict[str, str]:
    try:
        mark = json.loads((place / MARK).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return mark if isinstance(mark, dict) else {}


def write_mark(place: Path, mark: dict[str, str]) -> None:
    fresh = place / f"{MARK}.new"
    fresh.write_text(json.dumps(mark), encoding="utf-8")
    fresh.replace(place / MARK)


def first_usable(choices: list[Path]) -> Path:
    """The first place that can be written and holds nobody else's environment."""
    for place in choices:
        with suppress(OSError):
            place.mkdir(parents=True, exist_ok=True)
            if is_ours(place):
                claim(place)
                return place
    raise CannotStart(
        "Bedwright installs its packages into a folder of its own, and none of these can be "
        f"written: {', '.join(map(str, choices))}. Allow writing to one of them, then start again."
    )


def is_ours(place: Path) -> bool:
    return (place / MARK).exists() or all(own_note(each) for each in place.iterdir())


def own_note(file: Path) -> bool:
    return file.name.startswith("bedwright-setup.")


def claim(place: Path) -> None:
    """Refused, as an OSError, where nothing can be written."""
    if not (place / MARK).exists():
        write_mark(place, {})
    (place / LOCK).open("a").close()


@contextmanager
def locked(place: Path) -> Iterator[None]:
    """Hold other starts back: two at once would install over each other."""
    with (place / LOCK).open("a") as file:
        if sys.platform == "win32":
            _lock_on_windows(file.fileno())
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX)
        yield


def _lock_on_windows(file: int) -> None:
    import msvcrt

    while True:
        with suppress(OSError):  # it gives up after ten seconds, a set-up takes longer
            msvcrt.locking(file, msvcrt.LK_LOCK, 1)
            return


def set_up(place: Path, wanted: dict[str, list[str]]) -> None:
    """Make the environment, or add to it; from scratch where an earlier set-up broke off."""
    before = read_mark(place)
    sound = is_sound(place, before)
    write_mark(place, {})
    say(f"Setting up Bedwright in {place} (once; some 400 MB).")
    if not sound:
        empty(place)
        make(place)
    # Of the many test tools little is ever imported: Python compiles that when it is.
    options = ["--no-compile"] if "tests" in wanted else []
    install(place, [package for packages in wanted.values() for package in packages], options)
    write_mark(place, marks(wanted) | {"python": version_of(python_of(place)) or ""})


def empty(place: Path) -> None:
    """Leave only the mark and the lock: while they stand, the folder is known as ours."""
    for each in place.iterdir():
        if own_note(each):
            continue
        if each.is_dir() and not each.is_symlink():
            rmtree(each)
        else:
            each.unlink()


def make(place: Path) -> None:
    if not all(map(importlib.util.find_spec, ("venv", "ensurepip"))):
        # Debian keeps these two in a package of their own.
        need({"Python's venv module": "python{}.{}-venv".format(*sys.version_info)})
    made = run([sys.executable, "-I", "-m", "venv", str(place)])
    if made.returncode != 0:
        raise CannotStart(
            f"Python could not make an environment in {place}. It said:\n"
            + last_lines(made.stdout + made.stderr)
        )


def install(place: Path, packages: list[str], options: Iterable[str] = ()) -> None:
    if not packages:
        return
    pip = [str(python_of(place)), "-I", "-m", "pip", "install", "--no-input", "--retries", "2"]
    watched = sys.stdout.isatty()
    quiet = [] if watched else ["--quiet"]
    asked = ["--disable-pip-version-check", *quiet, *options, *packages]
    done = run([*pip, *asked], show_output=watched)
    if done.returncode != 0:
        raise CannotStart(why_not_installed(done.stderr))


def why_not_installed(said: str) -> str:
    if "No space left" in said:
        return "The disk is full: Bedwright's packages take some 400 MB. Make room, start again."
    if NETWORK_TROUBLE.search(said):
        return (
            "Bedwright's packages could not be fetched: the network or the package index did not "
            "answer. Only the first start needs it. Connect (behind a proxy, set HTTPS_PROXY), "
            "then start again."
        )
    return (
        "Bedwright's packages could not be installed on "
        f"Python {sys.version.split()[0]}, {sys.platform}. pip said:\n{last_lines(said)}"
    )


def run(command: list[str], *, show_output: bool = False) -> subprocess.CompletedProcess[str]:
    # PIP_USER, set by some systems, would install outside of the environment.
    clean = {key: value for key, value in os.environ.items() if key != "PYTHONHOME"}
    return subprocess.run(
        command,
        env=clean | {"PIP_USER": "0"},
        stdin=subprocess.DEVNULL,
        stdout=None if show_output else subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        errors="replace",
    )


def last_lines(said: str, count: int = 6) -> str:
    return "\n".join(f"  {line}" for line in said.strip().splitlines()[-count:])
