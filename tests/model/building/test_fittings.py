"""What bought parts must measure is what the bed is cut for."""

from __future__ import annotations

import re

import pytest

from model.building.fittings import fittings
from model.building.washers import washer_room
from model.building.words import load_class
from model.materials import bolt_drives
from tests.model.building.beds import DEMOS, GUEST, KING, LOFT, QUEEN, demo


def told(name: str, what: str) -> str:
    return next(each.text for each in fittings(demo(name)) if each.name == what)


@pytest.mark.parametrize("name", DEMOS)
def test_all_hardware_with_sizes_is_told_of(name: str) -> None:
    bed = demo(name)
    codes = {each.code for each in bed.hardware}

    names = {each.name for each in fittings(bed)}

    wanted = {
        "GLIDE": "Glides", "HOOK-PLATE": "Hook plates", "BRACKET": "Angle brackets",
        "SLIDE-": "Slides", "PULL-": "Pulls", "DOWEL-": "Dowels",
        ("BED-BOLT", "CROSS-BOLT"): "Bolts and nuts",
    }  # fmt: skip
    for begins, called in wanted.items():
        assert (called in names) == any(code.startswith(begins) for code in codes)


def test_a_slide_is_told_with_load_class_height_thickness_and_room() -> None:
    """A slide of 45 kg a pair is sold as 100 lb; 12.7 mm thick, 45 mm high: 1 3/4" at most."""
    text = told(QUEEN, "Slides")

    assert "100 lb (45 kg) or more a pair" in text
    assert '1/2" thick' in text
    assert '1 3/4"' in text
    assert '33/64" of room at each side' in text  # (37 1/4 - 36 7/32) / 2 on the shop's own page


@pytest.mark.parametrize(("kg", "lb"), [(34.0, 75), (45.0, 100), (91.0, 200), (30.0, 67)])
def test_a_load_class_is_told_by_its_name_in_pounds_else_rounded_up(kg: float, lb: int) -> None:
    """75, 100 and 200 lb are classes of slides; 30 kg is 66.1 lb, and less would be too weak."""
    assert load_class(kg, "inch") == f"{lb} lb ({kg:.0f} kg)"
    assert load_class(kg, "mm") == f"{kg:.0f} kg"


def test_plates_are_told_as_recess_pocket_and_pilots_are_cut() -> None:
    bed = demo(QUEEN)
    post = next(mark.part for mark in bed.marks if mark.name == "post")
    recess = next(cut for cut in post.cuts if cut.kind == "plate recess")
    pilots = [h for h in post.holes if h.kind == "pilot hole"]

    text = told(QUEEN, "Hook plates")

    assert f'{(recess.high[0] - recess.low[0]) / 25.4:g}" long' in text
    low = recess.low[0]
    near = min(abs(h.at[0] - low) for h in pilots) / 25.4  # 3/8 in, on the reader's own list
    assert near == pytest.approx(3 / 8)
    assert '3/8", 1 1/8", 4 7/8" and 5 5/8"' in text


def test_bolts_are_threaded_through_their_nut() -> None:
    """The thread begins before the nut, seen from the rail's end, and ends at the bolt's tip."""
    bed = demo(GUEST)
    row = bed["connector"]
    thread = re.search(r"over the last ([\d.]+) mm", told(GUEST, "Bolts and nuts"))

    assert thread is not None
    start = bed["bolt_in_rail"] - float(thread[1])
    assert start <= row.nut_from_end_mm - row.nut_diameter_mm / 2
    assert start > 0


@pytest.mark.parametrize("name", [GUEST, LOFT, KING])
def test_bolts_are_told_with_what_turns_them(name: str) -> None:
    diameter = demo(name)["connector"].bolt_diameter_mm
    row = next(r for r in bolt_drives().values() if abs(r.diameter_mm - diameter) < 0.01)

    assert f"Hex key {row.hex_key}, wrench {row.hexagon}" in told(name, "Bolts and nuts")


@pytest.mark.parametrize("name", [GUEST, QUEEN, KING])
def test_a_washer_has_room_wider_than_its_hole(name: str) -> None:
    room = washer_room(demo(name))

    assert room is not None
    assert room.most > room.hole + 2.0


def test_a_washer_is_no_wider_than_twice_its_way_to_the_bottom() -> None:
    """The lower screws of a front stand just over the bottom in the box front's groove."""
    bed = demo(QUEEN)

    room = washer_room(bed)

    assert room is not None
    lowest = min(min(bed[f"{row}.front_screw_heights"]) for row in ("left", "right"))
    assert room.most == pytest.approx(2 * (lowest - bed["box_floor"]))


def test_a_pull_is_told_with_the_thread_of_its_screws() -> None:
    """The guest bed's box fronts are 12 mm thick behind fronts of 19, with a washer of 1: of screws
    1 1/2 in long 6.1 mm are left; the fixed fronts leave 25.4 - 19 = 6.4. With a mm before them, 8.
    """
    assert "threaded 8-32" in told(QUEEN, "Pulls")
    assert "threaded 8-32 and 8 mm deep or more" in told(GUEST, "Pulls")
