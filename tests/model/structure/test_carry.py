"""What a bed bears follows its wood, its sizes and its loads; what cannot be told is said."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict
from model.errors import BadInput
from model.materials import OwnRows, wood
from model.structure import carry
from model.structure.contacts import contacts
from model.structure.joints import KNOCK_DOWN, Contacts
from model.structure.record import Carried, Unjudged
from tests.model.structure.frames_of_beds import DEMOS, demo, design

QUEEN = "painted_storage_queen"


@cache
def _bed(name: str, choices: tuple[tuple[str, Any], ...]) -> Bed:
    return solve(design(name, **dict(choices)))


def bed(name: str, **choices: Any) -> Bed:
    """A bed that comes with the program, with some choices changed."""
    return _bed(name, tuple(choices.items()))


def carried(name: str, **choices: Any) -> Carried:
    found = bed(name, **choices).strength
    assert isinstance(found, Carried)
    return found


def finding(of: Bed, name: str) -> Finding:
    """What the check with this id says; ids end in a dot and a place where there are several."""
    (found,) = (each for each in of.findings if each.id == name)
    return found


@pytest.mark.parametrize("name", DEMOS)
def test_every_figure_of_a_bed_is_finite(name: str) -> None:
    found = carried(name)

    assert np.isfinite(found.moved).all() and np.isfinite(found.sag).all()
    assert (found.use >= 0).all() and np.isfinite(found.use).all()
    assert np.isfinite(found.joints.force).all()
    assert len(found.at) == found.first[-1] == found.use.shape[1]


@pytest.mark.parametrize("name", DEMOS)
def test_stations_and_joints_are_told_in_pieces_of_the_bed(name: str) -> None:
    here, found = demo(name), carried(name)

    assert found.pieces.tolist() == here.bones.piece.tolist()
    assert set(found.joints.pieces[:, 0]) <= set(found.pieces.tolist())
    assert set(found.joints.pieces[:, 1]) <= {*found.pieces.tolist(), -1}
    low, high = here.bed.pieces.bounds
    piece = found.pieces[found.station_piece]
    assert (found.point >= low[piece] - 1e-6).all() and (found.point <= high[piece] + 1e-6).all()


def test_what_rests_is_pressed_by_its_joints_force_over_the_wood_that_meets() -> None:
    """And may be pressed as the softer of the two: beech slats on poplar cleats as poplar."""
    here, found = demo(QUEEN), carried(QUEEN)
    effect = found.hardest["slat", "bearing"]

    rows = np.flatnonzero(found.joints.pieces[:, 0] == effect.piece)
    press = found.joints.force[:, rows, 2] / here.joints.area[rows]

    assert effect.value == pytest.approx(press.max())


def test_a_soft_cleat_is_crushed_under_a_hard_slat() -> None:
    hard, soft = (
        carried(QUEEN, slat_wood=w, frame_wood="yellow_poplar").hardest["slat", "bearing"]
        for w in ("european_beech", "yellow_poplar")
    )

    assert hard.limit == pytest.approx(soft.limit)  # the cleat's poplar gives first


# ------------------------------------------------------------ behaviour


def test_without_its_centre_beam_a_queens_slats_break() -> None:
    """19 mm poplar over 1.5 m: the beam halves the span, and more than halves the stress."""
    with_beam, without = bed(QUEEN), bed(QUEEN, beam="none")

    before, after = (finding(each, "slats_bear") for each in (with_beam, without))

    assert before.verdict in (Verdict.HOLDS, Verdict.TIGHT)
    assert after.verdict is Verdict.FAILS
    assert 1.8 < after.value / before.value < 3  # PL/4 of twice the span to 13/64 PL: 2.5
    assert finding(without, "slats_sag").verdict is Verdict.FAILS


def bending(found: Carried, key: str, role: str) -> float:
    """The greatest share of their strength that pieces of a role use in cases of a key."""
    rows = np.array(found.roles)[found.station_piece] == role
    cases = [i for i, case in enumerate(found.cases) if case.key == key]
    return float(found.use[cases][:, rows].max())


def test_slats_half_as_thick_again_bear_two_and_a_quarter_times_as_much() -> None:
    """Stress goes with 1 / h^2."""
    thin, thick = (carried("loft_single", slat_stock=h) for h in (20.0, 30.0))

    ratio = bending(thin, "kneel", "slat") / bending(thick, "kneel", "slat")

    # their screws sit half of h under their middle and hold them back a little
    assert ratio == pytest.approx(1.5**2, rel=0.03)


def test_slats_half_as_thick_again_sag_a_third_as_much() -> None:
    """Sag goes with 1 / h^3: 3.4; the rails below them sag as before."""
    thin, thick = (
        carried("loft_single", slat_stock=h).hardest["slat", "sag"].value for h in (20.0, 30.0)
    )

    assert thin / thick == pytest.approx(1.5**3, rel=0.03)


def test_a_heavier_sleeper_bends_the_bed_in_proportion() -> None:
    """What lies there for good apart: it is in every case."""
    light, heavy = (carried("loft_single", first_sleeper=m) for m in (80.0, 160.0))

    adds = [each.moved[1] - each.moved[0] for each in (light, heavy)]

    assert light.cases[1].key == heavy.cases[1].key == "lying"
    assert light.moved[0] == pytest.approx(heavy.moved[0])
    assert np.abs(adds[0][:, 2]).max() > 1
    assert adds[1] == pytest.approx(2 * adds[0], abs=1e-6)


def test_stiffer_wood_sags_less_and_is_no_less_strong() -> None:
    poplar, maple = (carried("loft_single", slat_wood=w) for w in ("yellow_poplar", "sugar_maple"))

    ratio = poplar.hardest["slat", "sag"].value / maple.hardest["slat", "sag"].value

    assert ratio == pytest.approx(12600 / 10900, rel=0.02)  # table 5-3
    assert bending(maple, "kneel", "slat") < bending(poplar, "kneel", "slat")


def test_a_bed_mirrored_bears_the_same_on_the_other_side() -> None:
    """Left and right of the queen are alike, and so is what they bear."""
    found = carried(QUEEN)
    titles = [case.title for case in found.cases]
    left, right = (
        found.use[titles.index(f"Two sitting on the {s} edge")] for s in ("left", "right")
    )

    mirrored = found.point * [-1, 1, 1]
    for x, use in zip(mirrored, left, strict=True):
        twin = np.abs(found.point - x).max(axis=1) < 1e-6
        assert twin.any()
        assert np.abs(right[twin] - use).min() < 1e-6


# ------------------------------------------------------------ what cannot be told


@pytest.mark.parametrize("figure", ["moe_mpa", "mor_mpa"])
def test_a_wood_without_a_figure_leaves_the_bed_unjudged(figure: str) -> None:
    mine = replace(wood("yellow_poplar"), key="mine", name="My own wood", **{figure: 0.0})
    made = solve(Design(own=OwnRows(species=(mine,))).with_choices({"frame_wood": "mine"}))

    found = made.strength

    assert isinstance(found, Unjudged)
    assert "rail cannot be judged: My own wood" in found.sentence or "post cannot" in found.sentence
    told = finding(made, "frame_judged")
    assert (told.verdict, told.reason) == (Verdict.FAILS, found.sentence)
    assert not {"slats_bear", "rails_bear"} & {each.id for each in made.findings}


def test_a_side_that_nothing_holds_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    def unhooked(*needs: Any) -> Contacts:
        found = contacts(*needs)
        return found.only(found.kind != KNOCK_DOWN)

    made = solve(design("loft_single"))
    monkeypatch.setattr(carry, "contacts", unhooked)

    found = made.strength

    assert isinstance(found, Unjudged)
    label = made.pieces.labels[found.piece]
    assert found.sentence.startswith(f"The {label} is held by nothing that keeps it from moving:")
    assert "side" in label or "slat" in label


@pytest.mark.parametrize(
    ("choice", "value"),
    [
        ("first_sleeper", 0), ("first_sleeper", -80), ("second_sleeper", 5000),
        ("second_sleeper", float("nan")), ("mattress_weight", 0), ("drawer_fill", 1e9),
        ("drag_share", float("inf")), ("lift_height", -1), ("mattress_gives", 5000),
        ("sleepers", 0),
    ],
)  # fmt: skip
def test_absurd_weights_are_refused_with_a_sentence(choice: str, value: float) -> None:
    with pytest.raises(BadInput) as caught:
        Design().with_choices({choice: value})

    assert caught.value.field == choice
    assert caught.value.sentence.endswith(".") and len(caught.value.sentence) > 20
