"""What stands beside the drawing of a mark."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from model.bed import Bed, solve
from model.designs import read
from model.drawings.part_sheet.facts import facts, partners
from model.drawings.part_sheet.on_bed import has_two_faces, on_bed_words
from model.shop.part_sizes import shown_sizes
from tests.model.building.beds import DEMOS, demo
from tests.model.drawings.part_sheet.samples import mark_of, part

DEMO = Path(__file__).resolve().parents[4] / "resources/demos/painted_storage_queen.bedwright"


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(read(DEMO))


def test_sizes_are_those_of_the_parts_list(bed: Bed) -> None:
    for mark in bed.marks:
        told = dict(facts(bed, mark))
        shown = shown_sizes(bed, mark, "inch")
        assert told["Finished size"] == " × ".join(shown[:3])
        if "Rough size" in told:
            assert told["Rough size"] == " × ".join(shown[3:])
        assert told["Quantity"] == str(mark.quantity)


def test_a_glued_up_post_tells_its_blank_and_its_layers(bed: Bed) -> None:
    told = dict(facts(bed, next(mark for mark in bed.marks if mark.name == "post")))

    assert "Blank" in told and told["Layers"] == "2"
    assert told["Handed"].startswith("mirror image of")


def test_sheet_parts_have_no_rough_size(bed: Bed) -> None:
    told = dict(facts(bed, next(mark for mark in bed.marks if mark.name == "box bottom")))

    assert "Rough size" not in told


def test_a_box_side_goes_with_the_front_back_and_bottom_of_its_box(bed: Bed) -> None:
    by_name = {mark.name: mark for mark in bed.marks}

    found = set(partners(bed, by_name["box side"]))

    assert {by_name[name].mark for name in ("box front", "box back", "box bottom")} <= found


def test_a_post_stands_on_its_near_end(bed: Bed) -> None:
    post = next(mark for mark in bed.marks if mark.name == "post")

    assert on_bed_words(post).startswith("near end down")


def test_pieces_that_lie_otherwise_are_told_only_as_far_as_they_agree() -> None:
    turned = np.diag([1.0, -1.0, -1.0, 1.0])
    mark = mark_of(part(100, 20, 10))
    both = np.stack([np.eye(4), turned])

    assert on_bed_words(mark) == "near end to the left, face up and upper edge to the head"
    from dataclasses import replace

    assert on_bed_words(replace(mark, matrices=both)) == "near end to the left"


@pytest.mark.parametrize("name", DEMOS)
def test_the_face_of_a_part_with_two_kinds_of_faces_has_its_way(name: str) -> None:
    solved = demo(name)
    for mark in solved.marks:
        if has_two_faces(mark.part):
            told = on_bed_words(mark, solved)
            assert "face " in told or ("near end " in told and "upper edge " in told), mark.mark


def test_what_stands_on_both_sides_of_the_bed_is_told_by_its_middle(bed: Bed) -> None:
    cleat = next(mark for mark in bed.marks if mark.name == "cleat")
    faces = cleat.matrices[:, :3, 2] * -np.sign(cleat.matrices[:, :3, 3][:, :1])

    assert len(cleat.pieces) == 2
    is_inside = bool((faces[:, 0] > 0).all())
    way = "inside" if is_inside else "outside"
    assert f"face to the {way} of the bed" in on_bed_words(cleat, bed)


def test_a_bore_from_one_side_makes_the_faces_differ() -> None:
    from model.part import Face, Hole

    blind = Hole("nut hole", Face.FACE, (50, 10, 10), (0.0, 0.0, -1.0), 10, 6)
    through = Hole("bolt hole", Face.FACE, (50, 10, 10), (0.0, 0.0, -1.0), 10, 10)

    assert has_two_faces(part(100, 20, 10, holes=(blind,)))
    assert not has_two_faces(part(100, 20, 10, holes=(through,)))
    assert not has_two_faces(part(100, 20, 10))


def test_a_side_that_looks_along_the_bed_is_not_said_to_look_inside(bed: Bed) -> None:
    """To the inside of the bed reads as across it."""
    stile = next(mark for mark in bed.marks if mark.name == "end stile")

    assert on_bed_words(stile, bed).endswith("upper edge along the bed, to its middle")


def test_a_panel_of_fibres_tells_no_grain(bed: Bed) -> None:
    told = {mark.name: dict(facts(bed, mark))["Grain"] for mark in bed.marks}

    assert told["panel"] == "none" and told["box side"] == "along the length"
