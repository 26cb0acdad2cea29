"""The worst that pieces bear is found among all their stations, joints and load cases."""

from __future__ import annotations

import numpy as np
import pytest

from model.structure.effects import KINDS_OF_EFFECT
from model.structure.record import Carried
from model.structure.spans import SAG_LIMITS
from tests.model.structure.frames_of_beds import DEMOS, demo


def carried(name: str) -> Carried:
    found = demo(name).bed.strength
    assert isinstance(found, Carried)
    return found


@pytest.mark.parametrize("name", DEMOS)
def test_what_is_listed_as_hardest_can_be_asked_for(name: str) -> None:
    """Roles without a kind of effect, such as beams that rest on nothing, are not listed."""
    found = carried(name).hardest

    listed = dict(found.items())

    assert len(listed) == len(found) > 10
    assert {kind for _, kind in listed} == set(KINDS_OF_EFFECT)
    assert ("post", "sag") not in found  # no post has a limit to its sag


@pytest.mark.parametrize("name", DEMOS)
def test_the_hardest_of_a_role_is_the_worst_of_its_pieces(name: str) -> None:
    loads = carried(name)

    for (role, kind), effect in loads.hardest.items():
        mine = loads.pieces[np.array(loads.roles) == role].tolist()
        uses = [e.use for piece in mine for e in loads.effects[piece] if e.kind == kind]
        assert effect.use == max(uses)
        assert effect.piece in mine


@pytest.mark.parametrize("name", DEMOS)
def test_a_piece_is_used_as_its_worst_of_bending_and_shear(name: str) -> None:
    loads = carried(name)

    for i, piece in enumerate(loads.pieces.tolist()):
        rows = slice(loads.first[i], loads.first[i + 1])
        stress = [e.use for e in loads.effects[piece] if e.kind in ("bending", "shear")]
        assert loads.use[:, rows].max() == pytest.approx(max(stress))


@pytest.mark.parametrize("name", DEMOS)
def test_effects_come_worst_first_and_say_where_and_when(name: str) -> None:
    loads = carried(name)

    for piece, effects in loads.effects.items():
        uses = [e.use for e in effects]
        assert uses == sorted(uses, reverse=True)
        for e in effects:
            assert e.piece == piece
            assert 0 <= e.at <= 2500 and 0 <= e.case < len(loads.cases)
            assert e.limit > 0 and np.isfinite(e.value) and e.source


@pytest.mark.parametrize("name", DEMOS)
def test_sag_is_judged_only_under_loads_that_lie_there(name: str) -> None:
    """Nobody minds how far a slat gives under a knee, as long as it holds."""
    loads = carried(name)

    sags = [(role, e) for (role, kind), e in loads.hardest.items() if kind == "sag"]

    assert sags
    for role, e in sags:
        assert loads.cases[e.case].key in SAG_LIMITS[role].cases
        assert e.source == SAG_LIMITS[role].source
