"""Dropping onto the bed presses as hard as bed and mattress let it."""

from __future__ import annotations

import re
from math import sqrt

import numpy as np
import pytest

from model.bed import solve
from model.structure.drop import fall_factor
from model.structure.record import Carried
from tests.model.structure.frames_of_beds import design

KG_25 = 25 * 9.80665  # N


def test_25_kg_falling_180_mm_on_a_bed_that_gives_5_mm_press_nearly_ten_times() -> None:
    """1 + sqrt(1 + 2 x 180 / 5) = 1 + sqrt(73) = 9.544; 245.2 N x 9.544 = 2340 N."""
    assert fall_factor(180.0, 5.0) == pytest.approx(9.544, abs=5e-4)
    assert KG_25 * fall_factor(180.0, 5.0) == pytest.approx(2340, abs=0.5)


def test_what_is_let_go_without_a_fall_presses_twice() -> None:
    """Textbooks on strength of materials: a load suddenly applied."""
    assert fall_factor(0.0, 3.0) == 2


def test_the_fall_is_stopped_within_what_the_spring_gives() -> None:
    """Energy: m g (h + s) = 1/2 k s^2 with k = m g / d and s = factor x d."""
    for drop, sag in ((180.0, 5.0), (180.0, 40.0), (20.0, 0.5)):
        stop = fall_factor(drop, sag) * sag
        assert drop + stop == pytest.approx(stop**2 / sag / 2)


def loft(gives: float) -> Carried:
    found = solve(design("loft_single", mattress_gives=gives)).strength
    assert isinstance(found, Carried)
    return found


def force_of(found: Carried) -> float:
    """What the drop presses with, as it is told, N."""
    told = re.search(r"press with (\d+) N", found.cases[-1].reason)
    assert told is not None
    return float(told.group(1))


def slat_rows(found: Carried, case: int) -> tuple[slice, int]:
    """Stations of the slat that is knelt on in a case."""
    order = int(re.findall(r"slat (\d+) from the foot", found.cases[case].title)[0])
    i = np.flatnonzero(np.array(found.roles) == "slat")[order - 1]
    return slice(int(found.first[i]), int(found.first[i + 1])), int(i)


def knelt_beneath(found: Carried) -> int:
    """The kneeling load case on the slat that is dropped onto."""
    slat = found.cases[-1].title.removeprefix("Dropping onto ")
    return [case.title for case in found.cases].index(f"Kneeling on {slat}")


@pytest.mark.parametrize("gives", [0.0, 20.0])
def test_a_drop_by_hand(gives: float) -> None:
    """Under 25 kg at rest the bed gives 245.2 / 1400 of what it gives under a knee; a mattress of
    180 mm spreads the blow over 200 + 180 mm, of which the slat takes 200, and gives by itself.
    """
    found = loft(gives)
    knee = knelt_beneath(found)
    rows, _ = slat_rows(found, knee)
    down = found.moved[0, rows, 2] - found.moved[knee, rows, 2]
    share = 200 / 380 if gives else 1.0

    sag = down.max() * KG_25 / 1400 * share + gives
    force = KG_25 * (1 + sqrt(1 + 360 / sag))

    assert force_of(found) == pytest.approx(force, abs=0.51)  # told to a newton
    dropped = found.moved[0, rows, 2] - found.moved[-1, rows, 2]
    assert dropped == pytest.approx(force / 1400 * share * down, rel=1e-6)


def test_a_mattress_breaks_the_fall() -> None:
    bare, soft = loft(0.0), loft(20.0)

    assert force_of(bare) > 1.2 * force_of(soft)
    assert bare.use[-1].max() > 2 * soft.use[-1].max()


def test_the_drop_lands_where_kneeling_bends_most() -> None:
    found = loft(20.0)
    kneeling = [i for i, case in enumerate(found.cases) if case.key == "kneel"]
    rows = np.array(found.roles)[found.station_piece] == "slat"

    hardest = max(kneeling, key=lambda case: found.use[case, rows].max())

    assert hardest == knelt_beneath(found)
    assert found.cases[-1].time == "impact"
    assert found.cases[-1].choices == ("mattress_gives",)
