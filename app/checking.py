"""`bedwright check`: every check of the bed, and what would make those hold that fail."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from model.bed import Bed


def add(commands: Any, run: Any) -> None:
    """The command's own options; `run` is called with them."""
    check = commands.add_parser(
        "check", help="build the bed, print its checks and what would mend them"
    )
    check.set_defaults(command=run)
    check.add_argument("design", metavar="DESIGN", type=Path)


def told(bed: Bed, columns: int) -> Iterable[str]:
    """The checks by group, the remedies of a failed one below it."""
    from model.exports.checks_text import lines
    from model.improve import improvements

    return lines(bed, columns, improvements(bed))


def has_failed(bed: Bed) -> bool:
    """Whether any check of the bed fails."""
    from model.checks.record import Verdict

    return any(finding.verdict is Verdict.FAILS for finding in bed.findings)
