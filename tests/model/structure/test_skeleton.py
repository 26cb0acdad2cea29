"""The pieces that carry, as straight lines with the figures of their wood."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from model.bed import Design, solve
from model.errors import BadInput
from model.materials import OwnRows, wood
from model.structure.skeleton import ROLES, skeleton
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo


@pytest.mark.parametrize("name", DEMOS)
def test_all_pieces_of_a_role_and_no_others_are_in_the_frame(name: str) -> None:
    here = demo(name)
    pieces, bones = here.bed.pieces, here.bones
    names = [pieces.rules[rule].rpartition(".")[2] for rule in pieces.rule.tolist()]

    assert bones.piece.tolist() == [i for i, each in enumerate(names) if each in ROLES]
    assert list(bones.role) == [ROLES[names[i]] for i in bones.piece]
    assert bones.host[bones.piece].tolist() == list(range(len(bones.piece)))
    assert (np.delete(bones.host, bones.piece) == -1).all()


def test_a_bed_of_slats_has_two_rails_four_posts_and_its_slats() -> None:
    bones = demo("loft_single").bones

    count = {role: len(bones.of_role(role)) for role in set(bones.role)}

    assert count == {"slat": 15, "side rail": 2, "post": 4, "end rail": 3}
    assert len(bones.of_role("slat", "post")) == 19


@pytest.mark.parametrize("name", DEMOS)
def test_a_piece_runs_through_the_middle_of_its_stock_from_end_to_end(name: str) -> None:
    """Of its whole stock: what joints cut away is left out of sight here."""
    here = demo(name)
    bones = here.bones

    for i in range(len(bones.piece)):
        low, high = here.bounds(i)
        ends = bones.start[i] + np.outer([0, bones.size[i, 0]], bones.axes[i, 0])
        along = int(np.abs(bones.axes[i, 0]).argmax())
        across = [axis for axis in range(3) if axis != along]
        assert (ends.min(axis=0)[along], ends.max(axis=0)[along]) == pytest.approx(
            (low[along], high[along])
        )
        # a tenon or a rabbet shortens what is left of a piece beside its axis
        assert (ends[:, across] > low[across]).all() and (ends[:, across] < high[across]).all()
        assert np.linalg.det(bones.axes[i]) == pytest.approx(1)
        assert sorted(np.abs(bones.axes[i].T @ bones.size[i])) == pytest.approx(
            sorted(bones.size[i])
        )


def figures(here: Worked, role: str) -> tuple[float, ...]:
    i = int(here.bones.of_role(role)[0])
    bones = here.bones
    return bones.moe[i], bones.density[i], bones.bending[i], bones.shear[i]


def test_solid_wood_has_the_figures_of_the_handbook() -> None:
    """Yellow-poplar: E 10 900 MPa at 12 % (Wood Handbook 2021 (FPL-GTR-282), table 5-3)."""
    moe, density, bending, shear = figures(demo("painted_storage_queen"), "slat")

    assert (moe, density) == (10900, 470)
    assert 10 < bending < 30 and 2 < shear < 5


def test_sheet_goods_are_judged_as_sheet_goods() -> None:
    here = demo("split_king_foot_drawers")
    kinds = dict(zip(here.bones.role, here.bones.product, strict=True))

    assert (kinds["deck panel"], kinds["deck batten"]) == ("plywood", "solid")


def test_a_sections_figures_are_those_of_rectangles() -> None:
    """A slat of 89 x 20: A 1780 mm2; b h^3 / 12 flat 59 333, on edge 1 174 948 mm4; torsion
    b h^3 (1/3 - 0.21 h / b) = 203 730 mm4 within half a percent.
    """
    bones = demo("loft_single").bones
    i = bones.of_role("slat")[0]

    area, flat, on_edge, torsion = (each[i] for each in bones.inertia)

    assert (area, flat, on_edge) == pytest.approx((1780, 59333.3, 1174948.3), rel=1e-5)
    assert torsion == pytest.approx(203730, rel=5e-3)


def test_a_part_across_its_grain_is_as_soft_as_its_sheet_is_there() -> None:
    here = demo("split_king_foot_drawers")
    pieces = here.bed.pieces
    turned = replace(
        pieces,
        parts=tuple(
            replace(part, grain="width") if part.name == "deck panel" else part
            for part in pieces.parts
        ),
    )

    bones = skeleton(turned, "clear", here.bed.design.own)

    panel = bones.of_role("deck panel")[0]
    assert bones.moe[panel] < here.bones.moe[panel]
    assert bones.bending[panel] < here.bones.bending[panel]


@pytest.mark.parametrize(("figure", "said"), [("moe_mpa", "moe"), ("mor_mpa", "bending")])
def test_a_wood_without_a_figure_names_the_member_that_is_made_of_it(
    figure: str, said: str
) -> None:
    mine = replace(wood("yellow_poplar"), key="mine", name="My own wood", **{figure: 0.0})
    own = OwnRows(species=(mine,))
    bed = solve(Design(own=own).with_choices({"slat_wood": "mine"}))

    with pytest.raises(BadInput) as caught:
        skeleton(bed.pieces, "clear", own)

    assert caught.value.sentence.startswith("The slat cannot be judged: ")
    assert said in caught.value.sentence and "My own wood" in caught.value.sentence
