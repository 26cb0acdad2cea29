"""The bed cut open: across through a drawer, along its middle, and level through the drawers."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import NamedTuple

import numpy as np

from model.bed import Bed
from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side
from model.drawings.moved import together
from model.drawings.scales import scales
from model.drawings.views.gaze import FRONT, PLAN, RIGHT, Gaze
from model.drawings.views.scene import bed_scene
from model.drawings.views.section import plane_across
from model.drawings.views.view import View, seen
from model.part import Part, Point
from model.planset.elevations import told_by
from model.planset.kept import kept
from model.planset.marked_views import marks_of
from model.planset.plate import LARGEST, Chain, Figure, figures_on
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.planset.standing import boxes_of, chain_along, named, outlines, whole
from model.units import Mm, Share

Chains = Callable[[Bed, View], Iterator[Chain]]
KEY = "sections"
AROUND: tuple[Mm, Mm] = (
    60.0,
    42.0,
)  # on paper, of dimensions and a caption: beside, above and below
MISS: Mm = 5.0  # from a cut to a face that runs along it
LENGTHWISE: Mm = 60.0  # what is thinner across would be cut along its grain


class Look(NamedTuple):
    """One section: where the eye is, a point of the plane that cuts, and what is measured; `way`
    tells it in the title of a page that it shares.
    """

    way: str
    title: str
    gaze: Gaze
    through: Point
    chains: Chains


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The sections that this bed has something to show in, as many on a page as have room."""
    return tuple(
        Sheet(KEY if not at else f"{KEY}/{at + 1}", _title(looks),
              partial(_draw, setting, looks), "" if not at else KEY, chapter_title="Sections")
        for at, looks in enumerate(map(tuple, _paged(setting)))
    )  # fmt: skip


def _title(looks: Sequence[Look]) -> str:
    if len(looks) == 1:
        return looks[0].title
    return f"Sections {' and '.join(look.way for look in looks)}"


def _paged(setting: Setting) -> list[list[Look]]:
    pages: list[list[Look]] = []
    for look in _looks(setting.bed):
        if pages and _share_a_page(setting, [*pages[-1], look]):
            pages[-1].append(look)
        else:
            pages.append([look])
    return pages


def _looks(bed: Bed) -> Iterator[Look]:
    place = "through a drawer" if _rows(bed) else "at the middle"
    middle = (0.0, _drawer_middle(bed), 0.0)
    yield Look("across", f"Section across, {place}", FRONT, middle, _across)
    beside = _beside_the_middle(bed)
    title = "Section along the middle" if not beside else "Section along, beside the middle"
    yield Look("along", title, RIGHT, (beside, 0.0, 0.0), _along)
    if _rows(bed):
        level = (bed["opening_bottom"] + bed["opening_top"]) / 2
        yield Look("level", "Section at the height of the drawers", PLAN, (0.0, 0.0, level), _level)


def _share_a_page(setting: Setting, looks: Sequence[Look]) -> bool:
    """Whether sections have room below each other at the scale that each has alone; fractions and
    sizes in two units, which are long, take a page for each.
    """
    if setting.tells_both or setting.unit == "inch":
        return False
    room = room_on(setting.paper)
    sizes = [_size(setting.bed, look.gaze) for look in looks]
    largest = [_largest(setting, room, [size]) for size in sizes]
    return _largest(setting, room, sizes) == min(largest) == max(largest)


def _largest(setting: Setting, room: Box, sizes: Sequence[tuple[Mm, Mm]]) -> Share:
    """The largest scale at which views below each other have room with their dimensions."""
    for scale in scales(setting.unit, LARGEST):
        high = sum(up * scale + AROUND[1] for _, up in sizes)
        wide = max(right * scale + AROUND[0] for right, _ in sizes)
        if wide <= room.x1 - room.x0 and high <= room.y1 - room.y0:
            return scale
    return 0.0


def _size(bed: Bed, gaze: Gaze) -> tuple[Mm, Mm]:
    """Of a whole view: to the right, and up."""
    low, high = (gaze.flat(bound) for bound in bed.pieces.bounds)
    ends = np.concatenate([low, high])
    right, up = (ends.max(axis=0) - ends.min(axis=0)).tolist()
    return right, up


@kept  # pages and single drawings show the same
def _draw(setting: Setting, looks: tuple[Look, ...], room: Box) -> Content:
    bed = setting.bed
    figures = []
    for look in looks:
        cut = plane_across(look.gaze, look.through)
        scene = bed_scene(bed, bought=True)
        view = seen(scene, look.gaze, cut=cut, hidden=False)
        marks = marks_of(bed, view, scene.pieces.tolist(), look.through)
        caption = look.title if len(looks) > 1 else ""
        figures.append(Figure(caption, view, tuple(look.chains(bed, view)), marks))
    return figures_on(room, figures, told_by(setting))


# ---------------------------------------------------------------- where it is cut


def _rows(bed: Bed) -> bool:
    """Whether there is a drawer."""
    return len(bed.pieces.groups) > 1


def _drawer_middle(bed: Bed) -> Mm:
    """The middle of the drawer nearest to the foot, along the bed; that of a bed without any."""
    drawers = drawer_boxes(bed, FRONT_TO_HEAD)
    if not drawers:
        return float(bed["bed_length"]) / 2 + 1.0
    first = min(drawers.values(), key=lambda box: box.x0)
    # A little off the middle: runners, pulls and mid muntins stand there.
    return first.x0 + 0.45 * (first.x1 - first.x0)


def _beside_the_middle(bed: Bed) -> Mm:
    """Where the cut runs past what stands on the centre line, and through no piece lengthwise."""
    low, high = bed.pieces.bounds
    spans = list(zip(low[:, 0].tolist(), high[:, 0].tolist(), strict=True))
    x = 0.0
    while any(a < x + MISS and x - MISS < b and b - a < LENGTHWISE for a, b in spans):
        x += MISS
    return x


FRONT_TO_HEAD = Gaze(right=(0.0, 1.0, 0.0), up=(0.0, 0.0, 1.0))


def drawer_boxes(bed: Bed, gaze: Gaze) -> dict[str, Box]:
    """The outline of each drawer's box (without its front), by the drawer's name."""
    return outlines(bed, gaze, lambda part: part.assembly == "drawers" and not part.hardware)


# ---------------------------------------------------------------- which sizes


def _across(bed: Bed, view: View) -> Iterator[Chain]:
    boxes = _cut_drawers(bed, view)
    posts = boxes_of(bed, view.gaze, lambda part: part.name == "post")
    rails = boxes_of(bed, view.gaze, _names("top rail", "bottom rail", "side rail"))
    frame = together(posts)
    yield from chain_along(rails, "below", ends=(frame.x0, frame.x1))
    if boxes:
        yield from chain_along(boxes, "below", ends=(frame.x0, frame.x1))
        yield from chain_along([_leftmost(boxes)], "left", ends=(0.0, bed["rail_top"]))
    yield whole(frame, "below")
    left = [box for box in rails if box.x1 < 0] or rails
    yield from chain_along(left, "left", ends=(0.0,))
    yield from _deck_heights(bed, view)


def _along(bed: Bed, view: View) -> Iterator[Chain]:
    posts = boxes_of(bed, view.gaze, lambda part: part.name == "post")
    frame = together(posts)
    yield from chain_along(posts, "below")
    lies = bed["mattress_foot_y"], bed["mattress_foot_y"] + bed["mattress_along"]
    yield Chain("above", tuple((at, frame.y1) for at in lies), words=())
    yield whole(frame, "below")
    yield from _deck_heights(bed, view)
    own = boxes_of(bed, view.gaze, _rails_of("footboard"))
    yield from chain_along(own, "left", ends=(0.0,))


def _level(bed: Bed, view: View) -> Iterator[Chain]:
    stiles = boxes_of(bed, view.gaze, _names("end stile", "mid stile", "post"))
    frame = together(stiles)
    boxes = list(drawer_boxes(bed, view.gaze).values())
    for side in ("left", "right"):
        own = [box for box in boxes if (box.x0 + box.x1 < 0) == (side == "left")]
        if own:
            yield from chain_along(own, _side(side), ends=(frame.y0, frame.y1))
    yield from chain_along([box for box in stiles if box.x1 < 0], "left")
    yield whole(frame, "left")
    nearest = [box for box in boxes if box.y0 == min(each.y0 for each in boxes)]
    yield from chain_along(nearest, "below", ends=(frame.x0, frame.x1))
    yield whole(frame, "below")


def _deck_heights(bed: Bed, view: View) -> Iterator[Chain]:
    """Cleat, slats and mattress above each other."""
    slats = boxes_of(bed, view.gaze, named("deck", "slat", "deck panel"))
    under = boxes_of(bed, view.gaze, _names("cleat", "slat", "deck panel"))
    lies = bed["deck_top"] + bed["mattress_high"]
    x = view.box.x1
    places = {0.0, bed["deck_top"], bed["rail_top"]}
    places |= {min(box.y0 for box in under)} if under else set()
    places |= {min(box.y0 for box in slats)} if slats else set()
    yield Chain("right", tuple((x, at) for at in _apart(sorted(places))))
    yield Chain("right", ((x, 0.0), (x, bed["deck_top"]), (x, lies)), level=1)


def _apart(places: list[Mm]) -> list[Mm]:
    return [at for n, at in enumerate(places) if not n or at - places[n - 1] > 1e-3]


def _cut_drawers(bed: Bed, view: View) -> list[Box]:
    """Outlines of the drawers that are cut open."""
    middle = _drawer_middle(bed)
    along = drawer_boxes(bed, FRONT_TO_HEAD)
    across = drawer_boxes(bed, view.gaze)
    return [across[name] for name, box in along.items() if box.x0 < middle < box.x1]


def _leftmost(boxes: list[Box]) -> Box:
    return min(boxes, key=lambda box: box.x0)


def _names(*names: str) -> Callable[[Part], bool]:
    return lambda part: not part.hardware and part.name in names


def _rails_of(assembly: str) -> Callable[[Part], bool]:
    return lambda part: (
        part.assembly == assembly and not part.hardware and part.name.endswith(("rail", "cap"))
    )


def _side(name: str) -> Side:
    return "left" if name == "left" else "right"
