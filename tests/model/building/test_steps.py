"""The steps of the demos: in an order that hands can follow, with the numbers of this bed."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from model.bed import Bed
from model.building.record import Step
from model.building.steps import build_steps
from model.shop.order.aids import spacers
from model.shop.order.say import size
from tests.checkers.replay import Replay
from tests.model.building.beds import DEMOS, GUEST, KING, LOFT, QUEEN, demo, turned


def titled(bed: Bed, *words: str) -> Step:
    """The one step whose title has all of these words."""
    found = [s for s in build_steps(bed) if all(word in s.title for word in words)]
    assert len(found) == 1, [step.title for step in build_steps(bed)]
    return found[0]


def places(bed: Bed, *words: str) -> int:
    return build_steps(bed).index(titled(bed, *words))


@pytest.mark.parametrize("name", DEMOS)
def test_the_demo_is_built_again_from_its_steps(name: str) -> None:
    assert list(Replay(demo(name), build_steps(demo(name))).faults()) == []


@pytest.mark.parametrize("name", DEMOS)
def test_same_bed_same_steps(name: str) -> None:
    assert build_steps(turned(name)) == build_steps(turned(name))


# ---------------------------------------------------------------- the checker can fail


def test_the_replay_misses_a_piece_that_is_left_out() -> None:
    steps = build_steps(demo(QUEEN))
    without = tuple(step for step in steps if "cleat" not in step.title)

    assert any("comes 0 times" in fault for fault in Replay(demo(QUEEN), without).faults())


def test_the_replay_sees_a_panel_that_comes_too_late() -> None:
    """The box is closed before its bottom: turned about, the last side bars it."""
    bed = demo(QUEEN)
    steps = list(build_steps(bed))
    k = places(bed, "Drawer box: glue")
    comes = steps[k].comes
    late = [each for each in comes if bed.pieces.form(each.piece).name == "box bottom"]
    steps[k] = replace(steps[k], comes=(*(each for each in comes if each not in late), *late))

    assert any("bars" in fault for fault in Replay(bed, steps).faults())


def test_the_replay_sees_glue_where_none_is_due() -> None:
    bed = demo(QUEEN)
    steps = [replace(s, glue=True) if "Lay the slats" in s.title else s for s in build_steps(bed)]

    assert any("glues nothing" in fault for fault in Replay(bed, steps).faults())


# ---------------------------------------------------------------- diagonals by hand


def test_diagonals_of_the_queen_by_hand() -> None:
    """Sizes from the parts list and the summary of the demo, in inches: the bed 85 by 63 1/2, a
    side 81 by 15, a box 31 deep and 36.2182 wide over its sides, a front 38 1/4 by 9 1/4.
    """
    bed = demo(QUEEN)
    by_hand = {
        ("Each side: glue",): (81.0, 15.0),
        ("Drawer box: glue",): (36.2182, 31.0),
        ("Front: glue",): (38.25, 9.25),
    }

    for words, sides in by_hand.items():
        (square,) = titled(bed, *words).squares
        assert square.length / 25.4 == pytest.approx(sides[0], abs=1e-3)
        assert square.width / 25.4 == pytest.approx(sides[1], abs=1e-3)
        assert square.diagonal / 25.4 == pytest.approx(math.hypot(*sides), abs=1e-3)
    assert any('85" by 63 1/2"' in check for check in titled(bed, "right side to both").checks)
    assert any('106 1/8"' in check for check in titled(bed, "right side to both").checks)
    assert any('82 3/8"' in check for check in titled(bed, "Each side: glue").checks)


def test_shoulders_and_not_tenons_are_measured() -> None:
    """Between its posts the queen's headboard is 57 1/2 in wide; its rails 59 1/2, with tenons."""
    (square,) = titled(demo(QUEEN), "Headboard: glue end rail").squares

    assert square.length == pytest.approx(57.5 * 25.4)


def test_tapered_feet_are_left_out() -> None:
    """The loft bed's posts taper below the rails, so their lowest corners are no corners."""
    bed = demo(LOFT)
    (square,) = titled(bed, "Headboard: glue posts").squares
    post = next(mark.part for mark in bed.marks if mark.name == "post" and mark.mark[0] == "H")

    assert post.taper > 0
    assert square.width == pytest.approx(float(post.length) - float(post.taper_length))


# ---------------------------------------------------------------- nothing is closed too early


def test_fittings_come_after_the_finish_and_drawers_after_their_slides() -> None:
    bed = demo(QUEEN)
    order = [
        places(bed, "Drawer box: glue"),
        places(bed, "Finish parts"),
        places(bed, "fit slides", "inner"),
        places(bed, "Hang the drawers"),
        places(bed, "Set the drawer fronts"),
        places(bed, "Lay the slats"),
        places(bed, "mattress"),
    ]

    assert order == sorted(order)


def test_bearers_stand_before_the_side_is_closed() -> None:
    """They reach from side to side under cleats, so that none can be let down between them."""
    for name in (QUEEN, GUEST):
        assert places(demo(name), "Fix the slide bearers") < places(
            demo(name), "right side to both"
        )


def test_a_bottom_under_the_back_slides_in_when_the_box_is_glued() -> None:
    bed = turned(KING, bottom_fit="under back")
    glued = [step for step in build_steps(bed) if "Drawer box: glue" in step.title]
    slid = [step for step in build_steps(bed) if "slide in" in step.title]

    assert len(glued) == len(slid) == 3
    assert "box bottom" not in [each.name for step in glued for each in step.marks]
    assert {each.name for step in slid for each in step.marks} == {"box bottom"}
    assert all(step.screws and not step.glue for step in slid)


def test_a_panel_is_in_before_the_last_post() -> None:
    step = titled(demo(QUEEN), "Headboard: glue posts; panels stay dry")
    names = [demo(QUEEN).pieces.form(each.piece).name for each in step.comes]

    assert names.index("panel") < names.index("post")


def test_alike_things_are_made_in_one_go() -> None:
    assert titled(demo(QUEEN), "Drawer box: glue").times == 4
    assert titled(demo(QUEEN), "Each side: glue").times == 2
    # The guest bed's sides are mirror images: they cannot be turned so that one lies on the other.
    assert titled(demo(GUEST), "Left side: glue").times == 1


# ---------------------------------------------------------------- numbers of the bed


def test_the_slats_are_laid_with_the_spacer_that_the_shop_made() -> None:
    bed = demo(QUEEN)
    spacer = next(each for each in spacers(bed) if each.name == "slat spacer")

    assert any(size(spacer.size, "inch") in told for told in titled(bed, "Lay the slats").settings)


def test_openings_get_a_spacer() -> None:
    """The queen's openings are 37 1/4 in wide: what the rails leave between three stiles."""
    step = titled(demo(QUEEN), "Each side: glue")

    assert any('Spacer 37 1/4" long' in told for told in step.settings)


def test_screws_are_told_for_one_of_alike_things() -> None:
    """A cleat takes 15 screws; two are made."""
    step = titled(demo(QUEEN), "cleat")

    assert step.screws[0].number == 30
    assert any("Drive 15 No. 8" in sentence for sentence in step.sentences)


def test_heavy_and_long_things_take_two() -> None:
    assert any("Two carry" in told for told in titled(demo(KING), "Stand the headboard").sentences)
    assert not any("Two carry" in t for t in titled(demo(QUEEN), "Stand the headboard").sentences)


def test_no_glue_where_the_bed_comes_apart() -> None:
    for name in DEMOS:
        final = [step for step in build_steps(demo(name)) if step.chapter == "Final assembly"]
        assert not any(step.glue for step in final)
        assert any("No glue" in told for step in final for told in step.keep_dry)


@pytest.mark.parametrize("name", [GUEST, LOFT])
def test_bed_bolts_are_driven_from_outside(name: str) -> None:
    """Their heads lie in the outer faces of the posts: they go towards the middle of the bed."""
    bed = demo(name)
    low, high = bed.pieces.bounds
    middle = bed["bed_length"] / 2
    bolts = [
        come for step in build_steps(bed) for come in step.comes
        if bed.pieces.form(come.piece).name == "bolt"
    ]  # fmt: skip
    assert len(bolts) >= 8
    for come in bolts:
        at = (low[come.piece, 1] + high[come.piece, 1]) / 2
        assert come.along == (0.0, 1.0 if at < middle else -1.0, 0.0)
