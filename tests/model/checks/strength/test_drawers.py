"""Drawers of whole beds: what their boxes, slides, fronts and feet bear, followed by hand."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict
from model.checks.strength.drawer_runners import held_down
from model.checks.strength.screw_lines import enough_screws, evenly, steel_to_wood
from model.mechanics.fasteners.strengths import Design as Allowed
from model.mechanics.fasteners.together import screws_in_line

G = 9.80665


@cache
def bed(**choices: Any) -> Bed:
    return solve(Design().with_choices({k.replace("__", "."): v for k, v in choices.items()}))


def said(of: Bed, name: str) -> Finding:
    (finding,) = [each for each in of.findings if each.id == f"left.{name}"]
    return finding


def drawer_kg(of: Bed) -> float:
    """Wood of the first drawer on the left, piece by piece."""
    group = of.pieces.groups.index("left-1")
    return float(sum(of.masses[i] for i in range(len(of.pieces)) if of.pieces.group[i] == group))


# ---------------------------------------------------------------- slides


def test_slides_carry_box_front_and_clothes() -> None:
    """100 lb a pair, a quarter to spare: 36 kg."""
    found = said(bed(), "slides_carry")

    assert found.value == pytest.approx(drawer_kg(bed()) + bed()["left.drawer_clothes"])
    assert found.limit == pytest.approx(45 / 1.25)


def test_drawers_of_books_are_too_heavy_for_their_slides() -> None:
    found = said(bed(drawer_fill=500.0), "slides_carry")

    assert found.verdict is Verdict.FAILS
    assert "kg" in found.reason


def test_a_wide_drawer_filled_like_a_kitchens_outweighs_its_slides() -> None:
    """900 x 500 mm holds 33 kg at 15 lb/ft2; a bed's drawer is larger still."""
    found = said(bed(left__drawers=2), "slides_tested")

    assert found.verdict is Verdict.NOTE
    assert found.value == pytest.approx(
        drawer_kg(bed(left__drawers=2)) + bed(left__drawers=2)["left.drawer_contents"]
    )


def test_skids_take_half() -> None:
    plain, skids = bed(), bed(rear_support="skid")

    assert said(skids, "slides_carry").value == pytest.approx(
        said(plain, "slides_carry").value / 2, rel=0.01
    )


def test_screws_of_the_outer_members_by_hand() -> None:
    """Half the drawer, its middle `travel` out; three screws, the last pulled by the lever."""
    of = bed()
    load = (drawer_kg(of) + of["left.drawer_clothes"]) * G / 2
    spots = np.array(of["left.slide_screw_spots"])
    at = of["left.box_depth"] / 2 - of["left.travel"]
    turned = (
        load * (at - spots.mean()) * (spots - spots.mean()) / ((spots - spots.mean()) ** 2).sum()
    )

    found = said(of, "slide_screws_hold.slide_holders")

    assert found.value == pytest.approx(np.abs(load / 3 + turned).max())
    assert found.verdict is Verdict.HOLDS


def test_screws_of_the_inner_members_move_with_the_load() -> None:
    """Their lever is only from their middle to the box's: far less than the outer members'."""
    outer, inner = (
        said(bed(), f"slide_screws_hold.{rule}") for rule in ("slide_holders", "slide_movers")
    )

    assert inner.value < 0.5 * outer.value


def test_too_few_screws_are_told_how_many_would_do() -> None:
    found = said(bed(drawer_fill=700.0), "slide_screws_hold.slide_holders")

    assert found.verdict is Verdict.FAILS
    assert "would do, evenly spread." in found.reason


def test_that_many_screws_do_and_one_less_does_not() -> None:
    places, load, moment, each = (35.0, 300.0, 565.0), 200.0, -150_000.0, Allowed(250.0)
    count = enough_screws(load, moment, places, each)

    assert count is not None
    forces = [
        max(screws_in_line(load, 0.0, moment, evenly(35.0, 565.0, n))) for n in (count, count - 1)
    ]
    assert forces[0] <= 250 < forces[1]


def test_no_number_of_screws_holds_a_lorry() -> None:
    assert enough_screws(1e6, 0.0, (35.0, 565.0), Allowed(250.0)) is None
    assert enough_screws(1.0, 0.0, (35.0, 565.0), Allowed(0.0)) is None


def test_a_screw_by_its_mere_tip_holds_nothing() -> None:
    assert steel_to_wood(3.51, 3.0, 1.2, 0.42, "ten minutes") == 0
    assert steel_to_wood(3.51, 14.0, 1.2, 0.42, "ten minutes") == pytest.approx(
        1.6 * steel_to_wood(3.51, 14.0, 1.2, 0.42, "ten years")
    )


# ---------------------------------------------------------------- runners


def test_a_kicker_holds_down_what_stands_out() -> None:
    """800 mm box open by 600: its middle is 200 out, its back 200 in: all of its weight."""
    assert held_down(100.0, 600.0, 800.0) == pytest.approx(100)
    assert held_down(100.0, 300.0, 800.0) == 0


def test_wooden_runners_are_asked_for_their_ends_and_kickers() -> None:
    of = bed(slide="wooden_runner")
    half = (drawer_kg(of) + of["left.drawer_clothes"]) * G / 2
    push = held_down(half, of["left.travel"], of["left.box_depth"])

    assert f"{half + push:.0f} N" in said(of, "runner_bears").reason
    assert f"{push:.0f} N" in said(of, "kicker_holds").reason


def test_ball_bearing_slides_have_no_kicker() -> None:
    assert not [f for f in bed().findings if f.id.endswith(("kicker_holds", "runner_bears"))]


# ---------------------------------------------------------------- boxes and fronts


def test_half_the_contents_push_at_each_corner() -> None:
    of = bed()

    found = said(of, "corners_hold")

    assert found.value == pytest.approx(of["left.drawer_contents"] * G / 2)
    assert "rabbet" in found.reason


def test_a_maple_box_glued_in_rabbets_fails_and_dovetails_mend_it() -> None:
    solid = {"box_sheet": "sugar_maple", "box_stock": 15.0}
    rabbet, dovetail = (bed(**solid, box_joint=joint) for joint in ("rabbet", "dovetail"))

    assert said(rabbet, "corners_hold").verdict is Verdict.FAILS
    assert "end grain" in said(rabbet, "corners_hold").reason
    assert said(dovetail, "corners_hold").verdict is Verdict.HOLDS


def test_a_box_longer_than_its_slide_bends_by_its_overhang() -> None:
    of = bed(left__depth="full", right__side="plain", beam="none")
    weight = (drawer_kg(of) + of["left.drawer_contents"]) * G
    over = of["left.box_depth"] - of["left.slide_screw_spots"][-1]

    found = said(of, "sides_reach")

    moment = weight / 2 / of["left.box_depth"] * over**2 / 2
    thick = of["box_thickness"] - of["bottom_groove_depth"]
    assert found.value == pytest.approx(moment * 6 / (thick * of["box_height"] ** 2))


def test_front_screws_balance_a_pull_at_the_upper_edge() -> None:
    """Moments about the box's lower edge: four screws, drawn in proportion to their height."""
    of = bed()
    force = (drawer_kg(of) + of["left.drawer_clothes"]) * G
    heights = [z - of["box_bottom"] for z in of["left.front_screw_heights"]]
    turning = force * (of["left.front_top"] - of["box_bottom"])

    found = said(of, "front_screws_hold")

    drawn = turning * max(heights) / (2 * sum(y**2 for y in heights))
    assert found.value == pytest.approx(drawn)
    assert found.verdict is Verdict.HOLDS


def test_a_knob_bears_twice_what_each_screw_of_a_bar_does() -> None:
    bar, knob = (said(bed(pull=pull), "pull_screws_hold") for pull in ("bar_128", "knob_32"))

    assert knob.value == pytest.approx(2 * bar.value)


def test_a_hand_hole_has_no_screws_to_ask_for() -> None:
    assert not [f for f in bed(pull="cut_out_100").findings if "pull_screws_hold" in f.id]


# ---------------------------------------------------------------- all drawers open


def tipping(of: Bed) -> float:
    """Turning over the left feet as a share of what holds: pieces one by one."""
    pieces, lo, hi = of.pieces, *of.pieces.bounds
    edge = min(float((lo[i, 0] + hi[i, 0]) / 2) for i in range(len(pieces)) if lo[i, 2] < 1e-3)
    over = back = 0.0
    for i in range(len(pieces)):
        group = pieces.groups[pieces.group[i]]
        out = of["left.travel"] if group.startswith("left-") else 0.0
        is_mattress = pieces.parts[pieces.part[i]].hardware == "MATTRESS"
        at = (lo[i, 0] + hi[i, 0]) / 2 - out
        loads = [(of.masses[i] + (of["mattress_mass"] if is_mattress else 0.0), at)]
        if pieces.made_by(i) == ("left.box_bottoms",):
            loads.append((of["left.drawer_contents"], at))
        for kg, x in loads:
            over, back = over + kg * max(edge - x, 0), back + kg * max(x - edge, 0)
    return 100 * over / back


@pytest.mark.parametrize("drawers", [2, 3])
def test_drawers_open_on_one_side_are_held_by_the_bed(drawers: int) -> None:
    of = bed(left__drawers=drawers)

    found = said(of, "stands_with_drawers_open")

    assert found.value == pytest.approx(tipping(of))


def test_a_bed_without_a_mattress_to_hold_it_tips_sooner() -> None:
    light, heavy = (bed(mattress_weight=kg) for kg in (3.0, 40.0))

    assert (
        said(light, "stands_with_drawers_open").value
        > said(heavy, "stands_with_drawers_open").value
    )


def test_a_narrow_bed_with_drawers_of_books_open_tips() -> None:
    found = said(
        bed(
            mattress_width=760.0, mattress_weight=5.0, drawer_fill=900.0, left__depth="full",
            right__side="plain", beam="none", slide="side_mount_over",
        ),
        "stands_with_drawers_open",
    )  # fmt: skip

    assert found.verdict is Verdict.FAILS
