"""Where the boards of a solid part come from: sizes that a yard sells, the rack, or by the foot."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from model.bed import Design
from model.stock.rough import Allowances, rough_thickness
from model.stock.rows import Board, SoldSize
from model.units import Mm

Kind = Literal["board foot", "rack", "sold rough", "sold planed"]

SAME: Mm = 0.05  # two sizes nearer than this are one: no rule reads closer
OFF_CLASS: Mm = 1.6  # 1/16 in: what kiln-dried boards may be short of their class


@dataclass(frozen=True, kw_only=True)
class Source:
    """The boards for all parts of one wood and thickness; `thickness` is that of the boards as
    they are bought, `finished` that of the parts, `widths` those of planed stock.
    """

    kind: Kind
    material: str
    finished: Mm
    thickness: Mm
    widest: Mm
    widths: tuple[Mm, ...] = ()

    @property
    def is_planed(self) -> bool:
        """Whether its faces are ready to use."""
        return self.kind == "sold planed"

    def rough_width(self, width: Mm, more: Mm) -> Mm:
        """What to rip for a finished width: none where planed stock is as wide already."""
        return width if self.is_as_wide(width) else width + more

    def is_as_wide(self, width: Mm) -> bool:
        """Whether planed stock has this width."""
        return any(abs(width - each) <= SAME for each in self.widths)


def allowances(design: Design) -> Allowances:
    """What the maker adds to finished sizes."""
    return Allowances(
        length=design.value("rough_length_more"), width=design.value("rough_width_more")
    )


def source_of(design: Design, material: str, finished: Mm) -> Source:
    """Where a thickness of a wood comes from, by what the maker chose and has typed in.

    What rack or list of sold sizes lacks is reckoned by the board foot.
    """
    rough = rough_thickness(finished, allowances(design))
    asked = design.value("boards_from")
    if asked == "sold sizes" and (sold := sold_for(design.stock.sold, material, finished, rough)):
        return _sold(sold, material, finished)
    most: Mm = design.value("widest_board")
    if asked == "rack" and (boards := boards_for(design.stock.boards, material, rough)):
        most = min(most, max(board.width for board in boards))
        return Source(
            kind="rack", material=material, finished=finished, thickness=rough, widest=most
        )
    return Source(
        kind="board foot", material=material, finished=finished, thickness=rough, widest=most
    )


def _sold(sold: tuple[SoldSize, ...], material: str, finished: Mm) -> Source:
    is_ready = sold[0].planed and abs(sold[0].thickness - finished) <= SAME
    widths = tuple(sorted({size.width for size in sold}))
    return Source(
        kind="sold planed" if is_ready else "sold rough",
        material=material,
        finished=finished,
        thickness=sold[0].thickness,
        widest=widths[-1],
        widths=widths if is_ready else (),
    )


def sold_for(
    sold: Iterable[SoldSize], material: str, finished: Mm, rough: Mm
) -> tuple[SoldSize, ...]:
    """The sold sizes of the thinnest boards that give a thickness; planed to it comes first."""
    own = [size for size in sold if size.material == material]
    ready = [size for size in own if size.planed and abs(size.thickness - finished) <= SAME]
    if ready:
        return tuple(ready)
    # Planed stock that is a hair too thick is no use: a planer needs something to take.
    thick = [
        size
        for size in own
        if (
            size.thickness >= finished + 1.0 if size.planed else size.thickness >= rough - OFF_CLASS
        )
    ]
    thinnest = min((size.thickness for size in thick), default=0.0)
    return tuple(size for size in thick if abs(size.thickness - thinnest) <= SAME)


def boards_for(boards: Iterable[Board], material: str, rough: Mm) -> tuple[Board, ...]:
    """The boards of the rack that are of this wood and rough class."""
    return tuple(
        board
        for board in boards
        if board.material == material
        and not board.planed
        and abs(board.thickness - rough) <= OFF_CLASS
    )
