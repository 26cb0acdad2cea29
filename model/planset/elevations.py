"""The bed from its sides and from above, with the sizes that are measured from outside."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.dimensioning.told import Told
from model.drawings.moved import together
from model.drawings.scales import scales
from model.drawings.views.gaze import BACK, FRONT, LEFT, PLAN, RIGHT, Gaze
from model.drawings.views.view import View, seen
from model.part import Part
from model.planset.kept import kept
from model.planset.marked_views import marks_of
from model.planset.outside import outside
from model.planset.plate import Chain, Figure, figures_on
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.planset.standing import boxes_of, chain_along, named, outlines, row_of, whole
from model.units import Mm

Chains = Callable[[Setting, View], Iterator[Chain]]
FLOOR: Mm = 0.0  # its height, bed axes: posts or glides stand on it
ASIDE: Mm = 45.0  # about what dimensions at both sides of a view take
BELOW: Mm = 45.0  # about what those below it take, with its caption
SLIMMEST: Mm = 15.0  # what is slimmer on a view is a dowel, a pin or a wedge


class Look(NamedTuple):
    """One look at the bed."""

    key: str
    title: str
    gaze: Gaze
    chains: Chains


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """Both ends, both sides, and the bed from above, as large as pages let them be: two that are
    alike share a page where neither is the smaller for it.
    """
    ends = (Look("ends", "From the foot", FRONT, partial(_end, "footboard")),
            Look("head", "From the head", BACK, partial(_end, "headboard")))  # fmt: skip
    sides = (Look("sides", "From the left", LEFT, partial(_side, "left")),
             Look("right", "From the right", RIGHT, partial(_side, "right")))  # fmt: skip
    pages = [(ends, "Elevations: foot and head"), (sides, "Elevations: left and right")]
    shown = [each for pair in pages for each in _shared(setting, *pair)]
    shown.append(((Look("plan", "", PLAN, _plan),), "Plan"))
    return tuple(
        Sheet(looks[0].key, title, partial(_draw, setting, looks), "ends" if at else "",
              chapter_title="Elevations and plan")
        for at, (looks, title) in enumerate(shown)
    )  # fmt: skip


def _shared(
    setting: Setting, pair: tuple[Look, ...], title: str
) -> Iterator[tuple[tuple[Look, ...], str]]:
    """Two looks on one page, or each on its own, with the page's title."""
    room = room_on(setting.paper)
    low, high = setting.bed.pieces.bounds
    size = high.max(axis=0) - low.min(axis=0)
    wide, tall = abs(size @ pair[0].gaze.right), abs(size @ pair[0].gaze.up)
    scale = next(
        each for each in scales(told_by(setting).unit) if wide * each + ASIDE <= room.x1 - room.x0
    )
    if len(pair) * (tall * scale + BELOW) <= room.y1 - room.y0 and not setting.tells_both:
        yield pair, title
        return
    yield from (((look._replace(title=""),), look.title) for look in pair)


def told_by(setting: Setting) -> Told:
    """How sizes stand on drawings of a set."""
    return Told("inch" if setting.unit == "inch" else "mm", setting.tells_both)


@kept  # pages and single drawings show the same
def _draw(setting: Setting, looks: tuple[Look, ...], room: Box) -> Content:
    figures = []
    scene = outside(setting.bed)
    for look in looks:
        view = seen(scene, look.gaze, hidden=False)
        marks = marks_of(setting.bed, view, scene.pieces.tolist())
        figures.append(Figure(look.title, view, tuple(look.chains(setting, view)), marks))
    return figures_on(room, figures, told_by(setting))


# ---------------------------------------------------------------- which sizes


def _end(assembly: str, setting: Setting, view: View) -> Iterator[Chain]:
    """Posts, stiles and rails of an end."""
    own = boxes_of(setting.bed, view.gaze, _frame_of(assembly))
    upright = [box for box in own if _is_upright(box) and _is_wide(box)]
    level = [box for box in own if not _is_upright(box) and _is_wide(box)]
    yield from chain_along(upright, "below")
    open_slats = boxes_of(setting.bed, view.gaze, named(assembly, "open slat"))
    if open_slats:
        low = max(box.x1 for box in upright if box.x1 <= 0)
        high = min(box.x0 for box in upright if box.x0 >= 0)
        yield from row_of(open_slats, "above", told_by(setting), low, high)
    yield whole(together(own), "below")
    yield from chain_along(level, "left", ends=(FLOOR, view.box.y1 if not level else _top(own)))
    yield whole(_on_floor(own), "left")
    yield from _heights(setting, view)


def _side(side: str, setting: Setting, view: View) -> Iterator[Chain]:
    """Posts and stiles along the side, its fronts, its rails."""
    bed, gaze = setting.bed, view.gaze
    own = boxes_of(bed, gaze, named(f"{side} side"))
    posts = boxes_of(bed, gaze, lambda part: part.name == "post")
    stiles = [box for box in own if _is_upright(box)]
    yield from chain_along([*posts, *stiles], "below")
    yield whole(together([*posts, *own]), "below")
    fronts = _fronts(setting, side, gaze)
    if fronts:
        yield from chain_along(fronts, "below", ends=_outer(posts, "below"))
        yield from chain_along(fronts, "right", ends=(FLOOR,))
    rails = boxes_of(bed, gaze, named(f"{side} side", "top rail", "bottom rail", "side rail"))
    yield from chain_along(rails or own, "left", ends=(FLOOR,))
    yield whole(_on_floor(posts), "left")


def _frame_of(assembly: str) -> Callable[[Part], bool]:
    """Its posts, rails, stiles and cap: what stands between them is not measured from outside."""
    return lambda part: (
        part.assembly == assembly
        and not part.hardware
        and part.name.endswith(("post", "rail", "stile", "cap"))
    )


def _outer(boxes: list[Box], side: Side) -> tuple[Mm, Mm]:
    held, axis = together(boxes), axis_of(side)
    return held[axis], held[axis + 2]


def _fronts(setting: Setting, side: str, gaze: Gaze) -> list[Box]:
    """The outline of each front of a row."""
    found = outlines(
        setting.bed, gaze, lambda part: part.assembly == "fronts" and not part.hardware
    )
    return [box for group, box in found.items() if group.startswith(side)]


def _plan(setting: Setting, view: View) -> Iterator[Chain]:
    """Posts and rails across, slats along, and the well between."""
    bed = setting.bed
    own = boxes_of(bed, view.gaze, lambda part: not part.hardware)
    posts = boxes_of(bed, view.gaze, lambda part: part.name == "post")
    rails = boxes_of(bed, view.gaze, lambda part: part.name in ("top rail", "side rail"))
    slats = boxes_of(bed, view.gaze, named("deck", "slat"))
    yield from chain_along(posts, "below")
    yield from chain_along(rails, "above")
    yield whole(together(own), "below")
    yield from chain_along(posts, "left")
    yield whole(together(own), "left")
    if slats:
        low = bed["mattress_foot_y"] - bed["end_fit_built"]
        high = low + bed["well_length"]
        yield from row_of(slats, "right", told_by(setting), low, high)


def _heights(setting: Setting, view: View) -> Iterator[Chain]:
    """How high one lies, beside an end."""
    bed = setting.bed
    x = view.box.x1
    tops = {FLOOR, bed["rail_top"], bed["deck_top"], bed["deck_top"] + bed["mattress_high"]}
    places = sorted(tops)
    yield Chain("right", tuple((x, at) for at in places))


def _is_upright(box: Box) -> bool:
    return box.y1 - box.y0 > box.x1 - box.x0


def _is_wide(box: Box) -> bool:
    return min(box.x1 - box.x0, box.y1 - box.y0) > SLIMMEST


def _on_floor(boxes: list[Box]) -> Box:
    """The box around some, down to the floor."""
    return together(boxes)._replace(y0=FLOOR)


def _top(boxes: list[Box]) -> Mm:
    return max(box.y1 for box in boxes)
