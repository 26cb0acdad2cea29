"""Where the boards of a solid part come from: sizes that a yard sells, the rack, or by the foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from model.bed import Design
from model.stock.rough import Allowances, rough_thickness
from model.stock.rows import Board, SoldSize
from model.units import Mm

Kind = Literal["board foot", "rack", "sold rough", "sold planed"]

_LEAST_PLANED: Mm = 1.0  # two light passes, common practice
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
        """What to rip for a finished width. Planed stock that is as wide, or wider by less than the
        allowance, is not ripped before it is cut to length.
        """
        near = (each for each in self.widths if width - SAME <= each <= width + more)
        return min(near, default=width + more)

    def is_as_wide(self, rough_width: Mm) -> bool:
        """Whether planed stock has this width."""
        return any(abs(rough_width - each) <= SAME for each in self.widths)


def allowances(design: Design) -> Allowances:
    """What the maker adds to finished sizes."""
    return Allowances(
        length=design.value("rough_length_more"), width=design.value("rough_width_more")
    )


def source_of(design: Design, material: str, finished: Mm) -> Source:
    """Where a thickness of a wood comes from, by what the maker chose and has typed in.

    What rack or list of sold sizes lacks is reckoned by the board foot.
    """
    asked = design.value("boards_from")
    if asked == "sold sizes" and (sold := sold_for(design, material, finished)):
        return _sold(sold, material, finished)
    widest: Mm = design.value("widest_board")
    boards = boards_for(design, material, finished) if asked == "rack" else ()
    return Source(
        kind="rack" if boards else "board foot",
        material=material,
        finished=finished,
        thickness=rough_thickness(finished, allowances(design)),
        widest=min([widest, max(board.width for board in boards)]) if boards else widest,
    )


def _sold(sold: tuple[SoldSize, ...], material: str, finished: Mm) -> Source:
    is_ready = _is_ready(sold[0], finished)
    widths = tuple(sorted({size.width for size in sold}))
    return Source(
        kind="sold planed" if is_ready else "sold rough",
        material=material,
        finished=finished,
        thickness=sold[0].thickness,
        widest=widths[-1],
        widths=widths if is_ready else (),
    )


def sold_for(design: Design, material: str, finished: Mm) -> tuple[SoldSize, ...]:
    """The sold sizes of the thinnest boards that give a thickness; planed to it comes first."""
    own = [size for size in design.stock.sold if size.material == material]
    if ready := tuple(size for size in own if _is_ready(size, finished)):
        return ready
    rough = rough_thickness(finished, allowances(design))
    thick = [size for size in own if _mills_to(size, finished, rough)]
    thinnest = min((size.thickness for size in thick), default=0.0)
    return tuple(size for size in thick if abs(size.thickness - thinnest) <= SAME)


def _is_ready(size: SoldSize, finished: Mm) -> bool:
    return size.planed and abs(size.thickness - finished) <= SAME


def _mills_to(size: SoldSize, finished: Mm, rough: Mm) -> bool:
    if size.planed:  # a hair too thick is no use: a planer needs something to take
        return size.thickness >= finished + _LEAST_PLANED
    return size.thickness >= rough - OFF_CLASS


def boards_for(design: Design, material: str, finished: Mm) -> tuple[Board, ...]:
    """The boards of the rack that a thickness of a wood is milled from: rough ones of its class,
    and planed ones that were of that class and are still thick enough.
    """
    more = allowances(design)
    rough = rough_thickness(finished, more)

    def serves(board: Board) -> bool:
        if board.material != material:
            return False
        if board.planed:
            is_class = abs(rough_thickness(board.thickness, more) - rough) <= SAME
            return is_class and board.thickness >= finished - SAME
        return abs(board.thickness - rough) <= OFF_CLASS

    return tuple(board for board in design.stock.boards if serves(board))
