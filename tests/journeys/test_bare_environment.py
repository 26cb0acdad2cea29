"""What a maker installs is enough for what a maker does; test tools stay with the tests."""

import ast
import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NAMES = {
    "PySide6-Essentials": "PySide6",
    "PyOpenGL": "OpenGL",
    "XlsxWriter": "xlsxwriter",
    "pymupdf-fonts": "pymupdf_fonts",
    "fonttools": "fontTools",
    "python-bidi": "bidi",
    "arabic-reshaper": "arabic_reshaper",
    "pillow": "PIL",
}
OWN = {"app", "model", "resources"}


def _imported() -> set[str]:
    found = set()
    for folder in ("app", "model"):
        for path in (ROOT / folder).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text("utf-8"))):
                if isinstance(node, ast.Import):
                    found |= {alias.name.partition(".")[0] for alias in node.names}
                elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                    found.add(node.module.partition(".")[0])
    return found


def test_every_library_that_the_program_imports_is_installed_without_the_test_tools() -> None:
    """Or a machine that has only what the program asks for writes no model of the bed."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    asked = {re.split(r"[=<>\[]", line)[0].strip() for line in project["dependencies"]}
    installed = {NAMES.get(name, name) for name in asked} | {"shiboken6"}

    imported = _imported()
    beside = {n for n in imported if n.startswith("setup_")}  # the start's own modules
    assert imported - OWN - beside - set(sys.stdlib_module_names) <= installed
