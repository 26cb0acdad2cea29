"""A screw that comes through, or ends in the air, fails; of alike screws the worst is told."""

from __future__ import annotations

from typing import Any

from model.checks.fit.screws import screw_findings
from model.checks.record import Finding, Verdict
from model.part import Screw
from model.solids.screwing import ScrewPoint


def point(cover: float, **changes: Any) -> ScrewPoint:
    kind = changes.pop("kind", "wood screw 8")
    wanted = changes.pop("wanted", 3.0)
    screw = Screw(kind, (40.0, 19.0, 30.0), (0.0, 0.0, -1.0), 44.45, 4.17, "top_rail", wanted)
    needs = {
        "piece": 0, "name": "cleat", "rules": ("left.cleat", "left.top_rail"), "screw": screw,
        "into": 3, "bite": 14.45, "cover": cover, "has_walls": True,
    }  # fmt: skip
    return ScrewPoint(**(needs | changes))


def only(*points: ScrewPoint) -> Finding:
    (finding,) = screw_findings(points)
    return finding


def test_a_pocket_screw_through_the_show_face_fails() -> None:
    """1 1/4 in in 3/4 in stock suits; a stock that measures less lets the point out."""
    finding = only(point(0.0, kind="pocket screw"))

    assert finding.verdict is Verdict.FAILS
    assert finding.margin == -3


def test_too_little_wood_before_a_point_fails() -> None:
    assert only(point(2.9)).verdict is Verdict.FAILS
    assert only(point(3.0)).verdict is Verdict.HOLDS


def test_the_wood_that_is_wanted_is_the_limit() -> None:
    finding = only(point(0.5, wanted=0.4))

    assert (finding.value, finding.limit, finding.verdict) == (0.5, 0.4, Verdict.HOLDS)


def test_a_screw_that_ends_in_the_air_fails_however_far_it_is_from_a_face() -> None:
    assert only(point(50.0, into=-1)).verdict is Verdict.FAILS
    assert only(point(50.0, into=-1, wanted=0.0)).verdict is Verdict.FAILS


def test_a_screw_that_comes_out_at_the_side_fails() -> None:
    assert only(point(50.0, has_walls=False)).verdict is Verdict.FAILS
    assert only(point(50.0, has_walls=False, wanted=0.4)).verdict is Verdict.FAILS


def test_a_screw_into_the_very_first_piece_of_a_bed_is_a_screw_into_wood() -> None:
    finding = only(point(8.0, into=0))

    assert (finding.verdict, finding.value) == (Verdict.HOLDS, 8)


def test_of_alike_screws_the_worst_is_told() -> None:
    assert only(point(8.0), point(1.0), point(5.0)).value == 1
    assert only(point(8.0), point(50.0, into=-1)).verdict is Verdict.FAILS


def test_other_screws_and_other_parts_are_told_apart() -> None:
    points = [
        point(8.0),
        point(8.0, kind="pocket screw"),
        point(8.0, rules=("right.cleat", "right.top_rail")),
        point(8.0, rules=("slat_pieces", "left.cleat"), name="slat"),
    ]

    assert [finding.id for finding in screw_findings(points)] == [
        "left.screws_inside.cleat.wood_screw_8",
        "left.screws_inside.cleat.pocket_screw",
        "right.screws_inside.cleat.wood_screw_8",
        "screws_inside.slat_pieces.wood_screw_8",
    ]


def test_a_finding_says_which_screws_of_which_part() -> None:
    finding = only(point(8.0))

    assert (finding.title, finding.place) == ("No. 8 wood screws of the cleat stay inside", "left")
    assert "cleat" in finding.reason


def test_no_screws_no_findings() -> None:
    assert screw_findings([]) == ()
