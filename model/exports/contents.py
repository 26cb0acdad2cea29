"""A folder's `contents.csv`: what lies in it by our hand, so that a later run can clear it away.

A file is ours as long as its digest is the one that we wrote down: what somebody has changed or put
there is never touched.
"""

from __future__ import annotations

import csv
from collections.abc import Collection, Iterable, Iterator
from hashlib import sha256
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from model.exports.csv_text import csv_bytes

CONTENTS = "contents.csv"
_COLUMNS = ("file", "shows", "unit", "scale", "sha256")


class Row(NamedTuple):
    """A file by its path in the folder; `unit` is that of its lengths, `scale` that on paper."""

    file: str
    shows: str
    unit: str
    scale: str


def write_contents(rows: Iterable[Row], folder: Path) -> None:
    """List the files of a folder, once they are written."""
    lines = ((*row, _digest(folder / row.file)) for row in rows)
    (folder / CONTENTS).write_bytes(csv_bytes(_COLUMNS, lines))


def known_files(folder: Path) -> dict[str, str]:
    """Digests of the files that an earlier run left in a folder, by path."""
    try:
        with (folder / CONTENTS).open(encoding="utf-8", newline="") as file:
            return {
                row["file"]: row["sha256"] for row in csv.DictReader(file)
                if row.get("file") and row.get("sha256")
            }  # fmt: skip
    except (OSError, UnicodeDecodeError, csv.Error):
        return {}


def clear_stale(folder: Path, known: dict[str, str], fresh: Collection[str]) -> None:
    """Take away the known files that are still as they were left and are not among the fresh."""
    for path in _stale(folder, known, fresh):
        path.unlink()


def _stale(folder: Path, known: dict[str, str], fresh: Collection[str]) -> Iterator[Path]:
    for name, digest in known.items():
        path = folder / PurePosixPath(name)
        if name in fresh or not _is_plainly_in(path, folder):
            continue
        if _digest(path) == digest:
            yield path


def _is_plainly_in(path: Path, folder: Path) -> bool:
    """Whether it is a file in the folder, and nowhere else by a link, `..` or a whole path."""
    inside = path.resolve().is_relative_to(folder.resolve())
    return inside and path.is_file() and not path.is_symlink()


def _digest(path: Path) -> str:
    return sha256(path.read_bytes()).hexdigest()
