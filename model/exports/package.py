"""The plan package: every file that a bed is built from, in one folder, all of them or none."""

from __future__ import annotations

import contextlib
import os
import shutil
import tempfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path, PurePosixPath

from model.bed import Bed
from model.errors import BadInput
from model.exports import (
    checks_csv,
    checks_json,
    client_page,
    cost_csv,
    cutting_json,
    drawing_files,
    glb,
    parts_csv,
    parts_json,
    parts_xlsx,
    plan_pdf,
    quote_text,
    shopping_csv,
    step,
    stl,
    summary,
    threemf,
    work_order_csv,
    work_order_text,
)
from model.exports.contents import clear_stale, known_files
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
    "plan.pdf": plan_pdf.write,
    "bed.glb": glb.write,
    "bed.stl": stl.write,
    "bed.3mf": threemf.write,
    "bed.step": step.write,
    "client.html": client_page.write,
}

# Each fills a folder of its own; in the end `contents.csv` lists what it wrote.
FOLDERS: dict[str, Writer] = {"drawings": drawing_files.write}


def write_package(bed: Bed, folder: Path) -> tuple[Path, ...]:
    """Write every file of the package; other files in the folder are left alone.

    All are finished in a hidden folder beside their places before the first one is moved. What an
    earlier run left in `drawings` and this bed no longer has goes away, unless changed since.
    Refused with BadInput: a folder that cannot be made or written, a full disk.
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
    # Inside and not next to the folder, which can be the root of another disk.
    _look_for_folders(folder, WRITERS)
    _look_for_files(folder, FOLDERS)
    aside = Path(tempfile.mkdtemp(prefix=".plan-", dir=folder))
    try:
        names = tuple(_finished(bed, aside))
        _look_for_folders(folder, names)
        _look_for_files(folder, _folders_of(names))
        known = {name: known_files(folder / name) for name in FOLDERS}
        for name in _folders_of(names):
            (folder / name).mkdir(exist_ok=True)
        for name in names:
            os.replace(aside / name, folder / name)
        for name in FOLDERS:
            clear_stale(folder / name, known[name], _within(name, names))
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    for name in ("", *_folders_of(names)):
        settle(folder / name)
    return tuple(folder / name for name in names)


def _finished(bed: Bed, aside: Path) -> Iterator[str]:
    """Write all files, and give their names: those of folders as `drawings/plan.dxf`."""
    for name, write in WRITERS.items():
        write(bed, aside / name)
        settle(aside / name)
        yield name
    for name, write in FOLDERS.items():
        (aside / name).mkdir()
        write(bed, aside / name)
        for path in sorted(path for path in (aside / name).rglob("*") if path.is_file()):
            settle(path)
            yield path.relative_to(aside).as_posix()


def _folders_of(names: Iterable[str]) -> tuple[str, ...]:
    """The folders that files lie in, the outer ones first."""
    above = (parent for name in names for parent in reversed(PurePosixPath(name).parents))
    return tuple(dict.fromkeys(str(each) for each in above if each.name))


def _within(folder: str, names: Iterable[str]) -> frozenset[str]:
    """The files of one folder, as its own list names them."""
    lead = f"{folder}/"
    return frozenset(name.removeprefix(lead) for name in names if name.startswith(lead))


def _look_for_folders(folder: Path, names: Iterable[str]) -> None:
    """A folder of a file's name would stop the move when half of the files have been moved."""
    for name in names:
        if (folder / name).is_dir():
            raise BadInput("folder", f"The plan was not written: {folder / name} is a folder.")


def _look_for_files(folder: Path, names: Iterable[str]) -> None:
    """So would a file of a folder's name, or a folder that is closed; a link may lead anywhere."""
    for name in names:
        place = folder / name
        if place.is_symlink():
            wrong = "is a link; the drawings need a folder of their own there"
        elif place.exists() and not place.is_dir():
            wrong = "is a file; the drawings need a folder of that name"
        elif place.is_dir() and not os.access(place, os.W_OK | os.X_OK):
            wrong = "is a folder that nothing may be written to"
        else:
            continue
        raise BadInput("folder", f"The plan was not written: {place} {wrong}.")
