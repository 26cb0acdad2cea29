"""Boards from rough to size: jointed, planed, ripped, glued up, trimmed, crosscut to length.

All parts of one thickness are planed in one setting, whatever they become: parts that were planed
on two days are seldom alike. Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece
from model.shop.order import feeding, say
from model.shop.order.jobs import alike, figure
from model.shop.order.keys import key_of, line_key
from model.shop.order.record import Batch, Line, Stage, Way
from model.shop.wood_source import SAME
from model.units import Mm

CLAMPS_APART: Mm = 250.0  # 10 in; common practice, no source
HAIR: Mm = 1e-6

Texts = tuple[str, ...]

_BEFORE_WIDTH: dict[Stage, str] = {
    "mill": "Joint the sawn edge of strips that are glued.",
    "trim": "Scrape off the glue and joint one edge again: what is glued up never lies flush.",
}


_END = {"trim": "Square one end", "joinery": "Near end against the stop"}
_HORNS_OFF = "The mortises are cut: now the horn comes off the far end."


class _Blank(NamedTuple):
    """A solid part on its way: what is sawn for it, its mark, and how it is named."""

    piece: CutPiece
    mark: Mark
    who: str
    strip: str  # the long piece that it is milled in, or ""

    @property
    def is_rough(self) -> bool:
        """Whether its faces are still as sawn."""
        return self.piece.source is not None and not self.piece.source.is_planed


class Milling:
    """The batches for all solid parts of a bed; `strips` names, for what is milled as one long
    piece, the piece's strip.
    """

    def __init__(
        self,
        bed: Bed,
        pieces: Iterable[CutPiece],
        who: Mapping[str, str],
        strips: Mapping[str, str],
    ) -> None:
        marks = {mark.mark: mark for mark in bed.marks}
        self._unit: str = bed.design.value("shown_unit")
        self._blanks = [
            _Blank(piece, marks[piece.mark], who[piece.mark], strips.get(piece.name, ""))
            for piece in pieces
            if piece.source is not None
        ]

    def milled(self) -> tuple[Batch, ...]:
        """What is done to single boards: joint, plane, rip."""
        return (*self._jointed(), *self._planed(), *self._ripped())

    def glued(self) -> tuple[Batch, ...]:
        """Strips into panels, then layers into posts."""
        strips = [each for each in self._blanks if each.piece.strips > 1]
        layers = [each for each in self._blanks if each.piece.layers > 1]
        return (
            *self._glue("strips", strips, lambda b: b.piece.strips * b.piece.finished.width),
            *self._flattened(strips),
            *self._glue("layers", layers, lambda b: float(b.mark.thickness)),
        )

    def _flattened(self, panels: Sequence[_Blank]) -> tuple[Batch, ...]:
        """Panels are planed to the thickness of the part, or of the layer that they are."""
        made: list[Batch] = []
        thick = [each for each in panels if each.piece.finished.thickness > _layer(each) + SAME]
        for result, own in _by(thick, _layer):
            made += self._batch(
                "plane panels", "glue", "plane", "Plane panels flat",
                "planer if it is as wide, or hand plane and sander", own,
                figures=(("thickness", result),),
                setting=f"Both faces alike, the last pass at {say.size(result, self._unit)}",
                before=("Let the glue cure for a day and scrape it off: it blunts the knives.",),
                names=_mark_name,
            )  # fmt: skip
        return tuple(made)

    def widened(self) -> tuple[Batch, ...]:
        """What is glued up is ripped to its width."""
        wide = [each for each in self._blanks if _is_ripped_late(each)]
        return self._widths("trim", wide, _whole_width)

    # ------------------------------------------------------------ single boards

    def _jointed(self) -> tuple[Batch, ...]:
        rough = [each for each in self._blanks if each.is_rough]
        edges = [
            each
            for each in self._blanks
            if not each.is_rough and _is_ripped(each) and not each.piece.is_as_bought
        ]
        short = [(b.piece.name, b.piece.rough.length) for b in rough if not b.strip]
        faces = self._batch(
            "joint faces", "mill", "joint", "Joint one face, then one edge", "jointer", rough,
            setting="One face flat on each, then one edge square to it; mark both",
            cautions=feeding.short_feed(short, self._unit),
        )  # fmt: skip
        only = self._batch(
            "joint edges", "mill", "joint", "Joint one edge", "jointer", edges,
            setting="One edge straight and square to the faces",
        )  # fmt: skip
        return (*faces, *only)

    def _planed(self) -> tuple[Batch, ...]:
        rough = [each for each in self._blanks if each.is_rough]
        made: list[Batch] = []
        for thick, own in _by(rough, lambda b: b.piece.finished.thickness):
            made += self._batch(
                "plane", "mill", "plane", "Plane to thickness", "planer", own,
                figures=(("thickness", thick),),
                setting=f"All at once, the last pass at {say.size(thick, self._unit)}",
                before=("Mill a piece of waste with them for test cuts.",),
                cautions=feeding.thin_feed(thick, self._unit),
            )  # fmt: skip
        return tuple(made)

    def _ripped(self) -> tuple[Batch, ...]:
        early = [each for each in self._blanks if _is_ripped(each)]
        return self._widths("mill", early, lambda b: b.piece.finished.width)

    def _widths(
        self, stage: Stage, own: Sequence[_Blank], width: Callable[[_Blank], Mm]
    ) -> tuple[Batch, ...]:
        made: list[Batch] = []
        for wide, alike_ones in _by(own, width):
            glued = any(each.piece.is_glued for each in alike_ones)
            made += self._batch(
                f"rip {stage}", stage, "width", "Rip to width", "table saw, rip fence", alike_ones,
                figures=(("width", wide),),
                setting=f"Fence at {say.size(wide, self._unit)}, the jointed edge against it",
                before=(_BEFORE_WIDTH[stage],) if glued else (),
                cautions=feeding.narrow_rip(wide, self._unit),
                names=_piece_name if stage == "mill" else _mark_name,
            )  # fmt: skip
        return tuple(made)

    # ------------------------------------------------------------ glued up, cut to length

    def _glue(
        self, what: str, own: Sequence[_Blank], size: Callable[[_Blank], Mm]
    ) -> tuple[Batch, ...]:
        made: list[Batch] = []
        across = "width" if what == "strips" else "thickness"
        for result, alike_ones in _by(own, size):
            longest = max(each.piece.rough.length for each in alike_ones)
            clamps = int(longest // CLAMPS_APART) + 1
            made += self._batch(
                f"glue {what}", "glue", "glue", f"Glue up {what}", "clamps and cauls", alike_ones,
                figures=((across, result),),
                setting=_glue_setting(result, across, clamps, self._unit),
                before=("Dry fit with all clamps first; close joints need no force.",),
                names=_mark_name,
                detail=lambda b: _glue_detail(b, what),
            )  # fmt: skip
        return tuple(made)

    def lengths(self, late: Container[str] = ()) -> tuple[Batch, ...]:
        """Everything is cut to length, the longest first; not yet the marks that are cut `late`."""
        return self._lengths([each for each in self._blanks if each.mark.mark not in late], "trim")

    def late_lengths(self, late: Container[str]) -> tuple[Batch, ...]:
        """What is cut to length when it is mortised, the squared near end against the stop."""
        own = [each for each in self._blanks if each.mark.mark in late]
        return tuple(
            replace(batch, key=f"{batch.key} late", before=(_HORNS_OFF,))
            for batch in self._lengths(own, "joinery")
        )

    def _lengths(self, blanks: Sequence[_Blank], stage: Stage) -> tuple[Batch, ...]:
        made: list[Batch] = []
        for length, own in _by(blanks, lambda b: float(b.mark.length)):
            widest = max(float(each.mark.width) for each in own)
            made += self._batch(
                "crosscut", stage, "length", "Crosscut to length", "crosscut saw with a stop", own,
                figures=(("length", length),),
                setting=f"{_END[stage]}, stop at {say.size(length, self._unit)}",
                cautions=(
                    *feeding.short_crosscut(length, self._unit),
                    *feeding.wide_crosscut(widest, self._unit),
                ),
                names=_mark_name,
                detail=lambda b: f"cut apart from {b.strip}" if b.strip else "",
            )  # fmt: skip
        return tuple(made)

    # ------------------------------------------------------------ a batch

    def _batch(
        self,
        key: str,
        stage: Stage,
        way: Way,
        operation: str,
        machine: str,
        own: Sequence[_Blank],
        *,
        setting: str,
        figures: tuple[tuple[str, Mm], ...] = (),
        before: Texts = (),
        cautions: Texts = (),
        names: Callable[[_Blank], tuple[str, int, str]] | None = None,
        detail: Callable[[_Blank], str] | None = None,
    ) -> tuple[Batch, ...]:
        """The batch of these blanks; none where there are none."""
        if not own:
            return ()
        distances = tuple(figure(what, size) for what, size in figures)
        named = key_of(key, distances)
        lines = [_line(each, named, names or _piece_name, detail or _strip_detail) for each in own]
        return (
            Batch(
                key=named,
                stage=stage,
                machine=machine,
                operation=operation,
                way=way,
                lines=tuple(lines),
                distances=distances,
                setting=setting,
                before=before,
                cautions=cautions,
            ),
        )


def _is_over(blank: _Blank) -> bool:
    """Whether the boards are wider than what they become; planed stock may be as wide."""
    return blank.piece.rough.width > blank.piece.finished.width + SAME


def _is_ripped(blank: _Blank) -> bool:
    """Whether the single boards are ripped to width: layers are, when they are glued."""
    return _is_over(blank) and (blank.piece.layers == 1 or blank.piece.strips > 1)


def _is_ripped_late(blank: _Blank) -> bool:
    """Whether it is ripped when glued up: layers never lie flush, strips may come out wide."""
    piece = blank.piece
    if piece.layers > 1:
        return _is_over(blank)
    return piece.strips > 1 and piece.strips * piece.finished.width > blank.mark.width + HAIR


def _layer(blank: _Blank) -> Mm:
    """How thick a part is, or one of its layers."""
    return float(blank.mark.thickness) / blank.piece.layers


def _whole_width(blank: _Blank) -> Mm:
    return float(blank.mark.width)


def _piece_name(blank: _Blank) -> tuple[str, int, str]:
    """What is chalked on the single boards, how many, and what their tick is kept under."""
    piece = blank.piece
    return piece.name, piece.quantity, f"{blank.who}{'/1' if piece.is_glued else ''}"


def _mark_name(blank: _Blank) -> tuple[str, int, str]:
    return blank.mark.mark, blank.mark.quantity, blank.who


def _line(
    blank: _Blank,
    key: str,
    names: Callable[[_Blank], tuple[str, int, str]],
    detail: Callable[[_Blank], str],
) -> Line:
    mark, quantity, who = names(blank)
    return Line(
        key=line_key(key, who),
        mark=mark,
        name=blank.mark.name,
        quantity=quantity,
        detail=detail(blank),
    )


def _strip_detail(blank: _Blank) -> str:
    return f"in one long piece: {blank.strip}" if blank.strip else ""


def _glue_setting(result: Mm, across: str, clamps: int, unit: str) -> str:
    size = say.size(result, unit)
    wide = "wide" if across == "width" else "thick"
    many = "1 clamp that opens" if clamps == 1 else f"{clamps} clamps that open"
    opened = say.clamp_size(result, unit)
    return f"{size} {wide} when glued; {many} {opened} or more: room for cauls too"


def _glue_detail(blank: _Blank, what: str) -> str:
    each = blank.piece.strips if what == "strips" else blank.piece.layers
    return f"each of {each} {what}, {blank.piece.name}"


def _by(own: Iterable[_Blank], size: Callable[[_Blank], Mm]) -> list[tuple[Mm, list[_Blank]]]:
    """Blanks that share a size, the largest first."""
    found: dict[object, tuple[Mm, list[_Blank]]] = {}
    for blank in own:
        distance = figure("", size(blank))
        found.setdefault(alike((distance,)), (distance.size, []))[1].append(blank)
    return sorted(found.values(), key=lambda each: -each[0])
