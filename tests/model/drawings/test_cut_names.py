"""What is cut for which piece of the bed, on a real bed with layers and strips."""

import pytest

from model.bed import Bed, Design, solve
from model.drawings.cut_names import CutNames, cut_names


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(Design())


@pytest.fixture(scope="module")
def names(bed: Bed) -> CutNames:
    return cut_names(bed)


def test_every_wooden_piece_of_the_bed_is_cut_from_something(bed: Bed, names: CutNames) -> None:
    for mark in bed.marks:
        for piece in mark.pieces:
            own = names.of_bed_piece(piece)
            assert own, mark.mark
            assert {names.bed_piece(name) for name in own} == {piece}


def test_a_part_of_layers_is_cut_from_as_many_pieces(bed: Bed, names: CutNames) -> None:
    glued = [mark for mark in bed.marks if mark.layers > 1]
    assert glued, "the new bed has laminated posts"
    for mark in glued:
        of_first = names.of_bed_piece(mark.pieces[0])

        piece = names.pieces[f"{mark.mark}/1"]
        assert len(of_first) == piece.layers * piece.strips
        assert of_first[0] == f"{mark.mark}/1-1"


def test_no_name_is_given_twice(bed: Bed, names: CutNames) -> None:
    given = [n for mark in bed.marks for p in mark.pieces for n in names.of_bed_piece(p)]

    assert len(given) == len(set(given))
    assert len(given) == sum(piece.quantity for piece in names.pieces.values())


@pytest.mark.parametrize("name", ["", "Z9-1", "H1", "H1-x", "H1-99999"])
def test_what_no_piece_is_called_is_nobodys(names: CutNames, name: str) -> None:
    assert names.bed_piece(name) == -1


def test_a_note_says_both_sizes_of_solid_wood_and_one_of_sheets(names: CutNames) -> None:
    solid = next(each for each in names.pieces.values() if each.source is not None)
    flat = next(each for each in names.pieces.values() if each.source is None)

    said = names.told(f"{solid.name}-1", "mm")

    assert said.startswith(f"{solid.name}-1, {solid.part}\nsawn ")
    assert "\nmilled " in said
    assert "milled" not in names.told(f"{flat.name}-1", "mm")
