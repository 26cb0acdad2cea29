"""Drawers and their fronts: one of each kind from the front, from its side, and cut across."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from model.bed import Bed, travel_of
from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.letters import text_box, words_width
from model.drawings.moved import together
from model.drawings.paper import Item, Text
from model.drawings.views.gaze import BACK, FRONT, LEFT, RIGHT, Gaze
from model.drawings.views.scene import bed_scene
from model.drawings.views.section import plane_across
from model.drawings.views.view import View, seen
from model.part import Point
from model.parts.pieces import Floats
from model.planset.details.kinds import joined
from model.planset.details.works import works
from model.planset.elevations import told_by
from model.planset.letters import BODY, leading, wrapped
from model.planset.page import Link
from model.planset.part_pages import key_of
from model.planset.plate import Chain, Figure, figures_on
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.planset.standing import chain_along, whole
from model.units import Mm, Share

KEY = "drawers"
TITLE = "Drawers and fronts"
VIEWS = FRONT_VIEW, SIDE_VIEW, CUT_VIEW = "Front", "Side", "Cut across"
CUT_AT: Share = 0.45  # of a box from its front: no slide's screw and no muntin stands there
BELOW: Mm = 4.0


@dataclass(frozen=True, kw_only=True)
class Drawer:
    """Drawers that are alike: their names (`left-1`), and the pieces of the first one by what they
    are: of the `box`, of the `front`, bought ones.
    """

    names: tuple[str, ...]
    pieces: tuple[int, ...]
    box: tuple[int, ...]
    front: tuple[int, ...]
    slides: tuple[int, ...]
    out: Point

    @property
    def gaze(self) -> Gaze:
        """From where its front is seen."""
        return max((FRONT, BACK, LEFT, RIGHT), key=lambda each: float(each.toward @ self.out))

    @property
    def side_gaze(self) -> Gaze:
        """From where its side is seen, the front on the left or the right."""
        return FRONT if abs(self.out[0]) > abs(self.out[1]) else RIGHT


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """One for each kind of drawer, two where sizes are told twice; none for a bed without any."""
    shown = ((FRONT_VIEW, SIDE_VIEW), (CUT_VIEW,)) if setting.tells_both else (VIEWS,)
    every = [
        (each, views) for each in drawers(joined(setting))
        for views in (shown if each.box else ((FRONT_VIEW,),))
    ]  # fmt: skip
    return tuple(
        Sheet(KEY if not k else f"{KEY}/{k + 1}", TITLE if not k else f"{TITLE}, continued",
              partial(_draw, setting, *each), "" if not k else KEY, chapter_title=TITLE)
        for k, each in enumerate(every)
    )  # fmt: skip


def drawers(all_of: Joined) -> tuple[Drawer, ...]:
    """The kinds of drawer: of the same marks."""
    held: dict[str, list[int]] = {}
    for piece in range(len(all_of.pieces)):
        if all_of.group(piece):
            held.setdefault(all_of.group(piece), []).append(piece)
    alike: dict[tuple[str, ...], list[str]] = {}
    for name, pieces in held.items():
        marks = sorted(all_of.mark_of.get(each, all_of.hardware[each]) for each in pieces)
        alike.setdefault(tuple(marks), []).append(name)
    return tuple(_drawer(all_of, names, held[names[0]]) for names in alike.values())


def _drawer(all_of: Joined, names: Sequence[str], pieces: Sequence[int]) -> Drawer:
    def of(assembly: str) -> tuple[int, ...]:
        return tuple(
            each for each in pieces
            if all_of.is_wood(each) and all_of.part(each).assembly == assembly
        )  # fmt: skip

    return Drawer(
        names=tuple(names), pieces=tuple(pieces), box=of("drawers"), front=of("fronts"),
        slides=tuple(each for each in pieces if all_of.hardware[each].startswith("SLIDE-")),
        out=travel_of(all_of.bed.dimensions)[names[0]][0],
    )  # fmt: skip


# ---------------------------------------------------------------- the page


def _draw(setting: Setting, drawer: Drawer, views: Sequence[str], room: Box) -> Content:
    items, links, y = _words(setting, drawer, room)
    figures = [_figure(setting, drawer, name) for name in views]
    drawn = figures_on(Box(room.x0, room.y0, room.x1, y - BELOW), figures, told_by(setting))
    return drawn._replace(items=(*items, *drawn.items), links=tuple(links))


def _words(
    setting: Setting, drawer: Drawer, room: Box
) -> tuple[list[Item], list[Link], Mm]:  # fmt: skip
    """Which drawers these are and of which marks, each with a link; and how far down that goes."""
    names = ", ".join(name.replace("-", " ") for name in drawer.names)
    count = f"{len(drawer.names)} alike" if len(drawer.names) > 1 else "One"
    y = room.y1
    items: list[Item] = []
    links: list[Link] = []
    for line in wrapped(f"{count}: {names}.", room.x1 - room.x0, BODY):
        y -= leading(BODY)
        items.append(Text((room.x0, y + leading(BODY) / 2), line, BODY, "left"))
    x = room.x0
    y -= leading(BODY)
    for words, mark in _marks(setting, drawer):
        wide = words_width(words, BODY)
        if x + wide > room.x1:
            x, y = room.x0, y - leading(BODY)
        text = Text((x, y + leading(BODY) / 2), words, BODY, "left")
        items.append(text)
        links.append(Link(text_box(text), key_of(setting, mark)))
        x += wide + 2 * BODY
    return items, links, y


def _marks(setting: Setting, drawer: Drawer) -> Iterator[tuple[str, str]]:
    all_of = joined(setting)
    marks = {all_of.mark_of[each]: each for each in (*drawer.box, *drawer.front)}
    for mark, piece in sorted(marks.items(), key=lambda each: (each[0][0], len(each[0]), each[0])):
        yield f"{mark} {all_of.part(piece).name}", mark


def _figure(setting: Setting, drawer: Drawer, name: str) -> Figure:
    all_of = joined(setting)
    bed, gaze = setting.bed, drawer.gaze
    scene = bed_scene(bed, drawer.pieces)
    if name == FRONT_VIEW:
        of_box = [row for row, piece in enumerate(scene.pieces.tolist()) if _shows(all_of, piece)]
        view = seen(scene, gaze, hidden=of_box)
        return Figure(name, view, tuple(_front(all_of, drawer, view)))
    if name == SIDE_VIEW:
        view = seen(scene, drawer.side_gaze, hidden=False)
        return Figure(name, view, tuple(_side(bed, drawer, view)))
    view = seen(scene, gaze, cut=plane_across(gaze, _middle(bed, drawer)), hidden=False)
    return Figure(name, view, tuple(_across(all_of, drawer, view)))


def _shows(all_of: Joined, piece: int) -> bool:
    """Whether a piece is told behind the front: the front of its box."""
    return all_of.part(piece).name == "box front"


def _middle(bed: Bed, drawer: Drawer) -> Point:
    """A place on the plane that cuts a box across."""
    low, high = (bound[list(drawer.box)] for bound in bed.pieces.bounds)
    start, end = low.min(axis=0), high.max(axis=0)
    out = np.array(drawer.out)
    middle = (start + end) / 2 + out * (0.5 - CUT_AT) * (end - start)
    x, y, z = middle.tolist()
    return (x, y, z)


# ---------------------------------------------------------------- which sizes


def _front(all_of: Joined, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Front and box on each other, and where the pull goes."""
    bed = all_of.bed
    fronts = _outlines(bed, view.gaze, drawer.front)
    boxes = _outlines(bed, view.gaze, drawer.box)
    if not fronts:
        yield from _around(boxes)
        return
    front = together(fronts)
    both = [front, together(boxes)] if boxes else [front]
    sides: tuple[Side, ...] = ("below", "left")
    for side in sides:
        if boxes:
            yield from chain_along(both, side)
        yield whole(front, side)
    holes = [_flat(view.gaze, at) for at in _pull_holes(all_of, drawer)]
    others: tuple[Side, ...] = ("above", "right")
    for side in others:
        axis = axis_of(side)
        if holes:
            spots = [Box(*hole, *hole) for hole in holes]
            yield from chain_along(spots, side, ends=(front[axis], front[axis + 2]))


def _side(bed: Bed, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Length and height of the box, the thickness of the front, where the slide is fixed."""
    gaze = view.gaze
    box = together(_outlines(bed, gaze, drawer.box))
    fronts = _outlines(bed, gaze, drawer.front)
    yield from chain_along([box, together(fronts)] if fronts else [box], "below")
    yield from chain_along([box], "left")
    slides = _outlines(bed, gaze, drawer.slides)
    if slides:
        slide = together(slides)
        yield from chain_along([slide], "right", ends=(box.y0, box.y1))
        yield from chain_along([slide], "above", ends=(box.x0, box.x1))


def _across(all_of: Joined, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Sides and the clear width between them, the height of the bottom's groove."""
    bed, gaze = all_of.bed, view.gaze
    named = {
        name: _outlines(bed, gaze, [p for p in drawer.box if all_of.part(p).name == name])
        for name in ("box side", "box bottom", "box back")
    }
    box = together(_outlines(bed, gaze, drawer.box))
    yield from chain_along(named["box side"], "below")
    yield whole(together(named["box side"] or [box]), "below")
    if named["box bottom"]:
        yield from chain_along(named["box bottom"], "above")
        yield from chain_along(named["box bottom"], "left", ends=(box.y0, box.y1))
    yield whole(box, "left")
    backs = named["box back"]
    if backs and abs(backs[0].y1 - box.y1) + abs(backs[0].y0 - box.y0) > 0.5:
        yield from chain_along(backs, "right", ends=(box.y0, box.y1))


def _around(boxes: Sequence[Box]) -> Iterator[Chain]:
    if boxes:
        yield whole(together(boxes), "below")
        yield whole(together(boxes), "left")


def _outlines(bed: Bed, gaze: Gaze, pieces: Sequence[int]) -> list[Box]:
    """The outline of each piece on a view, mm of wood."""
    found = []
    for piece in pieces:
        (x0, y0), (x1, y1) = (gaze.flat(bound[piece]).tolist() for bound in bed.pieces.bounds)
        found.append(Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)))
    return found


def _pull_holes(all_of: Joined, drawer: Drawer) -> Iterator[Floats]:
    """The middles of the holes for pulls (3,)."""
    for piece in drawer.front:
        every = works(all_of, piece)
        for k, kind in enumerate(every.kinds):
            if kind in ("pull hole", "hand hole"):
                yield (every.low[k] + every.high[k]) / 2


def _flat(gaze: Gaze, at: Floats) -> tuple[Mm, Mm]:
    x, y = gaze.flat(at).tolist()
    return (x, y)
