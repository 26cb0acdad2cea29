"""Views with dimensions on a page: within it, clear of each other, as large as they can be."""

from __future__ import annotations

from itertools import combinations

import pytest

from model.cutting.record import Box
from model.drawings.dimensioning.told import Told
from model.drawings.letters import text_box
from model.drawings.measures import inked
from model.drawings.moved import around
from model.drawings.paper import Measure, Text, touches
from model.drawings.scales import scale_of, scales
from model.drawings.views.gaze import FRONT, PLAN, RIGHT
from model.drawings.views.scene import bed_scene
from model.drawings.views.view import View, seen
from model.planset.elevations import told_by
from model.planset.plate import LARGEST, SIDES, Chain, Figure, figures_on, plate_at
from model.planset.setting import Setting
from model.planset.sheet import room_on
from model.planset.standing import whole
from model.units import INCH
from tests.model.planset.sets import bed_of

BED = "no drawers"
ROOM = Box(20.0, 30.0, 190.0, 260.0)
AIR = 0.6  # mm above the letters of a caption
LONG = Told("mm", has_both=True)


def views() -> list[View]:
    scene = bed_scene(bed_of(BED))
    return [seen(scene, gaze, hidden=False) for gaze in (FRONT, RIGHT, PLAN)]


def figure(view: View) -> Figure:
    """Many short sizes on all four sides, so that words have little room."""
    box, chains = view.box, []
    for side in SIDES:
        axis = 0 if side in ("below", "above") else 1
        low, high = box[axis], box[axis + 2]
        places = sorted({low, low + 9.0, low + 40.0, low + 61.0, (low + high) / 2, high - 12.0,
                         high})  # fmt: skip
        edge = box[1 - axis] if side in ("below", "left") else box[3 - axis]
        points = tuple((at, edge) if axis == 0 else (edge, at) for at in places)
        chains += [Chain(side, points), whole(box, side)]
    return Figure("View", view, tuple(chains))


@pytest.mark.parametrize("at", range(3))
@pytest.mark.parametrize("told", [Told("mm"), Told("inch")], ids=["mm", "inch"])
def test_sizes_lie_on_no_other_and_within_the_page(at: int, told: Told) -> None:
    content = figures_on(ROOM, [figure(views()[at])], told)
    box = around(content.items)
    words = [item for item in inked(content.items) if isinstance(item, Text)]

    assert box is not None
    assert box.x0 >= ROOM.x0 and box.x1 <= ROOM.x1 and box.y0 >= ROOM.y0 and box.y1 <= ROOM.y1 + AIR
    for one, other in combinations(words, 2):
        assert not touches(text_box(one), text_box(other)), (one.words, other.words)


def test_figures_below_each_other_share_no_room() -> None:
    ones = [figure(view) for view in views()[:2]]
    whole_page = figures_on(ROOM, ones, Told("mm"))
    captions = [item for item in whole_page.items if isinstance(item, Text)]
    first, second = sorted((text.at[1] for text in captions), reverse=True)

    lower = [item for item in whole_page.items if isinstance(item, Measure) and item.line < second]
    assert first > second and lower
    boxes = [around([item]) for item in whole_page.items]
    assert all(box is None or not (box.y0 < second - 2 and box.y1 > second + 2) for box in boxes)


@pytest.mark.parametrize("count", [1, 2, 3])
def test_the_scale_is_the_largest_that_fits(count: int) -> None:
    """Not one step larger would have room: by the sizes of the plates alone."""
    told = Told("mm")
    ones = [figure(view) for view in views()[:count]]
    scale = scale_of(figures_on(ROOM, ones, told).scale)
    larger = [each for each in scales("mm", LARGEST) if each > scale]

    assert larger
    plates = [plate_at(each, told, larger[-1]) for each in ones]
    wide, high = max(each.width for each in plates), sum(each.height for each in plates)
    assert wide > ROOM.x1 - ROOM.x0 or high + 6.0 * (count - 1) > ROOM.y1 - ROOM.y0


@pytest.mark.parametrize("told", [Told("mm"), Told("inch")], ids=["mm", "inch"])
def test_a_dimension_is_as_long_on_paper_as_it_says(told: Told) -> None:
    content = figures_on(ROOM, [figure(views()[0])], told)
    scale = scale_of(content.scale)
    measures = [item for item in content.items if isinstance(item, Measure)]

    assert len(measures) == 4 * 7
    for each in measures:
        axis = 1 if each.upright else 0
        assert abs(each.end[axis] - each.start[axis]) == pytest.approx(each.size * scale)
        printed = float(sum(fraction(part) for part in each.words.strip('~"').split()))
        step = 0.05 if told.unit == "mm" else INCH / 128
        assert printed * (1 if told.unit == "mm" else INCH) == pytest.approx(each.size, abs=step)


def fraction(part: str) -> float:
    above, _, below = part.partition("/")
    return float(above) / float(below or 1)


@pytest.mark.parametrize("at", range(3))
def test_what_fits_at_no_scale_lacks_as_little_as_can_be(at: int) -> None:
    """Words in two units take most of the room, and more of it where the view is small."""
    one = figure(views()[at])
    scale = scale_of(figures_on(ROOM, [one], LONG).scale)
    lacks = {}
    for each in scales("mm", LARGEST):
        plate = plate_at(one, LONG, each)
        lacks[each] = max(plate.width - 170.0, plate.height - 230.0)

    assert lacks[scale] == min(lacks.values()) or (lacks[scale] <= 0)


def test_a_set_tells_sizes_as_it_was_asked() -> None:
    setting = Setting(bed=bed_of(BED))

    assert told_by(setting) == LONG
    assert room_on(setting.paper).x1 < 210.0
