"""Cuts and holes gathered as a maker does them, in the trade's words."""

from __future__ import annotations

from model.drawings.part_sheet.work import part_work
from model.joints.dado import dado
from model.joints.groove import groove, middle_groove
from model.joints.rabbet import rabbet
from model.joints.tenon import mortise, tenon
from model.joints.tongue import tongue
from model.part import Face, Hole, Part
from tests.model.drawings.part_sheet.samples import MM, part

SIZE = (800.0, 100.0, 24.0)


def words(sample: Part) -> list[str]:
    return [group.words for group in part_work(sample, MM).groups]


def board(*cuts: object, holes: tuple[Hole, ...] = ()) -> Part:
    return part(*SIZE, cuts=cuts, holes=holes)


def hole(kind: str, at: tuple[float, float, float], diameter: float, depth: float) -> Hole:
    return Hole(kind, Face.FACE, at, (0.0, 0.0, -1.0), diameter, depth)


def test_a_groove_from_end_to_end() -> None:
    cut = groove(SIZE, Face.FACE, between=(10, 16), depth=6)

    assert words(board(cut)) == ["groove 6 wide, 6 deep, full length"]


def test_grooves_alike_in_both_edges_are_told_once() -> None:
    cuts = (middle_groove(SIZE, edge, width=6, depth=10) for edge in (Face.LOWER, Face.UPPER))

    assert words(board(*cuts)) == ["groove 6 wide, 10 deep, full length, both edges"]


def test_a_groove_that_stops_is_told_from_the_end_it_begins_at() -> None:
    cut = middle_groove(SIZE, Face.UPPER, width=6, depth=10, along=(0, 300))

    assert words(board(cut)) == ["groove 6 wide, 10 deep, 300 long from the near end"]


def test_mortises_of_one_size_are_counted() -> None:
    cuts = (
        mortise(SIZE, Face.UPPER, depth=25, along=(x, x + 60), across=(8, 16)) for x in (100, 500)
    )

    assert words(board(*cuts)) == ["2 × mortise 60 × 8, 25 deep"]


def test_rabbets_at_both_ends_are_told_once() -> None:
    ends = (rabbet(SIZE, Face.BACK, end, width=12, depth=6) for end in (Face.NEAR, Face.FAR))

    assert words(board(*ends)) == ["rabbet 12 wide, 6 deep, both ends"]


def test_a_rabbet_along_an_edge_is_told_as_on_its_broad_side() -> None:
    # 8 into the face, 19 in from the edge: one and the same step, sawn from either side.
    from_face = rabbet(SIZE, Face.FACE, Face.LOWER, width=19, depth=8)
    from_edge = rabbet(SIZE, Face.LOWER, Face.FACE, width=8, depth=19)

    assert words(board(from_face)) == ["rabbet 19 wide, 8 deep, lower edge"]
    assert words(board(from_edge)) == ["rabbet 19 wide on the face, 8 deep, lower edge"]


def test_a_dado_runs_across() -> None:
    assert words(board(dado(SIZE, Face.FACE, between=(200, 212), depth=6))) == [
        "dado 12 wide, 6 deep, full width"
    ]


def test_a_counterbore_and_its_bolt_hole_are_one_note() -> None:
    bores = tuple(
        each
        for x in (50.0, 700.0)
        for each in (hole("counterbore", (x, 50, 24), 16, 8), hole("bolt hole", (x, 50, 16), 7, 16))
    )

    told = words(board(holes=bores))

    assert told == ["2 × counterbore ⌀ 16, 8 deep, bolt hole ⌀ 7 through"]


def test_a_drill_is_told_as_it_is_sold() -> None:
    # 4.37 mm is the hole for a screw of No. 8; bits come by halves of a millimetre
    assert words(board(holes=(hole("shank hole", (50, 50, 24), 4.37, 24),))) == [
        "shank hole ⌀ 4.5 through"
    ]


def test_cheeks_and_shoulders_make_a_tenon() -> None:
    cuts = tenon(SIZE, Face.NEAR, length=30, thickness=8, lower=10, upper=20)

    stub = part_work(board(*cuts), MM).stubs[0]

    assert (stub.kind, stub.face, stub.length) == ("tenon", Face.NEAR, 30)
    assert stub.width == (10, 80)
    assert stub.thickness == (8, 16)


def test_rabbets_along_an_edge_make_a_tongue() -> None:
    stub = part_work(board(*tongue(SIZE, Face.UPPER, length=7, thickness=8)), MM).stubs[0]

    assert (stub.kind, stub.face, stub.length, stub.thickness) == (
        "tongue", Face.UPPER, 7, (8, 16),
    )  # fmt: skip
