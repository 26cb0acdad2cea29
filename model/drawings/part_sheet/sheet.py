"""The drawing of one mark for a given room: views, sections, notes, at the largest scale that fits.

Long views stand above each other as the projection rolls the part; sections stand beside them where
there is room, else below.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.cutting.record import Box
from model.drawings.dimensioning.told import Told
from model.drawings.moved import together
from model.drawings.paper import Drawing, Measure, Text
from model.drawings.part_sheet.block import Block
from model.drawings.part_sheet.edges import cells_of, square_holes
from model.drawings.part_sheet.faces import LOOKS, in_order
from model.drawings.part_sheet.long_view import LongView
from model.drawings.part_sheet.remarks import remarks
from model.drawings.part_sheet.scales import scales
from model.drawings.part_sheet.section_view import SectionView, broken
from model.drawings.part_sheet.sections import Cut, cuts
from model.drawings.part_sheet.work import Group, PartWork, part_work
from model.part import Face, Part
from model.parts.marks import Mark
from model.units import Mm, Share

BETWEEN: Mm = 7.0  # blocks
REMARK: Mm = 1.9
REMARK_ROW: Mm = 3.6
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I and O: they read as figures


@dataclass(frozen=True, kw_only=True)
class PartSheet:
    """The drawing of a mark, no larger than the room that was given unless `fits` is False.

    `told` are all the words on it, `scale_words` the scale of its long views.
    """

    drawing: Drawing
    told: tuple[str, ...]
    scale_words: str
    fits: bool

    @property
    def width(self) -> Mm:
        return self.drawing.width

    @property
    def height(self) -> Mm:
        return self.drawing.height


def part_sheet(
    mark: Mark, told: Told, width: Mm, height: Mm, is_third_angle: bool | None = None
) -> PartSheet:
    """The drawing of a mark for a room on paper, lower left corner at (0, 0).

    Third-angle projection where None is said and the unit is the inch, else first-angle.
    """
    third = told.unit == "inch" if is_third_angle is None else is_third_angle
    maker = _Maker(mark.part, mark.handed, told, third)
    last: Block | None = None
    words = ""
    for scale, words in scales(told.unit):
        if mark.part.size[0] * scale > width - 14:
            continue
        last = maker.block(scale, words, width)
        if last.width <= width and last.height <= height:
            break
    else:
        if last is None:
            last = maker.block(scale, words, width)
    return _sheet(last, scale, words, mark, width, height)


def _sheet(block: Block, scale: Share, words: str, mark: Mark, width: Mm, height: Mm) -> PartSheet:
    placed = block.with_corner(0.0, 0.0)
    drawing = Drawing(
        width=placed.width, height=placed.height, scale=scale, items=placed.items,
        title=f"{mark.mark} {mark.name}",
    )  # fmt: skip
    fits = placed.width <= width + 1e-6 and placed.height <= height + 1e-6
    said = tuple(item.words for item in placed.items if isinstance(item, (Text, Measure)))
    return PartSheet(drawing=drawing, told=said, scale_words=words, fits=fits)


class _Maker:
    """What does not hang on the scale, read once."""

    def __init__(self, part: Part, handed: str, told: Told, third: bool) -> None:
        self._part, self._told, self._third = part, told, third
        self._work = part_work(part, told)
        self._plain = cells_of(part)
        self._bored = cells_of(part, square_holes(part)) if part.holes else self._plain
        self._remarks = remarks(part, handed, told)
        self._main = _main_face(self._work)
        self._shown = _shown_faces(self._work, part, self._main)

    def block(self, scale: Share, words: str, width: Mm) -> Block:
        """The whole drawing at one scale."""
        main = self._view(self._main, scale, words, ())
        found = cuts(self._work, self._part.size, not main.is_wide)
        lettered = list(zip(_LETTERS, found, strict=False))
        marks = tuple((letter, cut.at) for letter, cut in lettered)
        faces = in_order(self._shown, self._main, self._third)
        views = [
            self._view(face, scale, words, marks if face is self._main else ()) for face in faces
        ]
        noted = frozenset(group.words for view in views for group in view.groups)
        long = [view.block(self._plain, width) for view in views]
        sections = [
            self._section(letter, cut, k == 0, not main.is_wide, noted)
            for k, (letter, cut) in enumerate(lettered)
        ] or [self._plain_end(main)]
        return _laid_out(long, sections, self._remarks, width)

    def _view(
        self, face: Face, scale: Share, words: str, marks: tuple[tuple[str, Mm], ...]
    ) -> LongView:
        is_main = face is self._main
        groups = tuple(g for g in self._work.groups if _view_of(g, self._part, self._main) is face)
        return LongView(
            part=self._part, look=LOOKS[face], scale=scale, told=self._told, groups=groups,
            ends=tuple(stub for stub in self._work.stubs if stub.face.axis == 0), cuts=marks,
            is_main=is_main, title=f"{str(face).capitalize()}  {words}",
        )  # fmt: skip

    def _section(
        self, letter: str, cut: Cut, is_first: bool, is_slim: bool, noted: frozenset[str]
    ) -> Block:
        scale, words = self._section_scale(cut)
        return SectionView(
            part=self._part, cut=cut, letter=letter, scale=scale, scale_words=words,
            told=self._told, has_thickness=is_first, has_width=is_first and is_slim, noted=noted,
        ).block(self._bored, self._plain)  # fmt: skip

    def _section_scale(self, cut: Cut) -> tuple[Share, str]:
        """The largest at which a section is no more than a hand high, plain stretches left out."""
        for scale, words in scales(self._told.unit):
            view = SectionView(
                part=self._part, cut=cut, letter="", scale=scale, scale_words=words,
                told=self._told, has_thickness=False, has_width=False, noted=frozenset(),
            )  # fmt: skip
            if self._part.size[2] * scale <= 45 and view.heights.height <= 62:
                break
        return scale, words

    def _plain_end(self, main: LongView) -> Block:
        """A part without work across it: its end, for the thickness."""
        cut = Cut(self._part.size[0] / 2, ())
        for scale, words in scales(self._told.unit):  # noqa: B007
            heights = broken(self._part.size[1], (), scale).height
            if self._part.size[2] * scale <= 45 and heights <= 50:
                break
        return SectionView(
            part=self._part, cut=cut, letter="", scale=scale, scale_words=words, told=self._told,
            has_thickness=True, has_width=not main.is_wide, noted=frozenset(),
        ).block(self._bored, self._plain)  # fmt: skip


def _main_face(work: PartWork) -> Face:
    """The broad side that more is cut into; the face where it is all the same."""
    back = sum(len(g.spots) for g in work.groups if g.face is Face.BACK)
    face = sum(len(g.spots) for g in work.groups if g.face is Face.FACE)
    return Face.BACK if back > face else Face.FACE


def _shown_faces(work: PartWork, part: Part, main: Face) -> set[Face]:
    return {main} | {_view_of(group, part, main) for group in work.groups}


def _view_of(group: Group, part: Part, main: Face) -> Face:
    """The side on which a group is drawn and told; what runs from end to end is told by a section,
    and so is what lies in an end.
    """
    if group.face.axis == 0 or (group.face.axis == 1 and group.is_through(0, part.size)):
        return main
    return group.face


def _laid_out(
    long: Sequence[Block], sections: Sequence[Block], said: Sequence[str], width: Mm
) -> Block:
    """Long views in a column; sections at their right where all of them fit, else in rows below."""
    column = _stacked(long)
    widest = max(block.width for block in sections)
    if column.width + 2 * BETWEEN + widest <= width:
        beside = _stacked(sections)
        beside = beside.with_corner(column.box.x1 + 2 * BETWEEN, column.box.y1 - beside.height)
        whole = _joined([column, beside])
    else:
        whole = _joined([column, *_in_rows(sections, column, width)])
    return _with_remarks(whole, said)


def _stacked(blocks: Sequence[Block]) -> Block:
    """One below the other, views under views."""
    placed: list[Block] = []
    y = 0.0
    for block in blocks:
        here = block.at(0.0, y - block.box.y1)
        placed.append(here)
        y = here.box.y0 - BETWEEN
    return _joined(placed)


def _in_rows(blocks: Sequence[Block], column: Block, width: Mm) -> Iterator[Block]:
    x, top = column.box.x0, column.box.y0 - BETWEEN
    lowest = top
    for block in blocks:
        if x > column.box.x0 and x + block.width > column.box.x0 + width:
            x, top = column.box.x0, lowest - BETWEEN
        here = block.with_corner(x, top - block.height)
        lowest = min(lowest, here.box.y0)
        x = here.box.x1 + 2 * BETWEEN
        yield here


def _joined(blocks: Sequence[Block]) -> Block:
    items = tuple(item for block in blocks for item in block.items)
    return Block(items=items, box=together([block.box for block in blocks]))


def _with_remarks(block: Block, said: Sequence[str]) -> Block:
    """Lines below the drawing."""
    box, items = block.box, list(block.items)
    y = box.y0 - BETWEEN + REMARK
    for line in said:
        items.append(Text((box.x0, y), line, REMARK, "left"))
        y -= REMARK_ROW
    low = y + REMARK_ROW - REMARK if said else box.y0
    return Block(items=tuple(items), box=Box(box.x0, min(low, box.y0), box.x1, box.y1))
