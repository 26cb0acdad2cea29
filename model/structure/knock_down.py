"""Knock-down joints between a side and its posts: how far plates, screws and bolts give.

A plate gives by its screws, which sit in both halves: the slip modulus of one screw in wood, half
of it for two in a row. A bolt gives sideways as a bolt in wood does, and hardly along its length.
Play in the joint comes on top and is counted where the sway is told.
"""

from __future__ import annotations

import math

import numpy as np

from model.part import Part
from model.parts.pieces import Ints, Pieces
from model.solids.holding import Holding
from model.structure.joints import KNOCK_DOWN, Contacts
from model.structure.skeleton import Skeleton, own_names

BOLT_ALONG = 2e4  # N/mm: wood pressed under nut and head gives before the steel; an assumption


def slip_modulus(density: float, diameter: float) -> float:
    """How stiff one screw or dowel is sideways in wood, N/mm: rho^1.5 d / 23.

    `density` kg/m3 (mean), `diameter` mm.
    Source: EN 1995-1-1:2004 (Eurocode 5), table 7.1, from memory
    """
    return float(density**1.5 * diameter / 23)


def knock_down_joints(pieces: Pieces, holding: Holding, bones: Skeleton, host: Ints) -> Contacts:
    """One joint for each pair of plates and each bolt, between what they are screwed to."""
    rail_half, post_half = (
        {
            one: int(host[other])
            for one, other in _holds_of(pieces, holding, names)
            if host[other] >= 0
        }
        for names in (("rail_plates", "nuts"), ("post_plates", "bolts"))
    )
    rows = [
        _joint(pieces, bones, one, rail_half[near], post_half[far])
        for one, other in _holds_of(pieces, holding, ("rail_plates", "bolts"))
        for near, far in ((one, other), (other, one))
        if near in rail_half and far in post_half
    ]
    return Contacts(
        one=np.array([row[0] for row in rows], np.intp),
        other=np.array([row[1] for row in rows], np.intp),
        at=np.array([row[2] for row in rows]).reshape(-1, 3),
        kind=np.full(len(rows), KNOCK_DOWN),
        stiffness=np.array([row[3] for row in rows]).reshape(-1, 6),
        pushes=np.zeros((len(rows), 3)),
        area=np.zeros(len(rows)),
    )


def _holds_of(pieces: Pieces, holding: Holding, names: tuple[str, ...]) -> list[tuple[int, int]]:
    """Pairs of the bed's pieces of which the first is made by one of these rules."""
    wanted = [name in names for name in own_names(pieces.rules)]
    rows = np.array(wanted, bool)[pieces.rule[holding.one]]
    return list(zip(holding.one[rows].tolist(), holding.other[rows].tolist(), strict=True))


def _joint(
    pieces: Pieces, bones: Skeleton, piece: int, rail: int, post: int
) -> tuple[int, int, list[float], list[float]]:
    """Rail, post, point and stiffness of a plate's or a bolt's joint."""
    part = pieces.parts[pieces.part[piece]]
    low, high = (bound[piece] for bound in pieces.bounds)
    x, y, z = ((low + high) / 2).tolist()
    wood = bones.density[[rail, post]].tolist()
    if part.screws:
        return rail, post, [x, y, z], _plate(part, wood)
    meet = [pieces.bounds[k][bones.piece[[rail, post]], 1] for k in (0, 1)]
    y = float(meet[0].max() + meet[1].min()) / 2  # where the rail's end stands against the post
    sideways = slip_modulus(math.sqrt(wood[0] * wood[1]), float(part.width))
    return rail, post, [x, y, z], [sideways, BOLT_ALONG, sideways, 0.0, 0.0, 0.0]


def _plate(part: Part, wood: list[float]) -> list[float]:
    """Screws in the rail, then screws in the post: they give one after the other."""
    of_screws = [slip_modulus(density, part.screws[0].diameter) for density in wood]
    each = 1 / sum(1 / stiff for stiff in of_screws)
    spots = [screw.at[0] for screw in part.screws]
    middle = sum(spots) / len(spots)
    turning = each * sum((spot - middle) ** 2 for spot in spots)
    return [each * len(spots)] * 3 + [turning, turning, 0.0]
