"""What leaves the saw end to end: matched fronts, and parts too short to be milled alone."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest

from model import designs
from model.bed import Bed, solve
from model.shop.cut_list import cut_list
from model.shop.together import Together, lone_notes, strip_length, together, too_short

Beds = Callable[..., Bed]

DEMOS = Path(__file__).resolve().parents[3] / "resources" / "demos"


def strips(bed: Bed) -> dict[str, Together]:
    return {strip.name: strip for strip in together(bed, cut_list(bed))}


def ganged(bed: Bed) -> list[Together]:
    return [strip for strip in strips(bed).values() if "fronts" not in strip.name]


# ---------------------------------------------------------------- fronts


def test_fronts_of_a_row_are_cut_in_the_order_in_which_they_stand(oak_bed: Beds) -> None:
    bed = oak_bed(widest_board=248.0)
    fronts = next(mark for mark in bed.marks if mark.name == "front")

    found = strips(bed)["left fronts"]

    places = [bed.pieces.bounds[0][fronts.pieces[m.number - 1]].tolist() for m in found.members]
    assert len(places) == 3
    assert all(x < 0 for x, _, _ in places)
    assert all(one[1] < other[1] for one, other in pairwise(places))


def test_every_strip_of_glued_up_fronts_runs_through_the_row(oak_bed: Beds) -> None:
    """Fronts 1 to 3 are glued from strips 1 and 2, 3 and 4, 5 and 6."""
    found = strips(oak_bed())

    assert {name for name in found if "fronts" in name} == {
        f"{side} fronts, {part}" for side in ("left", "right") for part in (1, 2)
    }
    first, second = (
        sorted(m.number for m in found[f"left fronts, {part}"].members) for part in (1, 2)
    )
    assert [n + 1 for n in first] == second
    assert all(n % 2 == 1 for n in first)


def test_painted_fronts_need_no_match(oak_bed: Beds) -> None:
    assert not any("fronts" in name for name in strips(oak_bed(front_material="mdf_3_4in")))
    assert not any("fronts" in name for name in strips(oak_bed(match_fronts=False)))


# ---------------------------------------------------------------- short parts


def test_a_strip_of_several_kinds_names_every_piece() -> None:
    """Who looks for the second leg finds it in the name, and not only the first and the last."""
    bed = solve(designs.read(DEMOS / "split_king_foot_drawers.bedwright"))

    assert "U2-4 with U5-1 to U5-3" in strips(bed)
    for strip in ganged(bed):
        named = set()
        for run in strip.name.split(" with "):
            first, _, last = run.partition(" to ")
            mark, low = first.rsplit("-", 1)
            high = (last or first).rsplit("-", 1)[1]
            named |= {(mark, number) for number in range(int(low), int(high) + 1)}

        assert named == {(each.piece.name, each.number) for each in strip.members}


def test_short_parts_are_milled_as_one_piece_that_is_long_enough(oak_bed: Beds) -> None:
    gangs = ganged(oak_bed(shortest_milled=300.0))

    assert gangs
    for gang in gangs:
        assert gang.stays_whole
        assert gang.length(kerf=3.2) >= 300
        assert len({(m.piece.task, m.piece.rough.width) for m in gang.members}) == 1


def test_every_short_part_has_company(oak_bed: Beds) -> None:
    bed = oak_bed()
    short = {
        (piece.name, number)
        for piece in cut_list(bed)
        if too_short(piece, 300.0)
        for number in range(1, piece.quantity + 1)
    }

    members = [(m.piece.name, m.number) for gang in ganged(bed) for m in gang.members]

    assert len(members) == len(set(members))
    assert short <= set(members)


def test_a_lone_short_part_stays_on_a_longer_one_of_its_width(oak_bed: Beds) -> None:
    """The footboard's stile is 202 mm long, the headboard's of the same section 780."""
    names = [[m.piece.name for m in gang.members] for gang in ganged(oak_bed())]

    assert ["H6", "F6"] in names


def test_no_more_are_kept_together_than_are_needed(oak_bed: Beds) -> None:
    """Bearer legs are 77 + 25 mm long: three and two kerfs make 312.4 mm, two would make 207."""
    legs = [gang for gang in ganged(oak_bed()) if gang.members[0].piece.part == "bearer leg"]

    assert [len(gang.members) for gang in legs] == [3, 3]
    assert strip_length(legs[0].members, 3.2) == pytest.approx(3 * 102 + 2 * 3.2)


def test_a_short_part_without_company_is_told_of(oak_bed: Beds) -> None:
    pieces = cut_list(oak_bed())
    (leg,) = (piece for piece in pieces if piece.part == "beam leg")

    assert lone_notes([leg], (), 400.0, "mm") == (
        "D3 is 300 mm long as sawn and has no company: mill it on the end of a longer piece, or "
        "by hand.",
    )
    assert lone_notes([leg], (), 300.0, "mm") == ()


def test_a_planer_that_takes_any_length_needs_no_company(oak_bed: Beds) -> None:
    assert ganged(oak_bed(shortest_milled=0.0)) == []
