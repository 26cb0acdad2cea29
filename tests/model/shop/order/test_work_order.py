"""The order of the trade, each setting once, what to try first, and what can hurt."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from model import designs
from model.bed import Bed, solve
from model.part import Face
from model.shop.cut_list import cut_list
from model.shop.order.aids import spacers
from model.shop.order.build import work_order
from model.shop.order.feeding import joinery_cautions
from model.shop.order.jobs import jobs, nearer
from model.shop.order.operations import operation
from model.shop.order.record import STAGES, Batch, WorkOrder
from model.shop.part_sizes import sizes
from model.shop.plans import first_plans
from model.stock.rows import SheetSize
from tests.model.shop.order.one_each import one_each

DEMOS = Path(__file__).resolve().parents[4] / "resources" / "demos"
ALL = sorted(path.stem for path in DEMOS.glob("*.bedwright"))

every_demo = pytest.mark.parametrize("name", ALL)


@cache
def demo(name: str) -> tuple[Bed, WorkOrder]:
    bed = solve(designs.read(DEMOS / f"{name}.bedwright"))
    return bed, work_order(bed, one_each(bed))


def changed(bed: Bed, **choices: object) -> WorkOrder:
    other = solve(bed.design.with_choices(choices))
    return work_order(other, one_each(other))


def batches(order: WorkOrder, operation: str) -> list[Batch]:
    return [batch for batch in order.batches if batch.operation == operation]


@every_demo
def test_stages_follow_the_trade_and_never_come_back(name: str) -> None:
    stages = [batch.stage for batch in demo(name)[1].batches]

    order = list(STAGES)
    assert stages == sorted(stages, key=order.index)


@every_demo
def test_no_two_lines_and_no_two_settings_share_a_key(name: str) -> None:
    order = demo(name)[1]

    assert max(Counter(line.key for line in order.lines).values()) == 1
    assert max(Counter(batch.key for batch in order.batches).values()) == 1


@every_demo
def test_what_is_made_alike_is_made_at_one_setting(name: str) -> None:
    settings = Counter(
        (b.machine, b.operation, b.setting) for b in demo(name)[1].batches if b.stage == "joinery"
    )

    assert max(settings.values()) == 1


@every_demo
def test_all_parts_of_one_thickness_are_planed_in_one_setting(name: str) -> None:
    """Mixed stock spoils a post: leg boards must all be one thickness."""
    bed, order = demo(name)
    rough = {
        piece.name: piece.finished.thickness
        for piece in cut_list(bed)
        if piece.source is not None and not piece.source.is_planed
    }

    planed = batches(order, "Plane to thickness")

    assert len(planed) == len({round(each, 3) for each in rough.values()})
    assert {line.mark for batch in planed for line in batch.lines} == set(rough)


# The half that is cut before the half that is fitted to it; a counterbore before the hole in it.
@pytest.mark.parametrize(
    ("first", "then"),
    [("Grooves", "Tongues"), ("Mortises", "Tenons"), ("Counterbores", "Bolt holes")],
)
def test_what_the_next_cut_is_fitted_to_comes_before_it(first: str, then: str) -> None:
    orders = [[batch.operation for batch in demo(name)[1].batches] for name in ALL]
    having_both = [order for order in orders if first in order and then in order]

    assert having_both
    for order in having_both:
        assert max(k for k, o in enumerate(order) if o == first) < order.index(then)


def test_a_groove_is_tried_with_the_panel_that_goes_in_and_measured_first() -> None:
    """H5 and F5 are the panels of both ends; posts and rails that are tenoned in are not meant."""
    (batch,) = [
        batch
        for batch in batches(demo("painted_storage_queen")[1], "Grooves")
        if {line.mark for line in batch.lines} == {"H3", "H4", "H6", "F3", "F4", "F6"}
    ]

    measure, tried = batch.before
    assert measure.startswith("Measure H5 and F5: reckoned")
    assert "try it with H5 and F5:" in tried


def test_a_tenon_is_tried_in_the_posts_that_are_mortised() -> None:
    tenons = batches(demo("guest_room_double")[1], "Tenons")[0]

    assert "try it with H1, H2, F1 and F2:" in tenons.before[-1]


@every_demo
def test_what_is_cut_in_the_middle_of_a_frames_thickness_is_made_from_its_outer_face(
    name: str,
) -> None:
    """Rails were fenced from the inside and stiles from the outside: stock a hair thicker than
    reckoned put the groove of one beside that of the other. By each mark's first piece.
    """
    bed, order = demo(name)
    marks = {mark.mark: mark for mark in bed.marks}
    middle = (0.0, bed["bed_length"] / 2)
    seen = 0
    for batch in order.batches:
        for line in batch.lines:
            mark = marks.get(line.mark)
            if mark is None or mark.assembly not in ("headboard", "footboard", "left side"):
                continue
            axis = 0 if mark.assembly == "left side" else 1
            wide = batch.figure("width") if batch.has("width") else 0.0
            for spot in line.spots:
                is_across = abs(mark.matrices[0][axis, 2]) > 0.9 and spot.against.axis == 2
                if is_across and 2 * batch.figure("fence") + wide == pytest.approx(
                    float(mark.thickness), abs=1e-3
                ):
                    out = mark.matrices[0][axis, 2] * (1 if spot.against is Face.FACE else -1)
                    at = bed.pieces.bounds[0][mark.pieces[0]][axis]
                    assert out * (at - middle[axis]) > 0, (batch.operation, line.mark)
                    seen += 1
    assert seen


@every_demo
def test_nothing_is_tried_with_a_tongue_or_tenon_that_is_cut_later(name: str) -> None:
    """What is named in a test cut has had all of its tongues and tenons, or goes in as it is."""
    bed, order = demo(name)
    thick = {mark.mark: float(mark.thickness) for mark in bed.marks}
    cut_at: dict[str, int] = {}
    for n, batch in enumerate(order.batches):
        if batch.operation in ("Tongues", "Tenons") and batch.stage == "joinery":
            cut_at.update({line.mark: n for line in batch.lines})
    tried = 0
    for n, batch in enumerate(order.batches):
        for said in batch.before:
            if "try it with" in said and batch.operation in ("Grooves", "Mortises"):
                named = re.findall(r"[A-Z]\d+", said.partition("try it with")[2])
                as_they_are = {m for m in named if thick[m] < batch.figure("width") + 0.3}
                assert all(cut_at.get(m, -1) < n for m in set(named) - as_they_are), said
                tried += 1
    assert tried or name == "loft_single"


def test_the_tongue_of_a_panel_is_tried_in_its_groove() -> None:
    """The panel R3 is thicker than the grooves of R1 and R2, which are cut before its rabbets."""
    order = demo("painted_storage_queen")[1]
    (groove,) = [b for b in batches(order, "Grooves") if "R1" in {n.mark for n in b.lines}]
    (rabbet,) = [b for b in batches(order, "Rabbets") if "R3" in {n.mark for n in b.lines}]

    assert groove.before == (
        'Cut one in waste 3/4" thick and measure it: the tongues of R2 and R3 are fitted to it.',
    )
    assert "try it in the grooves of R1 and R2: it slides in" in rabbet.before[-1]


def test_a_slot_that_ends_inside_has_two_stops_and_square_ends() -> None:
    order = demo("painted_storage_queen")[1]
    first = batches(order, "Mortises")[0]

    assert first.aids == (
        'Stop blocks: one at 28 3/4" where it begins, one at 30 3/4" where it ends.',
    )
    assert "square them with a chisel" in first.before[-1]
    through = [b for b in batches(order, "Grooves") if "saw" in b.machine]
    assert through and not any("chisel" in said for b in through for said in b.before)


def test_a_stopped_groove_is_never_made_over_a_saw() -> None:
    stopped: dict[str, str] = {}
    for name in ALL:
        bed, order = demo(name)
        lengths = {mark.mark: mark.part.size for mark in bed.marks}
        for batch in batches(order, "Grooves"):
            for line in batch.lines:
                for spot in line.spots:
                    if spot.start > 0 or spot.stop < lengths[line.mark][spot.end.axis] - 1e-6:
                        stopped[line.key] = batch.machine

    assert stopped
    assert {key: machine for key, machine in stopped.items() if "saw" in machine} == {}


def test_parts_too_short_for_the_jointer_are_milled_as_one_and_cut_apart_after() -> None:
    order = demo("guest_room_double")[1]

    joint = next(
        n for n in batches(order, "Joint one face, then one edge")[0].lines if n.mark == "U4"
    )
    cut = next(n for b in batches(order, "Crosscut to length") for n in b.lines if n.mark == "U4")

    assert joint.detail == "in one long piece: U4-1 to U4-6"
    assert cut.detail == "cut apart from U4-1 to U4-6"


def test_a_narrow_rip_is_flagged_and_a_wide_one_is_not() -> None:
    rips = {b.figure("width"): b for b in batches(demo("loft_single")[1], "Rip to width")}

    assert any("push block" in said for said in rips[38.0].cautions)
    assert rips[89.0].cautions == ()


def test_a_short_piece_at_the_stop_is_held_by_a_clamp() -> None:
    stops = {
        b.figure("length"): b for b in batches(demo("guest_room_double")[1], "Crosscut to length")
    }

    assert any("clamp" in said for said in stops[64.0].cautions)  # bearer legs
    assert stops[189.0].cautions == ()  # stiles


def test_layers_are_jointed_again_before_the_post_is_ripped() -> None:
    """The fence needs a straight edge, and layers never lie flush."""
    order = demo("painted_storage_queen")[1]
    late = [b for b in batches(order, "Rip to width") if b.stage == "trim"]

    assert [b.before for b in late] == [
        ("Scrape off the glue and joint one edge again: what is glued up never lies flush.",)
    ]


def test_a_joint_along_a_part_too_short_to_hold_is_cut_while_it_is_long() -> None:
    """The blocks of a dummy side are 138 mm long and rabbeted along the grain."""
    order = demo("guest_room_double")[1]
    when = {
        (batch.operation, line.mark): n
        for n, batch in enumerate(order.batches)
        for line in batch.lines
    }

    for mark in ("R1", "R2"):
        assert when["Rip to width", mark] < when["Rabbets", mark] < when["Crosscut to length", mark]
    assert not any(
        "before it is cut to length" in said for b in order.batches for said in b.cautions
    )


def test_a_small_part_is_not_held_by_hand_at_a_cutter() -> None:
    """A rail 400 mm long takes its tenon as it is; one of 150 mm needs a jig."""
    bed = demo("guest_room_double")[0]
    job = next(job for mark in bed.marks for job in jobs(mark.part) if job.kind == "tenon cheek")
    mark = next(mark for mark in bed.marks if mark.mark == "H3")
    at = operation(job, mark.part.size)

    said = joinery_cautions(at, [replace(mark, length=150.0)], "mm")

    assert said == (
        "H3: too short to hold by hand at the cutter. Clamp to a larger board or a jig.",
    )
    assert joinery_cautions(at, [mark], "mm") == ()


def test_a_hole_in_an_end_is_deep_from_the_end() -> None:
    bolts = batches(demo("guest_room_double")[1], "Bolt holes")

    told = {line.mark: batch.setting for batch in bolts for line in batch.lines}

    assert "deep from the end; " in told["S1"]
    assert "through; " in told["H1"]


def test_clamps_for_a_glued_post_open_over_its_layers_and_two_cauls() -> None:
    (glue,) = batches(demo("painted_storage_queen")[1], "Glue up layers")

    assert {line.mark for line in glue.lines} == {"H1", "H2", "F1", "F2"}
    assert glue.figure("thickness") == 50.8
    # The longest blank is a little over 1.2 m: a clamp every 250 mm. 2 in, and 3/4 in at each end.
    assert '5 clamps that open 3 1/2" or more' in glue.setting


def test_slide_spacers_are_what_lies_between_slide_and_edge() -> None:
    """A slide's lower edge over the box side's and over the bearer's, from the floor up."""
    bed = demo("painted_storage_queen")[0]

    sizes = {each.name: each.size for each in spacers(bed)}

    low = bed["slide_centre"] - bed["slide_section"] / 2
    assert sizes["slide spacer, box"] == pytest.approx(low - bed["box_bottom"])
    assert sizes["slide spacer, bearer"] == pytest.approx(low - bed["bearer_bottom"])


def test_a_bed_without_slides_needs_no_slide_spacer() -> None:
    assert {each.name for each in spacers(demo("loft_single")[0])} == {"slat spacer"}


def test_a_deck_of_panels_needs_no_slat_spacer() -> None:
    names = {each.name for each in spacers(demo("split_king_foot_drawers")[0])}

    assert "slat spacer" not in names


def test_what_sizes_hang_on_is_measured_again_before_the_first_cut() -> None:
    """A stock is told by the parts that are made of it: its choice's name stands on no page."""
    said = demo("painted_storage_queen")[1].aids
    wanted = [text for text in said if text.startswith("Measure again before the first cut: ")]

    assert not any("stock" in text for text in wanted)
    for marks in ("B1, B2 and B3 (", "H5 and F5 (", "B4 (", "R3 ("):
        assert sum(f"cut: {marks}" in text for text in wanted) == 1
    king = demo("split_king_foot_drawers")[1].aids
    assert 'Measure again before the first cut: Mattress width, 39"; sizes hang on it.' in king


# ---------------------------------------------------------------- boards and sheets


def test_boards_drawn_at_random_are_said_to_be_on_the_order_too() -> None:
    """Nobody owns them: a maker who sets a stop by their knots saws good wood into firewood."""
    said = [note for note in demo("guest_room_double")[1].notes if "drawn at random" in note]

    assert len(said) == 1
    assert "European oak, 38.1 mm; " in said[0]
    assert "anew on your own" in said[0]
    assert not any("at random" in note for note in demo("painted_storage_queen")[1].notes)


def test_what_no_sheet_holds_is_told_in_the_unit_of_the_maker() -> None:
    bed = demo("painted_storage_queen")[0]
    small = SheetSize(material="birch_ply_12", length=600.0, width=400.0)
    stock = replace(bed.design.stock, sheets=(small,))
    order = work_order(bed, first_plans(solve(replace(bed.design, stock=stock))))

    assert order.missing
    assert not any("mm" in said for said in order.missing)
    # A side of 31" by 7 3/8" and 6 mm of trim at each of two edges: 793.4 x 193.325 mm.
    assert 'at least ~31 1/4" x ~7 5/8" would do' in order.missing[0]


def test_what_is_cut_end_to_end_for_its_grain_is_said() -> None:
    said = demo("guest_room_double")[1].notes

    assert any("end to end so that the grain runs on: left fronts" in note for note in said)


# ---------------------------------------------------------------- keys outlast a change


def test_keys_of_parts_that_a_change_does_not_touch_stay() -> None:
    bed, order = demo("painted_storage_queen")
    longer = changed(bed, mattress_length=1905.0)

    kept = {"H1", "H3", "H6", "D1", "B1"}  # posts, rails, stiles, slats and box sides

    for mark in kept:
        before = {line.key for _, line in order.of(mark) if not line.key.startswith("saw")}
        after = {line.key for _, line in longer.of(mark)}
        assert before, mark
        assert before <= after, mark


def test_keys_go_by_part_and_not_by_number() -> None:
    """Without its footboard's panel the rails of the headboard have other neighbours, not keys."""
    bed, order = demo("painted_storage_queen")
    other = changed(bed, **{"foot.style": "planks"})

    assert {line.key for _, line in order.of("H3")} <= other.keys


def test_a_changed_groove_is_another_step() -> None:
    bed, order = demo("painted_storage_queen")
    higher = changed(bed, bottom_up=11.1125)

    grooved = {line.key for b, line in order.of("B1") if b.operation == "Grooves"}
    assert len(grooved) == 1
    assert not grooved & higher.keys


@pytest.mark.parametrize(
    ("low", "high", "end", "start"),
    [
        (10.0, 20.0, Face.LOWER, 10.0),
        (70.0, 80.0, Face.UPPER, 20.0),
        (45.0, 55.0, Face.LOWER, 45.0),
    ],
)
def test_a_distance_is_counted_from_the_nearer_side(
    low: float, high: float, end: Face, start: float
) -> None:
    assert nearer(1, low, high, 100.0) == (end, start)


@pytest.mark.parametrize("name", ["guest_room_double", "split_king_foot_drawers"])
def test_a_panel_is_planed_flat_between_glue_and_fence(name: str) -> None:
    """As wide as its blank in the parts list, and as thick as its strips until it is flat."""
    bed, order = demo(name)
    panels = {each.mark: each for each in cut_list(bed) if each.strips > 1}
    assert panels
    when = {(b.operation, n.mark): (k, b) for k, b in enumerate(order.batches) for n in b.lines}

    for mark in (each for each in bed.marks if each.mark in panels):
        strip, blank = panels[mark.mark], sizes(bed, mark).rough
        glue, glued = when["Glue up strips", mark.mark]
        flat, planed = when["Plane panels flat", mark.mark]

        assert when["Plane to thickness", strip.name][0] < glue < flat
        assert flat < when["Rip to width", mark.mark][0]
        assert glued.figure("width") == blank.width == strip.strips * strip.finished.width
        assert blank.thickness == strip.finished.thickness >= mark.thickness + 1.5
        assert planed.figure("thickness") == mark.thickness
