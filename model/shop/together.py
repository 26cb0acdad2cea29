"""Pieces that leave the saw end to end in one strip.

Fronts of one row of drawers, so that the grain runs on from one to the next; and parts that are too
short for jointer and planer, milled as one long piece and cut apart after.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import NamedTuple

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece
from model.units import Mm, show_length

FRONTS = ("front", "front panel")  # what of a front shows its grain in one sweep


class Member(NamedTuple):
    """One piece of a strip: its line of the cut list, and its number among those."""

    piece: CutPiece
    number: int


@dataclass(frozen=True, kw_only=True)
class Together:
    """Pieces that are cut end to end, in their order; `stays_whole` until they are milled."""

    name: str
    members: tuple[Member, ...]
    stays_whole: bool = False

    def length(self, kerf: Mm) -> Mm:
        """How long the strip is, a kerf between two pieces."""
        return strip_length(self.members, kerf)


def strip_length(members: Sequence[Member], kerf: Mm) -> Mm:
    """How long pieces are end to end, a kerf between them."""
    return sum(each.piece.rough.length for each in members) + kerf * max(len(members) - 1, 0)


def together(bed: Bed, pieces: Sequence[CutPiece]) -> tuple[Together, ...]:
    """The strips of a cut list: matched fronts, then short parts that are milled as one."""
    kerf, shortest = bed.design.value("kerf"), bed.design.value("shortest_milled")
    matched = tuple(_matched(bed, pieces)) if bed.design.value("match_fronts") else ()
    taken = {(each.piece.name, each.number) for strip in matched for each in strip.members}
    whole = tuple(_with_care(strip, shortest) for strip in matched)
    return (*whole, *_ganged(pieces, taken, shortest, kerf))


def too_short(piece: CutPiece, shortest: Mm) -> bool:
    """Whether a part must not go through jointer and planer on its own, as it is sawn."""
    is_milled = piece.source is not None and not piece.source.is_planed
    return is_milled and piece.rough.length < shortest


def lone_notes(
    pieces: Iterable[CutPiece], strips: Iterable[Together], shortest: Mm, unit: str
) -> tuple[str, ...]:
    """What to do about short parts that have no company of their width and thickness."""
    kept = {member.piece.name for strip in strips for member in strip.members}
    return tuple(
        f"{piece.name} is {show_length(piece.rough.length, unit)} long as sawn and has no company: "
        "mill it on the end of a longer piece, or by hand."
        for piece in pieces
        if too_short(piece, shortest) and piece.name not in kept
    )


# ---------------------------------------------------------------- fronts of one row


class _Front(NamedTuple):
    row: str
    at: Mm
    piece: CutPiece
    number: int  # of the front among those of its mark, from 0


def _matched(bed: Bed, pieces: Iterable[CutPiece]) -> Iterator[Together]:
    marks = {mark.mark: mark for mark in bed.marks}
    fronts = [
        front
        for piece in pieces
        if piece.part in FRONTS and marks[piece.mark].assembly == "fronts" and piece.grain != "free"
        for front in _fronts(bed, marks[piece.mark], piece)
    ]
    fronts.sort(key=lambda front: (front.row, front.at))
    for (row, _, _), run in groupby(fronts, lambda f: (f.row, f.piece.task, f.piece.rough.width)):
        yield from _strips(row, list(run))


def _fronts(bed: Bed, mark: Mark, piece: CutPiece) -> Iterator[_Front]:
    """The fronts of a mark with the row that each stands in and its place along it."""
    own, (low, _) = bed.pieces, bed.pieces.bounds
    for number, at in enumerate(mark.pieces):
        row = own.rules[own.rule[at]].partition(".")[0]
        along = 0 if row == "foot" else 1
        yield _Front(row, float(low[at, along]), piece, number)


def _strips(row: str, fronts: Sequence[_Front]) -> Iterator[Together]:
    """One strip for a row of fronts, or one for each layer and strip that they are glued from."""
    if len(fronts) < 2:
        return
    for part in range(fronts[0].piece.for_each):
        named = f"{row} fronts, {part + 1}" if fronts[0].piece.is_glued else f"{row} fronts"
        members = (Member(f.piece, f.number * f.piece.for_each + part + 1) for f in fronts)
        yield Together(name=named, members=tuple(members))


def _with_care(strip: Together, shortest: Mm) -> Together:
    """Fronts too short to be milled alone stay in one strip until they are."""
    short = any(too_short(each.piece, shortest) for each in strip.members)
    return replace(strip, stays_whole=short)


# ---------------------------------------------------------------- short parts


def _ganged(
    pieces: Sequence[CutPiece], taken: set[tuple[str, int]], shortest: Mm, kerf: Mm
) -> Iterator[Together]:
    short = [piece for piece in pieces if too_short(piece, shortest)]
    for kind in dict.fromkeys(_kind(piece) for piece in short):
        alike = [piece for piece in short if _kind(piece) == kind]
        members = [each for piece in alike for each in _members(piece) if _id(each) not in taken]
        groups = _grouped(members, shortest, kerf)
        if groups and strip_length(groups[-1], kerf) < shortest:
            longer = _longer(pieces, kind, shortest, taken)
            groups[-1] = [*longer, *groups[-1]]
        for group in groups:
            if len(group) > 1:
                yield Together(name=_name(group), members=tuple(group), stays_whole=True)


def _kind(piece: CutPiece) -> tuple[object, ...]:
    """What pieces must share to be milled as one."""
    return (piece.task, piece.finished.thickness, piece.rough.width)


def _members(piece: CutPiece) -> list[Member]:
    return [Member(piece, number) for number in range(1, piece.quantity + 1)]


def _id(member: Member) -> tuple[str, int]:
    return member.piece.name, member.number


def _grouped(members: Iterable[Member], shortest: Mm, kerf: Mm) -> list[list[Member]]:
    """In their order, as few together as are long enough; what is over joins the last."""
    groups: list[list[Member]] = []
    for member in members:
        if groups and strip_length(groups[-1], kerf) < shortest:
            groups[-1].append(member)
        else:
            groups.append([member])
    if len(groups) > 1 and strip_length(groups[-1], kerf) < shortest:
        groups[-2:] = [[*groups[-2], *groups[-1]]]
    return groups


def _longer(
    pieces: Iterable[CutPiece], kind: tuple[object, ...], shortest: Mm, taken: set[tuple[str, int]]
) -> list[Member]:
    """A longer piece of the same width and thickness that the short ones can stay on."""
    for piece in pieces:
        if piece.source is not None and _kind(piece) == kind and not too_short(piece, shortest):
            last = Member(piece, piece.quantity)
            if _id(last) not in taken:
                return [last]
    return []


def _name(group: Sequence[Member]) -> str:
    """Such as `U2-1 to U2-4`, or `U2-4 with U5-1 to U5-3`: no piece of it goes unnamed."""
    told = []
    for name, run in groupby(group, lambda each: each.piece.name):
        numbers = [each.number for each in run]
        ends = dict.fromkeys((numbers[0], numbers[-1]))
        told.append(" to ".join(f"{name}-{number}" for number in ends))
    return " with ".join(told)
