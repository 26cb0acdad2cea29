"""The load cases, the one that works the bed hardest first."""

from __future__ import annotations

from typing import NamedTuple

from app.style import verdict_icon
from app.tables.cells import natural, plain
from app.tables.rows import Column
from model.brief.words import in_unit

GIVEN_BY = {True: "assumed", False: "published"}


class LoadRow(NamedTuple):
    """One load case, or all of them together (key ""): the greatest share of any limit, the piece
    that uses it (its place among the pieces, and its name), and what about it.
    """

    key: str
    title: str
    use: float
    piece: int
    words: str
    kind: str
    reason: str
    source: str
    choices: tuple[str, ...] = ()

    @property
    def is_assumed(self) -> bool:
        """Whether no publication gives the load; all of them together have no giver."""
        return bool(self.key) and not self.source


def use_text(use: float) -> str:
    """A share of a limit."""
    return f"{use:.0%}"


def holds_icon(use: float) -> str:
    """Whether a share of a limit holds, as a verdict."""
    return "fails" if use > 1 else "holds"


def _given_by(row: LoadRow) -> str:
    return GIVEN_BY[row.is_assumed] if row.key else ""


LOAD_COLUMNS = (
    Column(
        plain("Uses"), lambda r, _: use_text(r.use), lambda r: (bool(r.key), -r.use), True,
        icon=lambda r: verdict_icon(holds_icon(r.use)),
    ),
    Column(
        plain("Load"), lambda r, unit: in_unit(r.title, unit), lambda r: natural(r.title),
        tip=lambda r, unit: in_unit(f"{r.title}. {r.reason}", unit),
    ),
    Column(plain("Worst piece"), lambda r, _: f"{r.words}, {r.kind}", lambda r: natural(r.words)),
    Column(plain("Load is"), lambda r, _: _given_by(r), _given_by, tip=lambda r, _: r.source),
)  # fmt: skip
