"""What the folders promise: which may import which, and what may lie at the top.

The lists come first. Changing one is changing the design: say why in the commit.
"""

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

# A folder or file of model/ imports only from those before it.
MODEL_ORDER = [
    "errors",
    "units",
    "read_length",
    "formula",
    "mechanics",
    "cutting",
    "rules",
    "materials",
    "frame",
    "part",
    "brief",
    "dimensions",
    "joints",
    "parts",
    "solids",
    "structure",
    "checks",
    "book",
    "stock",
    "publisher",
    "bed",
    "mend",
    "improve",
    "shop",
    "cost",
    "building",
    "drawings",
    "planset",
    "exports",
    "designs",
]

MODEL_NEVER_IMPORTS = {"PySide6", "shiboken6", "pyqtgraph", "OpenGL", "app", "tests"}

COMMAND_LINE_NEVER_LOADS = {"PySide6", "shiboken6", "pyqtgraph", "OpenGL"}

TOP_LEVEL = {
    *("README.md", "DEVELOPERS.md", "pyproject.toml"),
    *("app", "model", "tests", "resources"),
    *(".ci", ".git", ".gitignore"),
}

# These run before anything is installed.
BEFORE_INSTALLATION = ["app/__init__.py", "app/start.py", "app/setup_*.py", "tests/run.py"]

# How the program came to be, and the machines it was made on, are no part of it.
# Written in pieces, so that this file keeps its own rule.
WORDS_KEPT_OUT = ["trans" + r"cripts?\b", "rec" + r"ordings?\b", "/" + "work/", "/" + r"root\b"]

ROOT = Path(__file__).resolve().parents[1]


def sources(pattern: str) -> list[Path]:
    return sorted(path for path in ROOT.glob(pattern) if path.is_file())


def imported_by(path: Path) -> Iterator[str]:
    """Every module that a file names in an import, with dots: `model.units`."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{each.name}" for each in node.names)


def ignored() -> list[str]:
    return [line.rstrip("/") for line in (ROOT / ".gitignore").read_text().splitlines()]


def name_in(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def place_in_model(module: str) -> str:
    return module.split(".")[1]


def test_every_folder_of_the_model_has_a_place_in_the_order() -> None:
    folders = {path.stem for path in (ROOT / "model").iterdir()}

    assert folders - {"__init__", "__pycache__", "py"} <= set(MODEL_ORDER)


@pytest.mark.parametrize("path", sources("model/**/*.py"), ids=name_in)
def test_the_model_imports_only_from_earlier_folders(path: Path) -> None:
    here = path.relative_to(ROOT / "model").parts[0].removesuffix(".py")
    allowed = set() if here == "__init__" else {*MODEL_ORDER[: MODEL_ORDER.index(here)], here}

    inside = [name for name in imported_by(path) if name.startswith("model.")]

    assert [name for name in inside if place_in_model(name) not in allowed] == []


@pytest.mark.parametrize("path", sources("model/**/*.py"), ids=name_in)
def test_the_model_knows_no_window(path: Path) -> None:
    assert {name.split(".")[0] for name in imported_by(path)}.isdisjoint(MODEL_NEVER_IMPORTS)


def test_the_command_line_starts_without_the_window_toolkit() -> None:
    """It must run where there is no screen, and answer at once."""
    say = "import sys, app.cli; print(*{name.split('.')[0] for name in sys.modules})"

    loaded = subprocess.run(
        [sys.executable, "-c", say], cwd=ROOT, capture_output=True, text=True, check=True
    )

    assert set(loaded.stdout.split()).isdisjoint(COMMAND_LINE_NEVER_LOADS)


@pytest.mark.parametrize("pattern", BEFORE_INSTALLATION)
def test_setting_up_needs_the_standard_library_only(pattern: str) -> None:
    own = re.compile(r"app\.(setup_\w+|start)\b")

    named = {name for path in sources(pattern) for name in imported_by(path)}

    outside = {name for name in named if name.split(".")[0] not in sys.stdlib_module_names}
    assert {name for name in outside if not own.match(name)} == set()


def test_the_top_level_holds_nothing_else() -> None:
    found = {path.name for path in ROOT.iterdir()}

    extra = found - TOP_LEVEL
    assert {name for name in extra if not any(fnmatch(name, each) for each in ignored())} == set()


def test_no_file_tells_how_it_came_to_be() -> None:
    kept_out = re.compile("|".join(WORDS_KEPT_OUT), re.IGNORECASE)

    telling = [f"{name_in(path)}: {line}" for path, line in lines() if kept_out.search(line)]

    assert telling == []


def lines() -> Iterator[tuple[Path, str]]:
    folders = [name for name in TOP_LEVEL - {".git"} if (ROOT / name).is_dir()]
    inside = [path for folder in folders for path in sources(f"{folder}/**/*")]
    for path in [*inside, *(ROOT / name for name in TOP_LEVEL if (ROOT / name).is_file())]:
        if "__pycache__" not in path.parts:
            text = path.read_text(encoding="utf-8", errors="ignore")
            yield from ((path, line) for line in text.splitlines())
