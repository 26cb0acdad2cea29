"""Finishing schedule, care sheet, cautions, notes and tools: from this bed's own numbers."""

from __future__ import annotations

import re

import pytest

from model.building.care import care_sheet, may_hold
from model.building.cautions import caution_sheet
from model.building.finishing import Schedule, finishing_schedule
from model.building.how_to_use import how_to_use
from model.building.record import Clamping, Step
from model.building.steps import build_steps
from model.building.tools import Tools, tool_list
from model.checks.safety.cautions import cautions
from model.cost.coats import coats
from model.cost.faces import fixed
from model.cost.surfaces import surfaces
from model.shop.order.build import work_order
from model.shop.order.record import STAGES
from model.shop.plans import first_plans
from tests.model.building.beds import DEMOS, GUEST, KING, LOFT, QUEEN, demo, turned


def keys(schedule: Schedule) -> list[str]:
    return [each.key for each in schedule.passes]


def tools(name: str, title: str) -> tuple[str, ...]:
    found = tool_list(demo(name), build_steps(demo(name)))
    return next((each.items for each in found if each.title == title), ())


# ---------------------------------------------------------------- finishing


def test_paint_goes_over_primer_over_sealer() -> None:
    """Common practice, no source: sanding up to 150, two sealer coats on fibreboard while its edges
    are not yet shut in grooves, then stain-blocking primer and paint on what is put together.
    """
    found = keys(finishing_schedule(demo(QUEEN)))
    order = ["sand/80", "sand/120", "sand/150", "coat/sealer", "clean", "mask"]
    order += ["coat/primer", "coat/paint", "sand/between", "cure"]

    assert found == order


def test_nothing_is_rubbed_down_between_coats_of_oil() -> None:
    found = keys(finishing_schedule(demo(LOFT)))

    assert "coat/oil" in found
    assert not {"coat/primer", "coat/sealer", "sand/between"} & set(found)


def test_amounts_are_those_of_the_buying_list() -> None:
    bed = demo(QUEEN)
    on = coats(bed, surfaces(bed, fixed(bed)))
    sealer = next(each for each in on if each.coating.key == "sealer")
    (told,) = (p for p in finishing_schedule(bed).passes if p.key == "coat/sealer")
    feet = sealer.area / 0.3048**2

    assert f"2 coats on {feet:.0f} square feet" in told.amount


def test_solid_panels_get_their_first_coat_before_they_are_let_in() -> None:
    """The planks of the guest bed are of oak, the panels of the queen of fibreboard."""
    (told,) = (p for p in finishing_schedule(demo(GUEST)).passes if p.key == "panels")

    assert told.text.startswith("H5, H6 and H7")
    assert "panels" not in keys(finishing_schedule(demo(QUEEN)))


def test_a_bed_that_gets_no_finish_is_sanded_and_left() -> None:
    schedule = finishing_schedule(turned(LOFT, finish="none"))

    assert not schedule.marks and not schedule.bare
    assert all(key.startswith("sand/") or key == "clean" for key in keys(schedule))


@pytest.mark.parametrize("name", DEMOS)
def test_each_mark_is_finished_or_left(name: str) -> None:
    schedule = finishing_schedule(demo(name))

    assert sorted((*schedule.marks, *schedule.plain)) == sorted(m.mark for m in demo(name).marks)
    assert any("Oily rags" in caution for caution in schedule.cautions)
    assert all(each.source for each in schedule.passes)


def test_joints_that_come_apart_stay_bare() -> None:
    bare = " ".join(finishing_schedule(demo(QUEEN)).bare)

    assert "ends of the side rails" in bare
    assert "slides" in bare
    assert "Recesses" in bare
    assert "slides" not in " ".join(finishing_schedule(demo(LOFT)).bare)


# ---------------------------------------------------------------- care, cautions, notes


def care(name: str, key: str) -> str:
    bed = demo(name)
    return next(each.text for each in care_sheet(bed, build_steps(bed)) if each.key == key)


@pytest.mark.parametrize("name", [QUEEN, GUEST, KING])
def test_a_drawer_is_never_filled_beyond_what_its_slides_are_made_for(name: str) -> None:
    """What the care sheet lets in, box and front: together no more than the class of the pair."""
    bed = demo(name)
    told = re.search(r"up to (?:\d+ lb \()?(\d+) kg", care(name, "drawers"))
    assert told is not None
    for row in ("left", "right", "foot"):
        for number in range(1, int(bed[f"{row}.drawer_count"]) + 1):
            group = bed.pieces.groups.index(f"{row}-{number}")
            empty = float(bed.weights[bed.pieces.group == group].sum())  # its steel too

            assert float(told[1]) + empty <= bed["slide"].load_kg  # whatever skids may bear
            assert float(told[1]) <= bed[f"{row}.drawer_contents"]


def test_stronger_slides_let_more_into_a_drawer() -> None:
    """Then the bottom decides: 50 kg, as drawer bottoms are tested."""
    bed = turned(QUEEN, slide="side_mount_full_heavy")

    assert may_hold(bed, "left") == pytest.approx(bed["left.drawer_contents"])


def test_what_is_carried_is_told_with_all_that_hangs_on_it() -> None:
    """A bearer of the queen is 61 in long; with the slides that stick out beyond it 63 in, with leg
    and packer 3 + 3 + 4 7/8 = 10 7/8 in high. A leg on a bearer is not carried apart.
    """
    told = care(QUEEN, "carried")

    assert '4 x Slide bearer: 63" x 10 7/8"' in told
    assert "Bearer leg" not in told


def test_the_care_sheet_tells_what_the_checks_reckoned_with() -> None:
    """The queen: two sleepers of 110 kg, which is 243 lb, and 50 kg or 110 lb in a drawer."""
    assert "2 sleepers of 243 lb (110 kg) each" in care(QUEEN, "loads")
    # 45 kg a pair, a quarter to spare, less box and front: 45 / 1.25 - 11.8 = 24 kg, 53 lb
    assert "53 lb (24 kg)" in care(QUEEN, "drawers")
    assert "between 30 and 55 %" in care(QUEEN, "humidity")


def test_the_bed_comes_apart_the_other_way_round() -> None:
    told = care(QUEEN, "apart")
    order = ["mattress", "slats", "drawers", "beam", "right side", "bearers", "footboard"]
    at = [told.index(f"the {word}" if word not in ("beam", "bearers") else word) for word in order]

    assert at == sorted(at)


def test_a_bed_without_drawers_says_nothing_of_them() -> None:
    bed = demo(LOFT)

    assert "drawers" not in [each.key for each in care_sheet(bed, build_steps(bed))]


@pytest.mark.parametrize("name", DEMOS)
def test_every_caution_stands_once_and_the_first_says_whose_word_counts(name: str) -> None:
    bed = demo(name)
    told = [each.key for group in caution_sheet(bed) for each in group.cautions]

    assert sorted(told) == sorted(each.key for each in cautions(bed.pieces, bed.materials))
    assert told[0] == "whose_word"


@pytest.mark.parametrize("name", DEMOS)
def test_notes_name_every_letter_that_is_used(name: str) -> None:
    notes = {note.title: note.text for note in how_to_use(demo(name))}

    for letter in {mark.mark[0] for mark in demo(name).marks}:
        assert f"{letter} for " in notes["Marks"]
    assert ("Mirror images" in notes) == any(mark.handed for mark in demo(name).marks)
    assert "near end" in notes["Faces and datum"]


# ---------------------------------------------------------------- tools


def test_every_hole_has_its_bit() -> None:
    """The queen: dowels of 10 mm, and pull holes of 3/16 in for 8-32 screws."""
    bits = tools(QUEEN, "Drill bits")

    assert "10 mm: dowel holes" in bits
    assert any(bit.startswith('3/16"') and "pull holes" in bit for bit in bits)
    # The slanting No. 6 screws of packers and legs, whose shank is 3.5 mm.
    assert any(bit.startswith('9/64"') and "shank holes" in bit for bit in bits)


def test_clamps_serve_the_largest_glue_up_and_no_more() -> None:
    """Two glue-ups, one after the other: three of 500 mm, then two of 1000 mm. Two long ones do
    for both, with a third that need only be short. A caul of 3/4 in at each end is 38 mm more, and
    clamps are told to the next cm.
    """
    bed = turned(GUEST)
    steps = (
        Step(key="a", chapter="a", title="", sentences=(), clamps=(Clamping(3, 500.0),)),
        Step(key="b", chapter="a", title="", sentences=(), clamps=(Clamping(2, 1000.0),)),
    )
    (told,) = (each for each in tool_list(bed, steps) if each.title == "Clamps")

    assert told == Tools(
        "Clamps",
        ("2 clamps that open 1040 mm or more", "1 clamp that opens 540 mm or more"),
    )


def test_a_bed_with_bolts_takes_a_wrench() -> None:
    assert any("Wrench" in tool for tool in tools(KING, "To drive and to glue"))
    assert not any("Wrench" in tool for tool in tools(QUEEN, "To drive and to glue"))


@pytest.mark.parametrize("name", DEMOS)
def test_the_first_steps_are_the_chapters_of_the_work_order(name: str) -> None:
    """With their plans known, boards and sheets have chapters of their own."""
    bed = demo(name)
    order = work_order(bed, first_plans(bed))
    chapters = list(dict.fromkeys(STAGES[batch.stage] for batch in order.batches))
    steps = [step for step in build_steps(bed) if step.chapter == "Mill"]

    assert [step.title for step in steps] == chapters
    assert all(f'lists under "{step.title}"' in " ".join(step.sentences) for step in steps)


@pytest.mark.parametrize("name", DEMOS)
def test_every_machine_of_the_work_order_is_among_the_tools(name: str) -> None:
    """Whatever the plans ask for: of two that do the same, one is enough."""
    bed = demo(name)
    had = " ".join(tools(name, "Machines, or hand tools that do the same")).lower()
    for batch in work_order(bed, first_plans(bed)).batches:
        if batch.machine != "bench":
            ways = [way.strip().removeprefix("a ") for way in batch.machine.split(", or ")]
            assert any(way.split(" with a helper")[0] in had for way in ways), batch.machine


def test_what_steps_ask_for_is_among_the_tools() -> None:
    hands = tools(QUEEN, "To drive and to glue")

    assert "Block plane or shoulder plane" in hands
    assert any(item.startswith("Driver bits") for item in hands)
    assert any("30 degrees" in item for item in hands)
    assert not any(
        "plane" in item or "slanting" in item for item in tools(LOFT, "To drive and to glue")
    )
