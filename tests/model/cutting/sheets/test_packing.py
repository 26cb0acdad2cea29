"""Small packings worked out by hand."""

from model.cutting.sheets.packing import (
    BEST_AREA,
    CROSSCUT,
    FIRST,
    FLUSH,
    LARGER,
    LONGER,
    RIP,
    SHORTER,
    Bin,
    Lot,
    Manner,
    pack,
)
from model.cutting.sheets.strips import pack_strips
from model.cutting.sheets.tree import trees
from tests.model.cutting.sheets.stacks import crosscut, leaf, rip

SHEET = Bin(0, ((100, 60),), 0)


def lot(*sizes: tuple[int, int, int], sheets: int = 1, turns: bool = False) -> Lot:
    ways = tuple(((x, y), (y, x)) if turns else ((x, y),) for x, y, _ in sizes)
    sides = [side for way in ways for each in way for side in each]
    return Lot([n for *_, n in sizes], (ways,), [SHEET] * sheets, (min(sides), min(sides)))


def test_runs_fill_a_sheet_to_the_last_piece() -> None:
    packed = pack(lot((25, 20, 12)), Manner((0,)))

    assert packed.is_whole and len(packed.opened) == 1


def test_pieces_lie_turned_only_where_they_may() -> None:
    upright = (20, 100, 3)

    assert not pack(lot(upright), Manner((0,))).is_whole
    assert pack(lot(upright, turns=True), Manner((0,))).is_whole


def test_what_finds_no_place_is_counted() -> None:
    packed = pack(lot((60, 40, 3), sheets=2), Manner((0,)), must=False)

    assert packed.unplaced == [1] and len(packed.opened) == 2


def test_a_rip_first_keeps_the_rest_long_and_a_crosscut_first_keeps_it_high() -> None:
    """Of 100 x 60, a rip at 60 x 30 leaves 100 x 30 above, a crosscut 40 x 60 beside it."""
    for beside, split, wrong in (((100, 30, 1), RIP, CROSSCUT), ((40, 60, 1), CROSSCUT, RIP)):
        asked = lot((60, 30, 1), beside)

        assert pack(asked, Manner((0, 1), split=split)).is_whole
        assert not pack(asked, Manner((0, 1), split=wrong)).is_whole


def test_splits_look_at_what_is_left() -> None:
    """Beside 60 x 50 of 100 x 60, 40 are left along and 10 up."""
    long_rest, high_rest = (100, 10, 1), (40, 60, 1)
    for split, beside in ((LONGER, long_rest), (SHORTER, high_rest), (LARGER, high_rest)):
        assert pack(lot((60, 50, 1), beside), Manner((0, 1), split=split)).is_whole


def test_the_snuggest_rest_is_taken_or_the_first_or_one_that_spares_a_cut() -> None:
    """After 50 x 40 there are rests of 50 x 40 (right) and 100 x 20 (above)."""
    for fit, size, is_above in (
        (BEST_AREA, (40, 15), True),  # both areas are 2000: the narrower gap decides
        (FIRST, (40, 15), False),
        (FLUSH, (40, 20), True),
    ):
        packed = pack(lot((50, 40, 1), (*size, 1)), Manner((0, 1), fit=fit))

        assert (packed.runs[0][6] in packed.runs) == is_above


def test_the_tree_of_a_packing_is_as_large_as_its_pieces_need() -> None:
    packed = pack(lot((40, 20, 2), (30, 10, 1)), Manner((0, 1)))

    grown = trees(packed, (40, 30))

    assert grown[0] == rip(crosscut(leaf(40, 20), leaf(40, 20)), leaf(30, 10, 1))


def test_strips_are_filled_before_a_new_one_is_ripped() -> None:
    packed = pack_strips(lot((40, 30, 2), (20, 20, 2)), Manner((0, 1), fit=FIRST))

    first = crosscut(leaf(40, 30), leaf(40, 30), leaf(20, 20, 1))
    assert trees(packed, (40, 20))[0] == rip(first, leaf(20, 20, 1))
