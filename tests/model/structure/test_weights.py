"""Everything that always lies on the bed arrives in its frame, once, and where it lies."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from model.mechanics.line_loads import EVERY, LineLoads
from model.structure.cases import situations
from model.structure.loading import GRAVITY, Loading
from model.structure.weights import put_drawers, put_hangers, put_weights
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo, usual


def own_weight(here: Worked) -> LineLoads:
    loading = Loading(here.frame)
    put_weights(loading, here.frame, here.bed.masses)
    return loading.line_loads()


def hangers(here: Worked) -> LineLoads:
    loading, bed = Loading(here.frame), here.bed
    put_hangers(loading, here.frame, bed.pieces, bed.proof.holding, here.host, bed.masses)
    return loading.line_loads()


def drawers(here: Worked) -> LineLoads:
    loading, bed = Loading(here.frame), here.bed
    contents = dict(bed["handling"].contents)
    put_drawers(loading, here.frame, bed.pieces, bed.masses, contents)
    return loading.line_loads()


def filled(here: Worked) -> dict[str, float]:
    """What each drawer of the bed weighs when it is full, kg."""
    bed, contents = here.bed, dict(here.bed["handling"].contents)
    wood = np.bincount(bed.pieces.group, bed.masses, minlength=len(bed.pieces.groups))
    named = zip(bed.pieces.groups, wood.tolist(), strict=True)
    return {name: mass + contents[name.partition("-")[0]] for name, mass in named if name}


@pytest.mark.parametrize("name", DEMOS)
def test_every_kilogram_of_bed_mattress_and_drawers_weighs_on_the_frame_once(name: str) -> None:
    here = demo(name)
    bed, loading = here.bed, Loading(here.frame)
    put_weights(loading, here.frame, bed.masses)
    put_hangers(loading, here.frame, bed.pieces, bed.proof.holding, here.host, bed.masses)
    if len(bed.pieces.groups) > 1:
        put_drawers(loading, here.frame, bed.pieces, bed.masses, dict(bed["handling"].contents))
    situations(here.frame, loading, bed.pieces, bed["handling"])

    loads = loading.line_loads()

    # the bed is held all its life: in every case
    total = here.on_bed(loads)[loads.case == EVERY].sum(axis=0)
    stored = sum(
        dict(bed["handling"].contents)[group.partition("-")[0]]
        for group in bed.pieces.groups
        if group
    )
    weight = (bed.masses.sum() + bed["mattress_mass"] + stored) * GRAVITY
    assert total == pytest.approx((0, 0, -weight), rel=1e-9, abs=1e-6)
    assert loading.always() == pytest.approx(weight)


@pytest.mark.parametrize("name", DEMOS)
def test_every_piece_of_the_frame_bears_its_own_weight(name: str) -> None:
    here = demo(name)

    found = here.down_on(own_weight(here))

    assert found == pytest.approx(here.bed.masses[here.bones.piece] * GRAVITY)


@pytest.mark.parametrize("fronts", ["slab", "frame and panel"])
def test_a_fixed_front_hangs_on_the_stiles_that_its_blocks_are_screwed_to(fronts: str) -> None:
    """No piece of the frame holds it: it weighs on what holds its blocks."""
    here = usual(right__side="dummy", front_style=fronts)
    bed = here.bed
    names = [rule.rpartition(".") for rule in bed.pieces.rules]
    fixed = [side == "right" and ("front" in name) for side, _, name in names]
    mass = bed.masses[np.array(fixed)[bed.pieces.rule] & (bed.pieces.group == 0)].sum()

    weighs = here.down_on(hangers(here))

    right = [i for i in here.bones.of_role("stile") if here.bounds(i)[0][0] > 0]
    assert mass > 4
    assert weighs[right].sum() == pytest.approx(mass * GRAVITY)


def test_a_cleat_hangs_on_its_rail_where_it_lies() -> None:
    here = demo("loft_single")
    loads = hangers(here)
    rails = here.bones.of_role("side rail")

    weighs = here.down_on(loads)

    rules = [rule.rpartition(".")[2] == "cleat" for rule in here.bed.pieces.rules]
    cleats = here.bed.masses[np.array(rules)[here.bed.pieces.rule]]
    assert len(cleats) == 2
    assert np.sort(weighs[rails]) == pytest.approx(np.sort(cleats) * GRAVITY)


SLIDES = (("side_mount_full", 2), ("wooden_runner", 2), ("centre_runner", 1))


@pytest.mark.parametrize("row", ["left", "foot"])
@pytest.mark.parametrize(("slide", "under_each"), SLIDES)
def test_every_drawer_weighs_on_bearers_of_its_own(slide: str, under_each: int, row: str) -> None:
    """Two drawers side by side on a middle stile: the bearer beside one is not the other's."""
    here = bed_with(row, slide)
    full = filled(here)

    weighs = here.down_on(drawers(here))

    bearers = here.bones.of_role("bearer")
    assert len(full) == 2
    assert len(bearers) == len(full) * under_each
    assert weighs[bearers] == pytest.approx(
        np.full(len(bearers), full[f"{row}-1"] * GRAVITY / under_each)
    )
    assert weighs.sum() == pytest.approx(weighs[bearers].sum())


def bed_with(row: str, slide: str) -> Worked:
    """Two drawers in one row and none elsewhere."""
    choices: dict[str, Any] = {"left__drawers": 0, "right__drawers": 0, "foot__drawers": 0}
    choices |= {"left__side": "plain", "right__side": "plain", "beam": "none"}
    if row == "left":
        choices["left__side"] = "drawer"
    return usual(**(choices | {f"{row}__drawers": 2, "slide": slide}))


def test_an_inset_drawer_leaves_its_neighbour_the_bearer_behind_the_middle_stile() -> None:
    """Its front is narrower than its opening: the next drawer's bearer stands 50 mm beside it."""
    here = usual(left__drawers=4, front_fit="inset", right__side="plain", beam="none")
    full = filled(here)

    weighs = here.down_on(drawers(here))[here.bones.of_role("bearer")]

    each = full["left-1"] * GRAVITY / 2
    assert weighs == pytest.approx(np.full(8, each))


def test_a_drawer_weighs_along_its_bearers_where_its_box_is() -> None:
    """From the bearer's joint with its stile, which the box reaches past, to the box's back."""
    here = usual(left__drawers=2, right__side="plain", beam="none")
    bed, loads = here.bed, drawers(here)
    wood = (bed.pieces.group == bed.pieces.groups.index("left-1")) & (bed.masses > 0)
    back = bed.pieces.bounds[1][wood, 0].max()
    frame, bearer = here.frame, int(here.bones.of_role("bearer")[0])
    outer = frame.frame.nodes[frame.first_node[bearer] : frame.first_node[bearer + 1], 0]

    members = frame.frame.members
    along = (loads.start + loads.end)[:, None] / 2 * members.axes[loads.member, 0]
    at = frame.frame.nodes[members.start[loads.member]] + along
    down = -here.on_bed(loads)[:, 2]

    assert outer.min() < back < outer.max()
    middle = (outer.min() + back) / 2
    assert (at[:, 0] * down).sum() / down.sum() == pytest.approx(middle)


def test_without_drawers_nothing_is_put() -> None:
    here = demo("loft_single")
    loading = Loading(here.frame)

    put_drawers(loading, here.frame, here.bed.pieces, here.bed.masses, {"left": 30.0})

    assert loading.always() == 0
