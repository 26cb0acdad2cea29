"""Load cases: which there are for a bed, what each puts on it, and where."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from model.bed import Bed, solve
from model.dimensions.loads import Handling
from model.mechanics.line_loads import EVERY
from model.structure import cases
from model.structure.cases import Situations, situations
from model.structure.joints import FRICTION, STANDS
from model.structure.loading import GRAVITY, Loading
from model.structure.record import Carried
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo, design, usual, worked

QUEEN = "painted_storage_queen"


def handling(here: Worked) -> Handling:
    return here.bed["handling"]


def listed(here: Worked) -> Situations:
    """All load cases of a bed whose own weight is left out."""
    return situations(here.frame, Loading(here.frame), here.bed.pieces, handling(here))


def put(found: Situations, here: Worked) -> np.ndarray:
    """What each load case adds to the bed at rest: (c, 3), N."""
    loads = found.loading.line_loads()
    force = here.on_bed(loads)
    return np.array([force[loads.case == case].sum(axis=0) for case in range(len(found.listed))])


def keys(here: Worked) -> list[str]:
    return [each.case.key for each in listed(here).listed]


def of_key(here: Worked, key: str) -> np.ndarray:
    """What the load cases of a key put on the bed: (k, 3), N."""
    found = listed(here)
    return put(found, here)[[each.case.key == key for each in found.listed]]


ALWAYS = {"rest", "lying", "kneel", "edge", "sit", "push along", "push across", "lift", "drag",
          "drop"}  # fmt: skip


@pytest.mark.parametrize("name", DEMOS)
def test_every_bed_is_tried_in_every_way(name: str) -> None:
    found = keys(demo(name))

    assert set(found) == ALWAYS | {"lean"}
    assert (found[0], found[-1]) == ("rest", "drop")  # the others are told against the first
    for key, times in {"edge": 2, "sit": 10, "lift": 4, "drag": 2, "drop": 1, "lean": 1}.items():
        assert found.count(key) == times, key


@pytest.mark.parametrize("name", DEMOS)
def test_no_two_load_cases_are_called_alike(name: str) -> None:
    """A panel is knelt on at two places on each side: the title must tell which."""
    titles = [each.case.title for each in listed(demo(name)).listed]

    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("name", DEMOS)
def test_a_load_is_published_or_names_what_the_maker_can_change(name: str) -> None:
    for each in listed(demo(name)).listed[:-1]:  # the drop is filled in when its force is known
        assert bool(each.case.source) != bool(each.case.choices), each.case.title
        assert each.case.reason.endswith(".")


@pytest.mark.parametrize(
    "choices",
    [
        {"head__style": "none"},
        {"head__style": "none", "lean_height": 100.0},
        {"head__style": "low rail", "lean_height": 100.0},  # below the mattress's top
        {"lean_force": 0.0},
    ],
)
def test_nobody_leans_on_a_headboard_that_is_not_there(choices: dict[str, Any]) -> None:
    assert "lean" not in keys(usual(**choices))


@pytest.mark.parametrize(
    ("choices", "missing"),
    [
        ({"push_force": 0.0}, {"push along", "push across"}),
        ({"lift_height": 0.0}, {"lift"}),
        ({"drag_share": 0.0}, {"drag"}),
    ],
)
def test_what_the_maker_rules_out_is_not_tried(choices: dict[str, Any], missing: set[str]) -> None:
    assert ALWAYS - set(keys(usual(**choices))) == missing


@pytest.mark.parametrize(
    ("here", "count"), [(lambda: demo("loft_single"), 1), (lambda: usual(sleepers=1), 1),
                        (lambda: demo(QUEEN), 3)],
)  # fmt: skip
def test_one_side_only_is_tried_where_two_lie(here: Any, count: int) -> None:
    assert keys(here()).count("lying") == count


# ------------------------------------------------------------ forces


def test_kneeling_sitting_and_the_edge_load_as_published() -> None:
    """EN 1725:1998: 1400 N where the base is weakest, 1200 N twice on the edge."""
    here = demo(QUEEN)

    assert of_key(here, "kneel") == pytest.approx(np.tile((0, 0, -1400.0), (10, 1)))
    assert of_key(here, "edge") == pytest.approx(np.tile((0, 0, -2400.0), (2, 1)))
    assert of_key(here, "sit") == pytest.approx(np.tile((0, 0, -1200.0), (10, 1)))


def test_who_weighs_more_than_the_test_load_sits_down_with_all_of_it() -> None:
    here = usual(second_sleeper=150.0)

    assert of_key(here, "sit")[:, 2] == pytest.approx(np.full(10, -150 * 9.80665))


def test_sleepers_lie_with_all_their_weight_together_and_each_alone() -> None:
    here = usual(first_sleeper=90.0, second_sleeper=60.0)

    down = -of_key(here, "lying")[:, 2] / 9.80665

    assert down == pytest.approx([150, 90, 60])


def test_each_sleeper_lies_on_his_own_side() -> None:
    here = demo(QUEEN)
    found = listed(here)
    loads = found.loading.line_loads()
    members = here.frame.frame.members
    middle = (loads.start + loads.end)[:, None] / 2 * members.axes[loads.member, 0]
    x = (here.frame.frame.nodes[members.start[loads.member]] + middle)[:, 0]
    titles = [each.case.title for each in found.listed]

    left, right = (titles.index(f"Only the sleeper on the {s} lying") for s in ("left", "right"))

    assert x[loads.case == left].max() < 0 < x[loads.case == right].min()


def test_leaning_pushing_and_dragging_load_as_chosen() -> None:
    here = usual(lean_force=150.0, push_force=250.0, drag_share=0.3)

    assert of_key(here, "lean") == pytest.approx(np.array([(0, 300.0, 0)]))  # two lean
    assert of_key(here, "push along") == pytest.approx(np.array([(0, 250.0, 0)]))
    assert of_key(here, "push across") == pytest.approx(np.array([(250.0, 0, 0)]))
    pull = 0.3 * here.bed["mattress_mass"] * 9.80665  # here only the mattress weighs
    assert of_key(here, "drag") == pytest.approx(np.array([(0, -pull, 0), (-pull, 0, 0)]))


def test_only_the_mattress_weighs_when_nobody_is_in_bed() -> None:
    here = demo(QUEEN)
    found = listed(here)

    loads = found.loading.line_loads()

    assert put(found, here)[0] == pytest.approx(np.zeros(3))
    always = here.on_bed(loads)[loads.case == EVERY].sum(axis=0)
    # 15 kg/m2 on 1.524 x 2.032 m
    assert always == pytest.approx((0, 0, -15 * 1.524 * 2.032 * GRAVITY))


RAISED = {
    "first_sleeper": (120.0, {"lying"}),  # 1177 N: to sit down a test asks for more
    "second_sleeper": (140.0, {"lying", "sit"}),
    "sleepers": (1, {"lying", "lean"}),
    "mattress_weight": (30.0, {"drag"}),  # and the bed at rest
    "lean_force": (400.0, {"lean"}),
    "push_force": (500.0, {"push along", "push across"}),
    "drag_share": (0.8, {"drag"}),
}


@pytest.mark.parametrize("name", RAISED)
def test_a_choice_changes_its_own_cases_and_those_name_it(name: str) -> None:
    before, (value, expected) = usual(), RAISED[name]

    after = usual(**{name: value})

    moved = {key for key in ALWAYS | {"lean"} if of_key(before, key).tolist() !=
             of_key(after, key).tolist()}  # fmt: skip
    assert moved == expected
    named = {each.case.key for each in listed(before).listed if name in each.case.choices}
    # who sleeps alone leans alone, but what each leans with is another choice
    assert expected <= named | ({"lean"} if name == "sleepers" else set())


def test_one_foot_at_a_time_is_raised_by_the_height_chosen() -> None:
    here = usual(lift_height=40.0)
    found, joints = listed(here), here.joints

    raised = found.raised

    rows = [i for i, each in enumerate(found.listed) if each.case.key == "lift"]
    feet = []
    for case in rows:
        (joint,), way = np.nonzero(raised[:, :, case])[0], np.nonzero(raised[:, :, case])[1]
        assert (raised[joint, 2, case], way.tolist()) == (40.0, [2])
        assert joints.kind[joint] == STANDS
        feet.append(tuple(np.sign(joints.at[joint, :2] - [0, 1000])))
    assert sorted(feet) == [(-1, -1), (-1, 1), (1, -1), (1, 1)]
    assert not np.delete(raised, rows, axis=2).any()


def test_a_lifted_corner_is_named_as_seen_from_the_foot() -> None:
    here = usual()
    found = listed(here)

    for case, each in enumerate(found.listed):
        if each.case.key == "lift":
            (joint,) = np.nonzero(found.raised[:, 2, case])[0]
            x, y, _ = here.joints.at[joint]
            where = f"{'foot' if y < 1000 else 'head'} {'left' if x < 0 else 'right'}"
            assert each.case.title == f"Lifted at the {where} corner"


def test_the_foot_that_is_pulled_does_not_stick_to_the_floor() -> None:
    here = demo(QUEEN)
    found = listed(here)

    out = found.released

    for case, each in enumerate(found.listed):
        joints = np.flatnonzero(out[:, case])
        if each.case.key == "drag":
            (joint,) = joints
            assert here.joints.kind[joint] == FRICTION
            assert here.joints.at[joint, 0] < 0 and here.joints.at[joint, 1] < 100
        else:
            assert not len(joints)


# ------------------------------------------------------------ the worst place


def worst(bed: Bed) -> float:
    """How hard slats are bent where it is knelt on the worst of them."""
    found = bed.strength
    assert isinstance(found, Carried)
    kneeling = [i for i, case in enumerate(found.cases) if case.key == "kneel"]
    slats = np.array(found.roles)[found.station_piece] == "slat"
    return float(found.use[kneeling][:, slats].max())


@pytest.mark.parametrize(
    ("name", "choices"),
    [
        (QUEEN, {}), ("loft_single", {}), ("guest_room_double", {}), (QUEEN, {"beam": "none"}),
        (QUEEN, {"beam": "legs", "beam_legs": 1}), ("loft_single", {"slat_fixing": "strap"}),
        ("loft_single", {"slat_width": 60.0, "slat_gap_most": 30.0}),
    ],
)  # fmt: skip
def test_the_worst_slat_is_among_those_that_are_knelt_on(
    name: str, choices: dict[str, Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Kneeling on every slat works none harder than by a fiftieth."""
    some = worst(solve(design(name, **choices)))
    monkeypatch.setattr(cases, "KNELT_ON", 99)

    every = worst(solve(design(name, **choices)))

    assert every / 1.02 <= some <= every * (1 + 1e-9)


def test_kneeling_everywhere_kneels_on_every_slat(monkeypatch: pytest.MonkeyPatch) -> None:
    here = worked(solve(design("loft_single")))
    monkeypatch.setattr(cases, "KNELT_ON", 99)

    on = {each.deck_piece for each in listed(here).listed if each.case.key == "kneel"}

    assert on == set(here.bones.of_role("slat").tolist())
