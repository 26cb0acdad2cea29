"""What a window needs of a Linux system, and how to get it. Standard library only."""

import ctypes
import os
import shutil
import subprocess
import sys
from pathlib import Path
from threading import Lock


class CannotStart(Exception):
    """Why the program cannot start, and what to do about it, in sentences."""


# Shared library: the Debian package that brings it, with all that it rests on.
WINDOW_LIBRARIES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libxkbcommon.so.0": "libxkbcommon0",
}
X11_LIBRARIES = {
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
}


# Two installations at once would find the package list locked.
_installing = Lock()


def need_window_libraries(*, on_x11: bool) -> None:
    """See to it that Qt finds the libraries of a window: macOS and Windows have their own."""
    if sys.platform == "linux":
        libraries = WINDOW_LIBRARIES | (X11_LIBRARIES if on_x11 else {})
        need({name: package for name, package in libraries.items() if not loads(name)})


def need_programs(packages: dict[str, str]) -> None:
    """See to it that programs (their name: their Debian package) can be started."""
    need({name: package for name, package in packages.items() if not shutil.which(name)})


def need(missing: dict[str, str]) -> None:
    """Install what is missing (its name: its Debian package), or say what it is."""
    if not missing:
        return
    packages = " ".join(missing.values())
    if not has_apt():
        raise CannotStart(
            f"This system lacks {' '.join(missing)}. Install the packages that bring them "
            f"(on Debian they are called {packages}), then start again."
        )
    if not is_root():
        raise CannotStart(
            f"This system lacks {' '.join(missing)}. Run this, then start again:\n"
            f"  sudo apt-get install -y --no-install-recommends {packages}"
        )
    install(list(missing.values()))


def install(packages: list[str]) -> None:
    say(f"Installing from the system's packages: {' '.join(packages)}")
    arguments = ["install", "-y", "--no-install-recommends", *packages]
    with _installing:
        # The package list of a fresh system is empty, an old one names files that have gone.
        done = apt(arguments).returncode == 0 or (
            apt(["update"]).returncode == 0 and apt(arguments).returncode == 0
        )
    if not done:
        raise CannotStart(
            "The system's packages could not be installed. Is there a network? This command "
            f"shows the reason:\n  apt-get install --no-install-recommends {' '.join(packages)}"
        )


def apt(arguments: list[str]) -> subprocess.CompletedProcess[str]:
    # Another installation may be under way, as on every first boot: wait for it.
    return subprocess.run(
        ["apt-get", "-q", "-o", "DPkg::Lock::Timeout=120", *arguments],
        env=os.environ | {"DEBIAN_FRONTEND": "noninteractive"},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
    )


def loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def has_apt() -> bool:
    return Path("/etc/debian_version").exists() and shutil.which("apt-get") is not None


def is_root() -> bool:
    return sys.platform != "win32" and os.geteuid() == 0


def say(sentence: str) -> None:
    """Setting up talks beside the output, which may be piped into a file."""
    print(sentence, file=sys.stderr, flush=True)
