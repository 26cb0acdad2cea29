"""Somebody drops onto the bed: the load of a fall as the bed itself decides it.

The energy of the fall goes into bending the bed and pressing the mattress: the softer they are, the
smaller the force. A mattress also spreads the blow; without one (it gives nothing) the force is an
upper bound.
"""

from __future__ import annotations

import math

import numpy as np

from model.dimensions.loads import Handling
from model.materials import PublishedLoad, published_load
from model.structure.cases import Situation
from model.structure.loading import GRAVITY
from model.structure.record import Case
from model.structure.stations import Response, Stations
from model.units import Mm

_STIFFEST: Mm = 0.1  # no bed gives less under 25 kg


def fall_factor(drop: Mm, sag: Mm) -> float:
    """How many times its weight a mass presses that falls on a spring: 1 + sqrt(1 + 2 h / d).

    `drop` is the height, `sag` how far the spring gives under the mass at rest, mm, above zero.
    Source: conservation of energy in an elastic spring; textbooks on strength of materials
    """
    return 1 + math.sqrt(1 + 2 * drop / sag)


def with_drop(
    here: Stations, listed: tuple[Situation, ...], answer: Response, handling: Handling
) -> tuple[Case, ...]:
    """The load cases, the last of them the drop: onto the slat that kneeling bends most.

    Its column in `answer`, which holds the bed at rest so far, is filled in here: the frame is
    elastic, so that what kneeling adds only has to be made larger.
    """
    cases = tuple(each.case for each in listed)
    kneeling = [i for i, each in enumerate(listed) if each.case.key == "kneel"]
    if not kneeling:
        return cases
    worst = max(kneeling, key=lambda i: _bent(here, listed[i].deck_piece, answer, i))
    load, knelt = published_load("impact"), published_load("base")
    rows = _rows(here, listed[worst].deck_piece)
    below = float(np.max(answer.moved[rows, 2, 0] - answer.moved[rows, 2, worst]))
    weight = load.mass_kg * GRAVITY
    sag = below * weight / knelt.force_n * _spread(load, handling) + handling.mattress_gives
    force = weight * fall_factor(load.drop_mm, max(sag, _STIFFEST))
    times = force / knelt.force_n * _spread(load, handling)
    for each in (*answer.inner, answer.moved, answer.nodes, answer.force):
        at_rest = each[..., 0]
        each[..., -1] = at_rest + times * (each[..., worst] - at_rest)
    return (*cases[:-1], _case(cases[worst], load, force))


def _rows(here: Stations, piece: int) -> slice:
    return slice(int(here.first[piece]), int(here.first[piece + 1]))


def _bent(here: Stations, piece: int, answer: Response, case: int) -> float:
    return float(np.abs(answer.inner.moment_y[_rows(here, piece), case]).max())


def _spread(load: PublishedLoad, handling: Handling) -> float:
    """The share of the blow that the slat under its middle takes: a mattress spreads it.

    Half the mattress's thickness is added all round; common practice, no source.
    """
    wide = load.across_mm + (handling.mattress_high if handling.mattress_gives else 0.0)
    return load.across_mm / wide


def _case(kneeling: Case, load: PublishedLoad, force: float) -> Case:
    where = kneeling.title.removeprefix("Kneeling on ")
    return Case(
        key="drop",
        title=f"Dropping onto {where}",
        reason=f"{load.mass_kg:g} kg fall {load.drop_mm:g} mm and press with {force:.0f} N as bed "
        "and mattress give; how far a mattress gives is an assumption.",
        choices=("mattress_gives",),
        source=load.source,
        time=load.time,
    )
