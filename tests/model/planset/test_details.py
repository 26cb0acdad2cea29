"""Every kind of joint is drawn large, with the sizes that its parts are cut to; and the drawers."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cached_property
from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.cutting.record import Box
from model.designs import read
from model.drawings.letters import text_box
from model.drawings.measures import inked
from model.drawings.paper import Item, Measure, Text, touches
from model.drawings.part_sheet.facts import partners
from model.errors import CannotBuild
from model.part import Cut, Part
from model.planset import part_pages
from model.planset.details import drawers
from model.planset.details import pages as details
from model.planset.details.alike import Shot, shots
from model.planset.details.kinds import BRACKETS, brackets, joined
from model.planset.details.picture import picture
from model.planset.details.shots import shown
from model.planset.setting import Setting
from model.planset.sheet import room_on
from tests.properties.designs import random_design

DEMOS = sorted((Path(__file__).parents[3] / "resources/demos").glob("*.bedwright"))
RANDOM = 20
CELL = Box(17.0, 100.0, 101.0, 211.0)  # half of an A4 page's room across and up
NEAR = 0.03  # mm: a size is that of the cut, not of one like it
PRINTED = 0.2  # mm: 1/128 in, the finest step that rows of sizes are told by

# Joints that show in the picture of another one, or are none.
SHOWN_WITH = {"carried"}


class Shown:
    """The pages of joints and of drawers of one bed, by their keys, without the frame around."""

    def __init__(self, bed: Bed) -> None:
        self.setting = Setting(bed=bed)

    @cached_property
    def pages(self) -> dict[str, tuple[Item, ...]]:
        room = room_on(self.setting.paper)
        every = (*details.sheets(self.setting), *drawers.sheets(self.setting))
        return {sheet.key: sheet.draw(room).items for sheet in every}

    def of(self, chapter: str) -> Iterator[tuple[str, tuple[Item, ...]]]:
        """The pages of joints (`details`) or of `drawers`."""
        return ((key, items) for key, items in self.pages.items() if key.startswith(chapter))


@pytest.fixture(scope="module", params=DEMOS, ids=lambda path: path.stem)
def demo(request: pytest.FixtureRequest) -> Shown:
    return Shown(solve(read(request.param)))


@pytest.fixture(scope="module")
def beds() -> tuple[Bed, ...]:
    """Random beds, some of them with sizes in mm and inches."""
    found: list[Bed] = []
    seed = 61_000
    while len(found) < RANDOM:
        seed += 1
        design = random_design(seed)
        if seed % 4 == 0:
            design = design.with_choices({"sizes_in": "mm and inches"})
        try:
            found.append(solve(design))
        except CannotBuild:
            continue
    return tuple(found)


# ---------------------------------------------------------------- all joints are there


def test_every_joint_of_wood_has_its_picture(demo: Shown) -> None:
    drawn = {frozenset(pair) for pair in printed_pairs(demo)}
    ones = {mark for pair in drawn for mark in pair}

    for joint, pair in joints(demo.setting.bed):
        if joint in ("brackets or screws", "bed-rail connector"):
            assert pair & ones, f"{joint}: {set(pair)}"
        else:
            assert pair in drawn, f"{joint}: {set(pair)}"


def test_no_joint_of_random_beds_is_left_out(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        drawn = {frozenset(pair) for shot in shots(Setting(bed=bed)) for pair in shot.pairs}
        ones = {mark for pair in drawn for mark in pair}
        for joint, pair in joints(bed):
            is_near = joint in ("brackets or screws", "bed-rail connector")
            assert pair & ones if is_near else pair in drawn, f"{bed.design.name}, {joint}: {pair}"


def joints(bed: Bed) -> Iterator[tuple[str, frozenset[str]]]:
    """Which marks are joined and how, from the proof that all pieces are held."""
    mark_of = {piece: mark.mark for mark in bed.marks for piece in mark.pieces}
    held = bed.proof.holding
    for one, other, k in zip(
        held.one.tolist(), held.other.tolist(), held.hold.tolist(), strict=True
    ):
        if one in mark_of and other in mark_of and held.holds[k].joint not in SHOWN_WITH:
            yield held.holds[k].joint, frozenset((mark_of[one], mark_of[other]))


def printed_pairs(book: Shown) -> Iterator[tuple[str, str]]:
    """The marks below each title: `F3, F4 to F1, F2; H3 to H1 · cut level, 1 : 2`."""
    for _, items in book.of("details"):
        lines = [item.words for item in items if isinstance(item, Text) and item.height < 1.9]
        for words in re.findall(r"([^·]*?) · cut", " ".join(lines)):
            for group in words.split(";"):
                ones, others = group.split(" to ")
                yield from ((a, b) for a in marks_in(ones) for b in marks_in(others))


def marks_in(words: str) -> list[str]:
    return re.findall(r"\b[FHSDUBR]\d+\b", words)


# ---------------------------------------------------------------- the sizes are those of the cuts


def sizes(setting: Setting, shot: Shot) -> list[Measure]:
    items, _ = picture(setting, shot, CELL)
    return [item for item in items if isinstance(item, Measure)]


def assert_told(found: Sequence[Measure], mm: float, what: str) -> None:
    """A size stands in the picture; what is printed of it is that size."""
    near = [each for each in found if abs(each.size - mm) < NEAR]
    assert near, f"{what}: {mm} is not among {[round(each.size, 2) for each in found]}"
    assert any(abs(printed(each.words) - mm) < PRINTED for each in near), what


def printed(words: str) -> float:
    """What a dimension says, mm: `27 3/8"`, `~695.4`."""
    first = words.split(" [")[0].removeprefix("~")
    value = float(sum(Fraction(part) for part in first.removesuffix('"').split()))
    return value * 25.4 if first.endswith('"') else value


def deep(cut: Cut) -> float:
    """How deep a cut goes, from the face it is made from."""
    return cut.high[cut.face.axis] - cut.low[cut.face.axis]


def alone(part: Part, kind: str) -> list[Cut]:
    return [cut for cut in part.cuts if cut.kind == kind]


def of_joint(setting: Setting, joint: str) -> Iterator[tuple[Shot, Part, Part]]:
    """Pictures along the run of a joint, with both parts in the axes in which they are cut."""
    pieces = setting.bed.pieces
    for shot in shots(setting):
        if shot.kind.joint == joint and shot.axis == shot.kind.run:
            yield shot, pieces.form(shot.kind.one), pieces.form(shot.kind.other)


def test_demos_have_the_joints_that_are_measured_here() -> None:
    """Otherwise the tests below would hold of nothing."""
    found = {
        shot.kind.joint for path in DEMOS for shot in shots(Setting(bed=solve(read(path))))
    }  # fmt: skip

    assert {"mortise and tenon", "groove", "dowel", "hooked in", "runs"} <= found


def test_tenons_and_mortises_are_told_as_they_are_cut(demo: Shown) -> None:
    setting = demo.setting
    for shot, member, mate in of_joint(setting, "mortise and tenon"):
        found = sizes(setting, shot)
        cheeks = alone(member, "tenon cheek")
        back, face = (
            next(cut for cut in cheeks if cut.face == side) for side in ("back", "face")
        )  # fmt: skip

        assert_told(found, back.high[0] - back.low[0], "tenon length")
        assert_told(found, face.low[2] - back.high[2], "tenon thickness")
        assert_told(found, back.high[2], "shoulder behind a tenon")
        depths = {round(deep(cut), 6) for cut in alone(mate, "mortise")}
        assert len(depths) == 1  # all mortises of a mate are bored to one stop
        assert_told(found, depths.pop(), "mortise depth")


def test_a_tenon_across_is_told_with_its_shoulders(demo: Shown) -> None:
    setting = demo.setting
    for shot in shots(setting):
        if shot.kind.joint != "mortise and tenon" or shot.axis != shot.kind.across:
            continue
        found = sizes(setting, shot)
        member = setting.bed.pieces.form(shot.kind.one)
        cuts = alone(member, "tenon shoulder")
        lower = max((cut.high[1] for cut in cuts if cut.low[1] == 0.0), default=0.0)
        upper = min((cut.low[1] for cut in cuts if cut.low[1] > 0.0), default=member.size[1])

        assert_told(found, upper - lower, "tenon width")


def test_grooves_are_told_with_the_room_in_them(demo: Shown) -> None:
    setting = demo.setting
    for shot, panel, mate in of_joint(setting, "groove"):
        found = sizes(setting, shot)
        cuts = alone(mate, "groove")
        rooms = {hold.within for hold in panel.held if hold.joint == "groove" and hold.within}

        assert any(is_told(found, deep(cut)) for cut in cuts), "groove depth"
        assert any(is_told(found, width) for cut in cuts for width in widths(cut)), "groove width"
        assert not rooms or any(is_told(found, room) for room in rooms), f"room {rooms}"


def widths(cut: Cut) -> list[float]:
    """Both sizes of a cut square to its depth."""
    return [cut.high[k] - cut.low[k] for k in range(3) if k != cut.face.axis]


def is_told(found: Sequence[Measure], mm: float) -> bool:
    return any(abs(each.size - mm) < NEAR for each in found)


def test_dowels_are_told_by_their_axes_and_depths(demo: Shown) -> None:
    setting = demo.setting
    for shot in shots(setting):
        if shot.kind.joint != "dowel" or shot.axis != shot.kind.across:
            continue
        member = setting.bed.pieces.form(shot.kind.one)
        own = [hole for hole in member.holes if hole.kind == "dowel hole"]
        found = sizes(setting, shot)

        assert_told(found, own[0].depth, "depth of a dowel hole")
        offsets = sorted({round(hole.at[1], 6) for hole in own})
        for one, other in pairwise((0.0, *offsets, member.size[1])):
            assert_told(found, other - one, "dowels across a member")


def test_plates_are_told_by_recess_and_pocket(demo: Shown) -> None:
    setting = demo.setting
    for shot, holder, post in of_joint(setting, "hooked in"):
        found = sizes(setting, shot)
        recess, pocket = alone(post, "plate recess")[0], alone(post, "hook pocket")[0]

        assert_told(found, deep(recess), "recess in a post")
        assert_told(found, deep(pocket) - deep(recess), "pocket below a recess")
        assert_told(found, min(widths(recess)), "width of a recess")
        assert_told(found, deep(alone(holder, "plate recess")[0]), "recess in a stile")


def test_the_room_of_a_slide_is_told(demo: Shown) -> None:
    setting = demo.setting
    low, high = setting.bed.pieces.bounds
    for shot, _, _ in of_joint(setting, "runs"):
        one, other, axis = shot.kind.one, shot.kind.other, shot.kind.along
        room = max(low[one, axis] - high[other, axis], low[other, axis] - high[one, axis])

        assert_told(sizes(setting, shot), room, "between box and bearer")


# ---------------------------------------------------------------- drawers


def test_a_drawer_is_told_with_box_front_and_pull(demo: Shown) -> None:
    bed = demo.setting.bed
    told = [
        item.size for _, items in demo.of("drawers") for item in items if isinstance(item, Measure)
    ]
    wanted = {}
    for mark in bed.marks:
        if mark.name in ("front", "box side"):
            wanted |= {f"{mark.mark} length": mark.length, f"{mark.mark} width": mark.width}
        if mark.name == "box side":
            wanted[f"{mark.mark} groove"] = alone(mark.part, "groove")[0].low[1]
        ends = [hole.at for hole in mark.part.holes if hole.kind == "pull hole"]
        if len(ends) > 1:
            wanted[f"{mark.mark} pull"] = float(np.linalg.norm(np.subtract(*ends[:2])))

    for what, mm in wanted.items():
        assert any(abs(each - mm) < NEAR for each in told), f"{what}: {mm}"
    assert bool(told) == (len(bed.pieces.groups) > 1)


def test_twelve_drawers_and_none() -> None:
    many = Design(choices={"left.drawers": 6, "right.drawers": 6, "mattress_length": 2032.0})
    none = Design(choices={"left.drawers": 0, "right.drawers": 0})

    for design, count in ((many, 12), (none, 0)):
        book = Shown(solve(design))
        named = " ".join(
            item.words for _, items in book.of("drawers") for item in items
            if isinstance(item, Text)
        )  # fmt: skip
        assert len(re.findall(r"(?:left|right) \d", named)) == count


# ---------------------------------------------------------------- legible


def test_no_words_overlap_or_leave_the_page(demo: Shown) -> None:
    assert_legible(demo)


@pytest.mark.parametrize("at", range(RANDOM))
def test_random_beds_are_legible(
    beds: tuple[Bed, ...], at: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Where marks lead to is no matter here, and takes longer to know than to draw the joints.
    for module in ("drawers", "picture"):
        monkeypatch.setattr(f"model.planset.details.{module}.key_of", lambda setting, mark: mark)

    assert_legible(Shown(beds[at]))


def assert_legible(book: Shown) -> None:
    paper = book.setting.paper
    for key, items in book.pages.items():
        texts = [item for item in inked(items) if isinstance(item, Text)]
        rooms = [(capitals(text), text.words) for text in texts]
        assert min(text.height for text in texts) >= 1.75, key
        for room, words in rooms:
            assert room.x0 >= 10 and room.x1 <= paper.width - 10, f"{key}: {words}"
            # Between the title above and the foot below.
            assert room.y0 >= 20 and room.y1 <= paper.height - 25, f"{key}: {words}"
        for (one, said), (other, also) in combinations(rooms, 2):
            assert not touches(one, other), f"{key}: {said!r} on {also!r}"


def capitals(text: Text) -> Box:
    """The room of words without the tails of letters and the air around them."""
    box, spare = text_box(text), 0.2 * text.height
    if text.turned:
        return Box(box.x0 + spare, box.y0, box.x1 - spare, box.y1)
    return Box(box.x0, box.y0 + spare, box.x1, box.y1 - spare)


def test_marks_lead_to_the_pages_of_their_parts(demo: Shown) -> None:
    setting = demo.setting
    keys = {sheet.key for sheet in part_pages.sheets(setting)}
    room = room_on(setting.paper)
    every = (*details.sheets(setting), *drawers.sheets(setting))
    found = [link for sheet in every for link in sheet.draw(room).links]

    assert len(found) > len(every)
    assert {link.to for link in found} <= keys


def test_a_bracket_is_drawn_with_the_piece_that_its_leaf_is_screwed_to(demo: Shown) -> None:
    """Not only with the one that the bearer ends on: both leaves are seen, and all their screws."""
    all_of = joined(demo.setting)
    for shot in shots(demo.setting):
        own = brackets(all_of, shot.kind.one) if shot.kind.joint == BRACKETS else set()
        if own:
            assert own & all_of.partners(shot.kind.other)
            seen = shown(demo.setting, shot)
            screwed = {seen.pieces[row] for row in seen.both} | {bar.piece for bar in seen.bars}
            assert {shot.kind.one, shot.kind.other} <= screwed


def test_a_bearer_goes_with_what_its_brackets_are_screwed_to(demo: Shown) -> None:
    bed = demo.setting.bed
    all_of = joined(demo.setting)
    for mark in bed.marks:
        own = {other for piece in mark.pieces for each in brackets(all_of, piece)
               for other in all_of.partners(each) if all_of.is_wood(other)}  # fmt: skip
        named = {all_of.mark_of[other] for other in own} - {mark.mark}
        assert named <= set(partners(bed, mark))
