"""What a ticked cut or step says about the pieces themselves: their records come and go with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from model.parts.marks import Mark, work_digest
from model.shop.cut_list import CutPiece
from model.shop.order.record import Batch, Line
from model.stock.progress import CutPart
from model.units import Mm

SAME: Mm = 0.01  # two finished sizes nearer than this are one: no tape reads closer
_ROUGH = {"plane": "rough_thickness", "width": "rough_width", "length": "rough_length"}
Done = tuple[tuple[Batch, Line], ...]


def sawn(piece: CutPiece, number: int, cut: str) -> CutPart:
    """A piece as it leaves the saw: what is over its finished size is still to be taken off."""
    return CutPart(
        mark=piece.name,
        piece=number,
        name=piece.part,
        material=piece.material.key,
        length=piece.finished.length,
        width=piece.finished.width,
        thickness=piece.finished.thickness,
        rough_length=_over(piece.rough.length, piece.finished.length),
        rough_width=_over(piece.rough.width, piece.finished.width),
        rough_thickness=_over(piece.rough.thickness, piece.finished.thickness),
        cut=cut,
    )


def _over(rough: Mm, finished: Mm) -> Mm:
    return rough if rough > finished + SAME else 0.0


def glued(piece: CutPiece, mark: Mark, number: int) -> CutPart:
    """A part glued up from layers or strips: still too long and too wide where it is solid."""
    one = sawn(piece, number, "")
    return replace(
        one,
        mark=mark.mark,
        length=float(mark.length),
        width=float(mark.width),
        thickness=float(mark.thickness),
        rough_width=_glued_width(piece, mark) if piece.source is not None else 0.0,
        rough_thickness=_glued_thickness(piece, mark),
    )


def _glued_thickness(piece: CutPiece, mark: Mark) -> Mm:
    """That of a panel of strips, which is planed flat when it is glued."""
    return _over(piece.finished.thickness, float(mark.thickness)) if piece.layers == 1 else 0.0


def _glued_width(piece: CutPiece, mark: Mark) -> Mm:
    each = piece.finished.width if piece.strips > 1 else piece.rough.width
    return _over(each * piece.strips, float(mark.width))


def is_of(part: CutPart, piece: CutPiece) -> bool:
    """Whether a record is of these pieces as they are now drawn."""
    return part.mark == piece.name and _is_alike(part, piece)


def is_whole_of(part: CutPart, piece: CutPiece, mark: Mark) -> bool:
    """Whether a record is of the glued-up part that these pieces make."""
    sides = (float(mark.length), float(mark.width), float(mark.thickness))
    return piece.is_glued and part.mark == mark.mark and _has_size(part, sides)


def _is_alike(part: CutPart, piece: CutPiece) -> bool:
    size = piece.finished
    is_same = part.material == piece.material.key and part.name == piece.part
    return is_same and _has_size(part, (size.length, size.width, size.thickness))


def _has_size(part: CutPart, sides: Sequence[Mm]) -> bool:
    own = (part.length, part.width, part.thickness)
    return all(abs(a - b) <= SAME for a, b in zip(own, sides, strict=True))


# ---------------------------------------------------------------- steps


def with_step(part: CutPart, batch: Batch, line: Line, mark: Mark, done: Done) -> CutPart:
    """The piece after one more step; `done` is all that is done to its mark."""
    steps = (*(key for key in part.steps if key != line.key), line.key)
    milled = {_ROUGH[batch.way]: 0.0} if batch.way in _ROUGH else {}
    return replace(part, steps=steps, work=work_of(steps, mark, done), **milled)  # type: ignore[arg-type]


def without_step(
    part: CutPart, batch: Batch, line: Line, mark: Mark, done: Done, fresh: CutPart
) -> CutPart:
    """The piece without a step; `fresh` is what it was when it was sawn."""
    steps = tuple(key for key in part.steps if key != line.key)
    field = _ROUGH.get(batch.way)
    rough = {field: getattr(fresh, field)} if field is not None else {}
    return replace(part, steps=steps, work=work_of(steps, mark, done), **rough)


def work_of(steps: Iterable[str], mark: Mark, lines: Done) -> str:
    """A digest of what some steps cut into a part: nothing, or a text alike for alike parts."""
    keys = set(steps)
    made = [(batch, line) for batch, line in lines if line.key in keys]
    features = {k for _, line in made for spot in line.spots for k in (spot.feature, spot.also)}
    part, cuts = mark.part, len(mark.part.cuts)
    so_far = replace(
        part,
        cuts=tuple(cut for k, cut in enumerate(part.cuts) if k in features),
        holes=tuple(hole for k, hole in enumerate(part.holes, cuts) if k in features),
    )
    shaped = [batch.key for batch, _ in made if batch.way in ("taper", "ease")]
    return " ".join([work_digest(so_far), *shaped]).strip()


def numbers(piece: CutPiece, whole: bool) -> Iterator[int]:
    """The numbers of all pieces of a mark, or of the parts that they are glued into."""
    yield from range(1, piece.quantity // (piece.for_each if whole else 1) + 1)


def by_name(pieces: Iterable[CutPiece]) -> Mapping[str, CutPiece]:
    """The lines of a cut list by what is chalked on the pieces."""
    return {piece.name: piece for piece in pieces}
