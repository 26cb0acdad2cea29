"""The views and sections of one part at a scale; what does not hang on the scale is read once."""

from __future__ import annotations

from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.block import Block
from model.drawings.part_sheet.edges import Edges, cells_of, edges, section, square_holes
from model.drawings.part_sheet.end_detail import EndDetail, depths_across, walls_across
from model.drawings.part_sheet.faces import LOOKS, Look, in_order
from model.drawings.part_sheet.long_view import long_view
from model.drawings.part_sheet.record import Group, PartWork
from model.drawings.part_sheet.round_end import round_end
from model.drawings.part_sheet.section_view import SectionView
from model.drawings.part_sheet.sections import Cut, cuts
from model.drawings.part_sheet.shown import WIDE_ENOUGH, Shown
from model.drawings.part_sheet.work import part_work
from model.drawings.scales import scale_words, scales
from model.part import Face, Part
from model.units import Mm, Share

LIMITS: tuple[tuple[Mm, Mm], ...] = (
    (45.0, 62.0),
    (26.0, 42.0),
    (18.0, 30.0),
)  # of a section on paper
DETAIL: tuple[Mm, Mm] = (110.0, 40.0)  # of a section along a part
READABLE: Mm = 4.0  # on paper: what is narrower in a view is drawn again, larger
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I and O: they read as figures


class Blocks:
    """Draws one part; `is_third_angle` says how its views are rolled."""

    def __init__(self, part: Part, told: Told, is_third_angle: bool) -> None:
        self._part, self._told, self._third = part, told, is_third_angle
        self._work = part_work(part, told)
        self._main = _main_face(self._work)
        self._cells = cells_of(part)
        self._bored = cells_of(part, square_holes(part)) if part.holes else self._cells
        self._edges: dict[Face, Edges] = {}
        self._sections: dict[tuple[bool, tuple[Mm, Mm]], tuple[Block, ...]] = {}
        self._cut_at: dict[bool, tuple[Cut, ...]] = {}

    def views(self, scale: Share, width: Mm) -> list[Block]:
        """The long views, from the top of the paper down, no wider than that if it can be."""
        shown = {self._main, *(self._view_of(group) for group in self._work.groups)}
        faces = in_order(shown, self._main, self._third)
        return [long_view(self._shown(face, scale), self._edges_of(face), width) for face in faces]

    def sections(self, scale: Share, limit: tuple[Mm, Mm]) -> tuple[Block, ...]:
        """The sections that go with views at this scale, each as large as `limit` (width, height)
        allows.
        """
        if self._part.is_round:
            return (round_end(self._part, self._told, limit),)
        is_slim = self._is_slim(scale)
        if (is_slim, limit) not in self._sections:
            lettered = zip(_LETTERS, self._cuts(is_slim), strict=False)
            drawn = [
                self._section(*each, k == 0, is_slim, limit) for k, each in enumerate(lettered)
            ]
            if not drawn:
                drawn = [self._section("", Cut(self._part.size[0] / 2, ()), True, is_slim, limit)]
            self._sections[is_slim, limit] = tuple(drawn)
        return self._sections[is_slim, limit] + tuple(self._details(scale))

    # ------------------------------------------------------------ long views

    def _shown(self, face: Face, scale: Share) -> Shown:
        is_main = face is self._main
        lettered = zip(_LETTERS, self._cuts(self._is_slim(scale)), strict=False)
        return Shown(
            part=self._part, look=self._look(face), scale=scale, told=self._told,
            groups=tuple(g for g in self._work.groups if self._view_of(g) is face),
            ends=tuple(stub for stub in self._work.stubs if stub.face.axis == 0),
            cuts=tuple((letter, cut.at) for letter, cut in lettered) if is_main else (),
            detail=self._detail_letter(scale) if is_main else "",
            is_main=is_main, title=f"{str(face).capitalize()}  {scale_words(scale)}",
        )  # fmt: skip

    def _look(self, face: Face) -> Look:
        return LOOKS[face].turned if self._main is Face.BACK else LOOKS[face]

    def _view_of(self, group: Group) -> Face:
        """The side on which a group is drawn and told; what lies in an end, or runs along an edge
        from end to end, is told on the main one and seen in a section.
        """
        if group.face.axis == 0 or (group.face.axis == 1 and group.is_through(0, self._part.size)):
            return self._main
        return group.face

    def _is_slim(self, scale: Share) -> bool:
        """Whether the part is too narrow on paper for heights beside the view."""
        if self._part.is_round:
            return True
        return self._part.size[1] * scale < WIDE_ENOUGH

    def _edges_of(self, face: Face) -> Edges:
        if face not in self._edges:
            self._edges[face] = edges(self._cells, self._look(face), self._part.size)
        return self._edges[face]

    # ------------------------------------------------------------ sections

    def _cuts(self, is_slim: bool) -> tuple[Cut, ...]:
        if is_slim not in self._cut_at:
            self._cut_at[is_slim] = cuts(self._work, self._part.size, is_slim)
        return self._cut_at[is_slim]

    def _section(
        self, letter: str, cut: Cut, is_first: bool, is_slim: bool, limit: tuple[Mm, Mm]
    ) -> Block:
        view = SectionView(
            part=self._part, cut=cut, letter=letter, scale=1.0, told=self._told,
            has_thickness=is_first, has_width=is_first and is_slim,
        )  # fmt: skip
        scaled = [view.at_scale(scale) for scale in scales(self._told.unit)]
        fitting = [v for v in scaled if v.size[0] <= limit[0] and v.size[1] <= limit[1]]
        largest = fitting[0] if fitting else view.at_scale(0.01)
        view = next((v for v in fitting if v.is_readable), largest)  # whole rather than larger
        return view.block(section(self._bored, cut.at), section(self._cells, cut.at))

    # ------------------------------------------------------------ details along the part

    def _detail_letter(self, scale: Share) -> str:
        """The letter of the section along the part, "" where the views show all of it."""
        walls = walls_across(self._work, self._part.size)
        if not walls or min(b - a for a, b in walls) * scale >= READABLE:
            return ""
        return _LETTERS[len(self._cuts(self._is_slim(scale)))]

    def _details(self, scale: Share) -> list[Block]:
        letter = self._detail_letter(scale)
        if not letter:
            return []
        walls = walls_across(self._work, self._part.size)
        depths = depths_across(self._work, self._part.size)
        views = (
            EndDetail(part=self._part, told=self._told, letter=letter, scale=large, walls=walls,
                      depths=depths)
            for large in scales(self._told.unit)
        )  # fmt: skip
        fitting = (v for v in views if v.size[0] <= DETAIL[0] and v.size[1] <= DETAIL[1])
        return [view.block(self._cells) for view in [next(fitting, None)] if view is not None]


def _main_face(work: PartWork) -> Face:
    """The broad side that more is cut into; the face where it is all the same."""
    back = sum(len(group.spots) for group in work.groups if group.face is Face.BACK)
    face = sum(len(group.spots) for group in work.groups if group.face is Face.FACE)
    return Face.BACK if back > face else Face.FACE
