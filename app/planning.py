"""`bedwright plan`: the plan package of a bed, and what of its stock is of no use."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from model.bed import Bed


def add(commands: Any, run: Any) -> None:
    """The command's own options; `run` is called with them."""
    plan = commands.add_parser("plan", help="write parts list, checks and model of the bed")
    plan.set_defaults(command=run)
    plan.add_argument("-o", "--output", metavar="DIR", type=Path, required=True)
    plan.add_argument("design", metavar="DESIGN", type=Path)


def written(bed: Bed, folder: Path, columns: int) -> Iterator[str]:
    """Write the package into a folder, and tell file by file what stands there."""
    from model.exports.checks_text import tally
    from model.exports.package import write_package
    from model.shop.idle_stock import idle_stock

    paths = write_package(bed, folder)
    yield f"Wrote {len(paths)} files to {folder}:"
    yield from wrap(", ".join(path.name for path in paths), columns)
    yield from wrap(tally(bed), columns)
    for said in idle_stock(bed):
        yield from wrap(said, columns)
