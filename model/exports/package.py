"""The plan package: every file that a bed is built from, in one folder, all of them or none."""

from __future__ import annotations

import contextlib
import os
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path

from model.bed import Bed
from model.errors import BadInput
from model.exports import (
    checks_csv,
    checks_json,
    client_page,
    cost_csv,
    cutting_json,
    glb,
    parts_csv,
    parts_json,
    parts_xlsx,
    quote_text,
    shopping_csv,
    step,
    stl,
    summary,
    threemf,
    work_order_csv,
    work_order_text,
)
from model.exports.files import settle, told_in_a_sentence

Writer = Callable[[Bed, Path], None]

WRITERS: dict[str, Writer] = {
    "summary.json": summary.write,
    "parts.json": parts_json.write,
    "parts.csv": parts_csv.write,
    "parts.xlsx": parts_xlsx.write,
    "checks.json": checks_json.write,
    "checks.csv": checks_csv.write,
    "cutting.json": cutting_json.write,
    "shopping.csv": shopping_csv.write,
    "cost.csv": cost_csv.write,
    "quote.txt": quote_text.write,
    "work_order.txt": work_order_text.write,
    "work_order.csv": work_order_csv.write,
    "bed.glb": glb.write,
    "bed.stl": stl.write,
    "bed.3mf": threemf.write,
    "bed.step": step.write,
    "client.html": client_page.write,
}


def write_package(bed: Bed, folder: Path) -> tuple[Path, ...]:
    """Write every file of the package; other files in the folder are left alone.

    All are finished in a hidden folder beside their places before the first one is moved. Refused
    with BadInput: a folder that cannot be made or written, a full disk.
    """
    made = _missing(folder)
    try:
        with told_in_a_sentence(f"The plan was not written to {folder}", "folder"):
            folder.mkdir(parents=True, exist_ok=True)
            return _written(bed, folder)
    except BaseException:
        for each in made:  # only what is empty goes away
            with contextlib.suppress(OSError):
                each.rmdir()
        raise


def _missing(folder: Path) -> list[Path]:
    """The folders that have to be made, the innermost first."""
    return [each for each in (folder, *folder.parents) if not os.path.lexists(each)]


def _written(bed: Bed, folder: Path) -> tuple[Path, ...]:
    _look_for_folders(folder)
    # Inside and not next to the folder, which can be the root of another disk.
    aside = Path(tempfile.mkdtemp(prefix=".plan-", dir=folder))
    try:
        for name, write in WRITERS.items():
            write(bed, aside / name)
            settle(aside / name)
        for name in WRITERS:
            os.replace(aside / name, folder / name)
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    settle(folder)
    return tuple(folder / name for name in WRITERS)


def _look_for_folders(folder: Path) -> None:
    """A folder of a file's name would stop the move when half of the files have been moved."""
    for name in WRITERS:
        if (folder / name).is_dir():
            raise BadInput("folder", f"The plan was not written: {folder / name} is a folder.")
