"""What travels in one piece when the bed is apart, how large it is, and what it weighs."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.parts.pieces import Pieces
from model.solids.carried import Assembly, assemblies, joints_of, loosened
from model.solids.holding import joints_meet
from tests.model.solids.small_bed import changed, small_bed

QUEEN = {"beam": "bearers", "mattress_weight": 15.0}


@pytest.fixture(scope="module")
def queen() -> Bed:
    return solve(Design().with_choices(QUEEN))


def by_name(bed: Bed) -> dict[str, Assembly]:
    return {each.name: each for each in bed.carried}


def test_ends_and_sides_travel_whole_and_slats_one_by_one(queen: Bed) -> None:
    counts = Counter({each.name: each.count for each in queen.carried})

    assert [counts[name] for name in ("headboard", "footboard", "left side", "right side")] == [
        1
    ] * 4
    assert counts["slat"] == queen["slats"]
    assert counts["left drawer"] == queen["left.drawer_count"]
    assert counts["mattress"] == 1


def test_every_piece_of_wood_travels_once(queen: Bed) -> None:
    carried = sum(each.count * len(each.pieces) for each in queen.carried)
    loose = sum(p.hardware in ("BRACKET",) for p in queen.pieces.parts)
    of_bed = sum(not queen.pieces.parts[part].hardware for part in queen.pieces.part.tolist())

    assert loose  # some hardware is carried in a pocket
    assert of_bed <= carried < len(queen.pieces)


def test_a_side_takes_its_cleat_its_stiles_and_its_plates_along(queen: Bed) -> None:
    side = by_name(queen)["left side"]

    names = {queen.pieces.parts[queen.pieces.part[piece]].name for piece in side.pieces}

    assert names == {"top rail", "bottom rail", "end stile", "mid stile", "dowel", "cleat",
                     "hook plate, rail half"}  # fmt: skip


def test_a_side_is_as_large_as_its_rails_and_cleat(queen: Bed) -> None:
    thick = queen["frame_thickness"] + queen["cleat_stock"]
    high = queen["rail_top"] - queen["floor_gap"]

    assert by_name(queen)["left side"].size == pytest.approx((thick, high, 2057.4))


def test_a_headboard_is_as_wide_as_its_posts(queen: Bed) -> None:
    width = queen["bed_width"]

    assert by_name(queen)["headboard"].size == pytest.approx(
        (queen["post_along"], queen["head.post_top"], width)
    )


@pytest.mark.parametrize("beam", ["legs", "none"])
def test_battens_of_deck_panels_do_not_tie_the_sides_together(beam: str) -> None:
    bed = solve(Design().with_choices({"deck": "panels", "beam": beam}))

    assert by_name(bed)["left side"].size[0] < 100
    assert "deck batten" in by_name(bed)


def test_a_drawer_is_lifted_out_with_its_front(queen: Bed) -> None:
    drawer = by_name(queen)["left drawer"]

    assert drawer.size[2] > queen["left.box_depth"]
    assert {queen.pieces.groups[queen.pieces.group[p]] for p in drawer.pieces} == {"left-1"}


def test_the_heaviest_comes_first(queen: Bed) -> None:
    weights = [each.kg for each in queen.carried]

    assert weights == sorted(weights, reverse=True)


def test_all_that_is_carried_weighs_what_the_pieces_weigh(queen: Bed) -> None:
    """But for what is screwed on in the room: brackets, glides, and slides on their bearers."""
    screwed_on = [p.hardware.startswith(("BRACKET", "SLIDE")) for p in queen.pieces.parts]
    pocket = queen.weights[np.array(screwed_on)[queen.pieces.part] & (queen.pieces.group == 0)]

    carried = sum(each.count * each.kg for each in queen.carried)

    assert carried == pytest.approx(queen.weights.sum() - pocket.sum())
    assert queen.weights.sum() > queen.masses.sum() + queen["mattress_mass"]


def test_a_mattress_weighs_by_its_area() -> None:
    """1524 x 2032 mm at 15 kg/m2; two pieces share it."""
    one = by_name(solve(Design().with_choices(QUEEN)))["mattress"]
    split = solve(
        Design().with_choices({"mattress_pieces": 2, "mattress_width": 762.0, "beam": "bearers"})
    )

    assert one.kg == pytest.approx(1.524 * 2.032 * 15)
    assert by_name(split)["mattress"].count == 2
    assert by_name(split)["mattress"].kg == pytest.approx(one.kg / 2)


# ---------------------------------------------------------------- on a bed made by hand


def carried_of(bed: dict[str, tuple]) -> tuple[tuple[Assembly, ...], Pieces]:  # type: ignore[type-arg]
    pieces = Pieces.of(bed)
    return assemblies(pieces, joints_meet(bed, pieces), np.ones(len(pieces))), pieces


def loose_rails(bed: dict[str, tuple]) -> dict[str, tuple]:  # type: ignore[type-arg]
    """The rails' tenons left dry, the dowels in the rails only, the slats laid on."""
    (slats,) = bed["slats"]
    bed = changed(bed, "slats", held=tuple(h._replace(knock_down=True) for h in slats.held))
    for scope in ("left", "right"):
        (rail,), (dowel,) = bed[f"{scope}.rail"], bed[f"{scope}.dowels"]
        dry = tuple(hold._replace(knock_down=True) for hold in rail.held)
        bed = changed(bed, f"{scope}.rail", held=dry)
        held = tuple(h._replace(knock_down=h.by == "posts") for h in dowel.held)
        bed = changed(bed, f"{scope}.dowels", held=held)
    return bed


def test_what_is_glued_all_round_travels_as_one() -> None:
    found, pieces = carried_of(small_bed())
    largest = max(found, key=lambda each: len(each.pieces))

    assert largest.size[2] > 1900
    assert {"rail", "head post", "foot post", "panel"} <= {
        pieces.parts[pieces.part[piece]].name for piece in largest.pieces
    }


def test_dry_tenons_let_the_sides_come_off() -> None:
    found, _ = carried_of(loose_rails(small_bed()))

    assert max(each.size[1] for each in found if each.name != "headboard") < 800


def test_alike_pieces_are_counted_and_others_are_not() -> None:
    bed = small_bed(slats=12)
    (slats,) = bed["slats"]
    bed = changed(bed, "slats", held=tuple(h._replace(knock_down=True) for h in slats.held))
    short = replace(slats, length=1290.0, at=(-645.0, 80.0, 380.0), places=slats.places[:1])
    bed["slats"] = (replace(bed["slats"][0], places=slats.places[1:]), short)
    bed = changed(bed, "slats", 1, held=())

    found, _ = carried_of(bed)

    assert sorted(each.count for each in found if each.name == "slat") == [1, 11]


# ---------------------------------------------------------------- left loose


def test_a_headboard_without_its_tenons_falls_into_posts_rails_and_panels(queen: Bed) -> None:
    headboard = by_name(queen)["headboard"]
    joints = joints_of(headboard, queen.proof.holding)

    sizes = loosened(headboard, queen.pieces, queen.proof.holding, "mortise and tenon")

    assert joints["mortise and tenon"] is True
    assert sizes[:, 1].max() < headboard.size[1]
    assert sizes[:, 2].max() == pytest.approx(queen["head.end_rail_length"])


def test_a_drawer_without_its_front_is_shallower(queen: Bed) -> None:
    drawer = by_name(queen)["left drawer"]
    sizes = loosened(drawer, queen.pieces, queen.proof.holding, "screwed from behind")

    assert joints_of(drawer, queen.proof.holding)["screwed from behind"] is False
    assert sizes.shape[0] >= 2
    assert sizes[:, 2].max() <= drawer.size[2]
