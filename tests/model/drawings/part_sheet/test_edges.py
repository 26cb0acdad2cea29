"""Edges of a part, seen and hidden, and sections through it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from model.bed import solve
from model.designs import read
from model.drawings.part_sheet.edges import cells_of, edges, lengthwise, section, square_holes
from model.drawings.part_sheet.faces import LOOKS, in_order
from model.drawings.views.gaze import Gaze
from model.drawings.views.hiding import hidden
from model.joints.groove import middle_groove
from model.joints.rabbet import rabbet
from model.part import Cut, Face, Hole
from model.parts.wood import wood_boxes
from model.solids.mesh import shapes
from tests.model.drawings.part_sheet.samples import part

DEMOS = sorted((Path(__file__).resolve().parents[4] / "resources" / "demos").glob("*.bedwright"))
SIZE = (100.0, 40.0, 20.0)


def test_a_plain_part_is_its_outline() -> None:
    found = edges(cells_of(part(*SIZE)), LOOKS[Face.FACE], SIZE)

    assert set(found.seen) == {
        (0, 0, 100, 0), (0, 40, 100, 40), (0, 0, 0, 40), (100, 0, 100, 40),
    }  # fmt: skip
    assert found.hidden == ()


def test_a_groove_in_the_far_edge_is_hidden_from_the_face() -> None:
    board = part(*SIZE, cuts=(middle_groove(SIZE, Face.UPPER, width=6, depth=10),))

    found = edges(cells_of(board), LOOKS[Face.FACE], SIZE)

    assert found.hidden == ((0, 30, 100, 30),)


def test_seen_from_behind_the_lower_edge_is_on_top() -> None:
    board = part(*SIZE, cuts=(rabbet(SIZE, Face.BACK, Face.LOWER, width=5, depth=8),))

    found = edges(cells_of(board), LOOKS[Face.BACK], SIZE)

    assert (0, 35, 100, 35) in found.seen


def test_the_near_end_is_at_the_left_from_every_side() -> None:
    board = part(*SIZE, cuts=(Cut("notch", Face.NEAR, (0, 0, 0), (12, 40, 10)),))

    for look in LOOKS.values():
        found = edges(cells_of(board), look, SIZE)
        walls = [line for line in (*found.seen, *found.hidden) if line[0] == line[2] == 12]
        assert walls or look.face is Face.FACE, look.face


def test_a_section_shows_cut_wood_and_what_lies_beyond() -> None:
    board = part(*SIZE, cuts=(Cut("notch", Face.FACE, (0, 0, 12), (30, 40, 20)),))

    found = section(cells_of(board), 15)

    assert [tuple(box) for box in found.wood] == [(0, 0, 12, 40)]
    assert (20, 0, 20, 40) in found.beyond


def test_a_section_along_shows_thickness_upwards() -> None:
    board = part(*SIZE, cuts=(rabbet(SIZE, Face.BACK, Face.NEAR, width=12, depth=6),))

    found = lengthwise(cells_of(board), 20)

    assert {tuple(box) for box in found.wood} == {(12, 0, 100, 6), (0, 6, 100, 20)}


def test_a_hole_leaves_no_wood_in_a_section_through_it() -> None:
    bore = Hole("bolt hole", Face.FACE, (50, 10, 20), (0.0, 0.0, -1.0), 8, 15)
    board = part(*SIZE, holes=(bore,))

    found = section(cells_of(board, square_holes(board)), 50)

    area = sum((b.x1 - b.x0) * (b.y1 - b.y0) for b in found.wood)
    assert area == pytest.approx(40 * 20 - 8 * 15)


def test_third_angle_puts_the_upper_edge_above_and_first_angle_below() -> None:
    faces = {Face.FACE, Face.UPPER}

    assert in_order(faces, Face.FACE, is_third_angle=True) == (Face.UPPER, Face.FACE)
    assert in_order(faces, Face.FACE, is_third_angle=False) == (Face.FACE, Face.UPPER)


GAZES = {
    Face.FACE: Gaze(right=(1.0, 0.0, 0.0), up=(0.0, 1.0, 0.0)),
    Face.BACK: Gaze(right=(1.0, 0.0, 0.0), up=(0.0, -1.0, 0.0)),
    Face.UPPER: Gaze(right=(1.0, 0.0, 0.0), up=(0.0, 0.0, -1.0)),
    Face.LOWER: Gaze(right=(1.0, 0.0, 0.0), up=(0.0, 0.0, 1.0)),
}


@pytest.mark.parametrize("face", list(GAZES))
def test_what_is_seen_agrees_with_the_views_of_whole_beds(face: Face) -> None:
    """Those clip edges at convex bodies and know nothing of cells."""
    forms = [mark.part for demo in DEMOS[:1] for mark in solve(read(demo)).marks]
    for form in (f for f in forms if not f.taper):
        seen = edges(cells_of(form), LOOKS[face], form.size).seen

        assert _covered(seen) == pytest.approx(_seen_length(form, face), abs=0.1), form.name


def _seen_length(form: object, face: Face) -> float:
    """How much is seen by the other way; lines that lie on each other are counted once."""
    boxes = wood_boxes(form.size, form.cuts, "sample")  # type: ignore[attr-defined]
    corners = shapes([form])[0].edges  # type: ignore[list-item]
    gaze = GAZES[face]
    flat = gaze.flat(corners)
    across = np.linalg.norm(flat[:, 1] - flat[:, 0], axis=1) > 1e-6
    corners, flat = corners[across], flat[across]
    lo, hi = boxes.min(axis=1), boxes.max(axis=1)
    away = hidden(corners, gaze, lo, hi, np.zeros((0, 3, 3)))
    lines = []
    for k, (a, b) in enumerate(flat):
        spans = sorted(
            (max(s, 0.0), min(e, 1.0))
            for n, s, e in zip(away.line, away.begin, away.end, strict=True)
            if n == k
        )
        place = 0.0
        for start, end in [*spans, (1.0, 1.0)]:
            if start > place + 1e-9:
                p, q = a + place * (b - a), a + start * (b - a)
                lines.append((*np.minimum(p, q).tolist(), *np.maximum(p, q).tolist()))
            place = max(place, end)
    return _covered(lines)


def _covered(lines: object) -> float:
    """Length of lines, level or upright, where several lie on each other counted once."""
    rows: dict[tuple[bool, float], list[tuple[float, float]]] = {}
    for x0, y0, x1, y1 in lines:  # type: ignore[attr-defined]
        level = abs(y1 - y0) < 1e-6
        key = (level, round(y0 if level else x0, 3))
        rows.setdefault(key, []).append((x0, x1) if level else (y0, y1))
    total = 0.0
    for spans in rows.values():
        reach = -1e9
        for low, high in sorted(spans):
            total += max(0.0, high - max(low, reach))
            reach = max(reach, high)
    return total
