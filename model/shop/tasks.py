"""What is cut from what: a task for each sheet material, and for each wood and board thickness."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from model.bed import Bed, Design
from model.cutting.plan import first_plan
from model.cutting.record import Kind, Piece, Stock, Task, Wishes
from model.shop.assumed_boards import assumed_boards, longest_asked, recipe_of
from model.shop.board_stock import rack_stock, sold_stock
from model.shop.cut_list import CutPiece, cut_list
from model.shop.sheet_stock import sheet_stock
from model.shop.task_notes import task_notes
from model.shop.together import Member, Together, strip_length, together
from model.stock.cells import shown_thickness
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class CutTask:
    """A task and what it is about; `key` is also the task's name. `thickness` is that of the stock
    as it is bought; `notes` are sentences for the maker.
    """

    key: str
    material: str
    material_name: str
    thickness: Mm
    task: Task
    notes: tuple[str, ...] = ()


def tasks(bed: Bed) -> tuple[CutTask, ...]:
    """Everything that is sawn for a bed, in the order of the parts list."""
    pieces = cut_list(bed)
    strips = together(bed, pieces)
    keys = dict.fromkeys(piece.task for piece in pieces)
    return tuple(
        _task(bed, key, [piece for piece in pieces if piece.task == key], strips) for key in keys
    )


def _task(bed: Bed, key: str, own: Sequence[CutPiece], strips: Iterable[Together]) -> CutTask:
    material, thickness, design = own[0].material, own[0].thickness, bed.design
    stock, longest = _stock(design, own)
    task = Task(
        kind=_kind(own[0]),
        pieces=tuple(_pieces(own, strips, longest, design.value("kerf"))),
        stock=stock,
        kerf=design.value("kerf"),
        wishes=_wishes(design, _kind(own[0])),
        name=key,
    )
    whole, notes = _with_yard(design, own[0], task)
    weight = material.density_kg_m3 * thickness / 1000
    return CutTask(
        key=key,
        material=material.key,
        material_name=material.name,
        thickness=thickness,
        task=replace(whole, stock=tuple(replace(each, kg_per_m2=weight) for each in whole.stock)),
        notes=(*notes, *task_notes(design, own, strips)),
    )


def _kind(piece: CutPiece) -> Kind:
    if piece.source is None:
        return "sheets"
    return "lengths" if piece.is_as_bought else "boards"


_RANDOM = "drawn at random from what a yard may have. Lay the pieces out anew on your own."
_LACKING = {"rack": "Your rack has none", "sold sizes": "Your list of sold sizes has none"}
_TOO_SMALL = f"Your rack does not hold all pieces: the boards to buy beside it are {_RANDOM}"
_NO_SHEET = "No size of a sheet is known for {name}: type one in."


def _by_foot(design: Design, piece: CutPiece) -> str:
    """Why boards are assumed, and what would be better."""
    lacking = _LACKING.get(design.value("boards_from"))
    if lacking is None:
        return f"The boards are {_RANDOM}"
    thick = shown_thickness(piece.thickness, True, design.value("shown_unit"))
    return f"{lacking} of {piece.material.name} in {thick}: these boards are {_RANDOM}"


def _wishes(design: Design, kind: Kind) -> Wishes:
    return Wishes(
        least_offcut=design.value("least_offcut" if kind == "sheets" else "least_board_offcut"),
        largest_share=design.value("first_cut_share"),
        heaviest_kg=design.value("first_cut_kg"),
        offcut_before_settings=design.value("plan_prefers") == "large offcut",
        strips=design.value("strips_only"),
    )


def _stock(design: Design, own: Sequence[CutPiece]) -> tuple[tuple[Stock, ...], Mm]:
    """What the maker has or can buy by the piece, and how long a strip that is cut from it may be;
    nothing where boards are bought by the foot.
    """
    source = own[0].source
    if source is None:
        stock = sheet_stock(design, own)
    elif source.kind == "rack":
        stock = rack_stock(design, own)
    elif source.kind == "board foot":
        return (), longest_asked(recipe_of(design, own[0].thickness))
    else:
        stock = sold_stock(design, own[0])
    return stock, max((each.length - each.trim.left - each.trim.right for each in stock), default=0)


def _with_yard(design: Design, piece: CutPiece, task: Task) -> tuple[Task, tuple[str, ...]]:
    """The task with boards that a yard may have, where the maker's do not hold all pieces."""
    if piece.source is None:
        return task, () if task.stock else (_NO_SHEET.format(name=piece.material.name),)
    recipe = recipe_of(design, piece.thickness)
    if piece.source.kind == "board foot":
        return replace(task, stock=assumed_boards(task, recipe)), (_by_foot(design, piece),)
    return filled_up(design, piece, task)


def filled_up(design: Design, piece: CutPiece, task: Task) -> tuple[Task, tuple[str, ...]]:
    """A task with boards to buy beside a rack that does not hold all its pieces, and a note."""
    if piece.source is None or piece.source.kind != "rack" or not (missing := _missing(task)):
        return task, ()
    more = assumed_boards(replace(task, pieces=missing), recipe_of(design, piece.thickness))
    return replace(task, stock=(*task.stock, *more)), (_TOO_SMALL,)


@lru_cache(maxsize=64)  # asked again at every tick, of the same boards and pieces
def _missing(task: Task) -> tuple[Piece, ...]:
    """What a quick plan of the maker's own boards leaves out, as pieces of their own."""
    short = {(each.mark, each.quantity) for each in first_plan(task).left_out}
    sizes = {piece.mark: piece for piece in task.pieces}
    return tuple(
        replace(sizes[mark], quantity=quantity, row="", stays_whole=False)
        for mark, quantity in sorted(short)
    )


# ---------------------------------------------------------------- pieces


def _pieces(
    own: Sequence[CutPiece], strips: Iterable[Together], longest: Mm, kerf: Mm
) -> Iterator[Piece]:
    """The pieces of a task: strips first, cut shorter where no stock is as long, then the rest."""
    names = {piece.name for piece in own}
    taken: set[tuple[str, int]] = set()
    for strip in strips:
        if strip.members[0].piece.name in names:
            taken |= {(each.piece.name, each.number) for each in strip.members}
            yield from _strip_pieces(strip, longest, kerf)
    for piece in own:
        left = [n for n in range(1, piece.quantity + 1) if (piece.name, n) not in taken]
        for first, quantity in _runs(left):
            yield _piece(piece, first, quantity)


def _strip_pieces(strip: Together, longest: Mm, kerf: Mm) -> Iterator[Piece]:
    parts = list(_split(strip.members, longest, kerf))
    for number, members in enumerate(parts, 1):
        alone = len(members) == 1
        name = "" if alone else strip.name if len(parts) == 1 else f"{strip.name} ({number})"
        for first, quantity, piece in _alike(members):
            made = _piece(piece, first, quantity)
            yield replace(made, row=name, stays_whole=strip.stays_whole and not alone)


def _split(members: Sequence[Member], longest: Mm, kerf: Mm) -> Iterator[list[Member]]:
    run: list[Member] = []
    for member in members:
        if run and strip_length([*run, member], kerf) > longest:
            yield run
            run = []
        run.append(member)
    yield run


def _alike(members: Sequence[Member]) -> Iterator[tuple[int, int, CutPiece]]:
    """Neighbours of one mark whose numbers follow each other: first number, how many, of what."""
    at = 0
    while at < len(members):
        end = at + 1
        while end < len(members) and _follows(members[end - 1], members[end]):
            end += 1
        yield members[at].number, end - at, members[at].piece
        at = end


def _follows(one: Member, other: Member) -> bool:
    return one.piece is other.piece and other.number == one.number + 1


def _runs(numbers: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Numbers that follow each other: the first, and how many."""
    start = 0
    for at in range(1, len(numbers) + 1):
        if at == len(numbers) or numbers[at] != numbers[at - 1] + 1:
            yield numbers[start], at - start
            start = at


def _piece(piece: CutPiece, first: int, quantity: int) -> Piece:
    return Piece(
        mark=piece.name,
        length=piece.rough.length,
        width=piece.rough.width,
        quantity=quantity,
        first=first,
        grain=piece.grain,
    )
