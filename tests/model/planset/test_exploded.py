"""Pieces taken apart: along their ways, within the page, a mark for each kind."""

from __future__ import annotations

import numpy as np
import pytest

from model.cutting.record import Box
from model.drawings.letters import text_box
from model.drawings.moved import around
from model.drawings.paper import Stroke, Text
from model.planset.exploded import APART, gaze_for, offsets, picture
from model.planset.exploded_pages import sheets
from model.planset.setting import Setting
from model.planset.sheet import room_on
from tests.model.planset.sets import bed_of

ROOM = Box(20.0, 30.0, 140.0, 130.0)
BED = bed_of("loft_single")
WOOD = [n for n in range(len(BED.pieces)) if not BED.pieces.form(n).hardware]


def test_a_piece_is_drawn_back_along_its_way_farther_at_a_later_turn() -> None:
    along = (0.0, 0.0, -1.0)
    shift = offsets(BED, WOOD, {WOOD[0]: (along, 1), WOOD[1]: (along, 3)})
    low, high = BED.pieces.bounds
    size = float(np.linalg.norm(high[WOOD].max(axis=0) - low[WOOD].min(axis=0)))

    assert shift[WOOD[0]].tolist() == pytest.approx([0.0, 0.0, APART * size])
    assert shift[WOOD[1]].tolist() == pytest.approx([0.0, 0.0, 3 * APART * size])
    assert np.count_nonzero(shift.any(axis=1)) == 2


def test_every_new_mark_is_named_once_and_no_old_one() -> None:
    new = {piece for mark in BED.marks[:4] for piece in mark.pieces}
    items = list(picture(BED, WOOD, new, ROOM))
    told = sorted(item.words for item in items if isinstance(item, Text))

    assert told == sorted(mark.mark for mark in BED.marks[:4])


def test_what_is_there_already_is_drawn_finer() -> None:
    new = set(BED.marks[0].pieces)
    pens = {
        item.about: item.pen
        for item in picture(BED, WOOD, new, ROOM)
        if isinstance(item, Stroke) and item.about.startswith("piece/")
    }
    names = {f"piece/{BED.marks[0].mark}-{n}" for n in range(1, len(new) + 1)}

    assert names & set(pens)
    assert all((pen == "fine") == (about not in names) for about, pen in pens.items())


@pytest.mark.parametrize("room", [ROOM, Box(0.0, 0.0, 60.0, 150.0), Box(0.0, 0.0, 150.0, 50.0)])
def test_a_picture_stays_in_its_room(room: Box) -> None:
    box = around(picture(BED, WOOD, WOOD, room))

    assert box is not None
    assert box.x0 >= room.x0 - 0.5 and box.x1 <= room.x1 + 0.5
    assert box.y0 >= room.y0 - 0.5 and box.y1 <= room.y1 + 0.5


def test_pieces_of_one_side_are_seen_from_there() -> None:
    sides = [
        [n for n in WOOD if BED.pieces.form(n).assembly == f"{side} side"]
        for side in ("left", "right")
    ]
    left, right = (gaze_for(BED, side) for side in sides)

    assert left.toward[0] < 0 < right.toward[0]


def test_the_whole_bed_names_every_mark_of_wood() -> None:
    setting = Setting(bed=BED)
    whole, *others = sheets(setting)
    content = whole.draw(room_on(setting.paper))
    texts = [item for item in content.items if isinstance(item, Text)]

    assert sorted(text.words for text in texts) == sorted(mark.mark for mark in BED.marks)
    room = room_on(setting.paper)
    assert all(room.x0 <= text_box(text).x0 and text_box(text).x1 <= room.x1 for text in texts)
    assert others and all(each.chapter == whole.key for each in others)
