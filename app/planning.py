"""`bedwright plan`: the plan package of a bed, what of its stock is of no use, and which of the
cutting plans that it keeps could be better.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
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


def written(bed: Bed, folder: Path, design: Path, columns: int) -> Iterator[str]:
    """Write the package into a folder, and tell file by file what stands there; `design` is the
    file of the bed.
    """
    from model.exports.checks_text import tally
    from model.exports.package import write_package
    from model.planset.unprinted import unprinted_names
    from model.shop.idle_stock import idle_stock

    paths = write_package(bed, folder)
    yield f"Wrote {len(paths)} files to {folder}:"
    yield from wrap(", ".join(_named(paths, folder)), columns)
    yield from wrap(unprinted_names(bed.design), columns)
    yield from wrap(tally(bed), columns)
    for said in idle_stock(bed):
        yield from wrap(said, columns)
    yield from _better(bed, design, columns)


def _named(paths: Sequence[Path], folder: Path) -> Iterator[str]:
    """What stands in the folder: files by name, folders with how many they hold."""
    held = Counter(path.relative_to(folder).parts[0] for path in paths)
    yield from (name if count == 1 else f"{name} ({count} files)" for name, count in held.items())


def _better(bed: Bed, design: Path, columns: int) -> Iterator[str]:
    """Kept plans are written as they are; where a better one is found, how to take it."""
    from shlex import quote

    from model.shop.better_plans import better_plans

    for each in better_plans(bed):
        yield from wrap(
            f"{each.cut.material_name}: the kept cutting plan is written. A better one is found: "
            f"it {each.gain}. To take it:",
            columns,
        )
        yield f"  bedwright tick {quote(str(design))} --better-plan {quote(each.cut.key)}"
