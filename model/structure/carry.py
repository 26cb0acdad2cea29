"""What the bed carries: its frame read from the pieces, loaded in every case, solved at once."""

from __future__ import annotations

import numpy as np

from model.dimensions.loads import Handling
from model.errors import BadInput
from model.materials import published_load
from model.materials.own import OwnRows
from model.mechanics.line_loads import LineLoads
from model.mechanics.space_frame import Solution, Unstable
from model.parts.pieces import Floats, Pieces
from model.solids.proof import Proof
from model.structure.cases import Situation, situations
from model.structure.contacts import contacts, hosts
from model.structure.drop import with_drop
from model.structure.effects import Effects, Hardest, Measured
from model.structure.joints import FLOOR
from model.structure.lattice import Lattice, lattice
from model.structure.loading import Loading
from model.structure.record import Carried, Forces, Strength, Unjudged
from model.structure.skeleton import skeleton
from model.structure.spans import sag_limits, sags, supports
from model.structure.stations import Response, crowding, lasting, response, stations, stresses
from model.structure.weights import put_drawers, put_hangers, put_weights


def judged(
    pieces: Pieces, proof: Proof, masses: Floats, handling: Handling, grade: str, own: OwnRows
) -> Strength:
    """What the bed bears, or in a sentence that names the member why that cannot be told."""
    try:
        return carry(pieces, proof, masses, handling, grade, own)
    except BadInput as missing:
        return Unjudged(sentence=str(missing))
    except Unstable as loose:
        return Unjudged(
            sentence=f"The {pieces.labels[loose.node]} is held by nothing that keeps it from "
            "moving: it needs a support, or a joint that does not turn.",
            piece=loose.node,
        )


def carry(
    pieces: Pieces, proof: Proof, masses: Floats, handling: Handling, grade: str, own: OwnRows
) -> Carried:
    """Solve the bed's frame. BadInput: a material that lacks a figure.

    Unstable: something that nothing holds; its `node` is then the index of the bed's piece.
    """
    bones = skeleton(pieces, grade, own)
    host = hosts(pieces, proof.holding, bones)
    frame = lattice(bones, contacts(pieces, proof.holding, proof.touching, bones, host))
    loading = Loading(frame)
    put_weights(loading, frame, masses)
    put_hangers(loading, frame, pieces, proof.holding, host, masses)
    put_drawers(loading, frame, pieces, masses, dict(handling.contents))
    found = situations(frame, loading, pieces, handling)
    loads = loading.line_loads()
    none = np.zeros((len(frame.frame.nodes), 6, len(found.listed)))
    try:
        solution = frame.frame.solve(loads, none, found.released, found.raised)
    except Unstable as loose:
        raise Unstable(int(bones.piece[frame.node_piece[loose.node]])) from None
    return _told(frame, tuple(found.listed), loads, solution, handling)


def _told(
    frame: Lattice,
    listed: tuple[Situation, ...],
    loads: LineLoads,
    solution: Solution,
    handling: Handling,
) -> Carried:
    bones, here = frame.bones, stations(frame)
    answer = response(frame, here, loads, solution)
    cases = with_drop(here, listed, answer, handling)
    bending, shear = stresses(bones, here.piece, answer.inner)
    if len(bones.of_role("deck panel")):
        bending *= crowding(frame, cases, published_load("base").across_mm)[here.piece]
    held, down = supports(frame), -answer.moved[:, 2]
    sag = sags(frame, held, here.piece, here.at, down, -answer.nodes[:, 2])
    times = lasting(bones, cases)[here.piece]
    measured = Measured(
        frame=frame, cases=cases, piece=here.piece, at=here.at, first=here.first,
        bending=bending, bending_limit=bones.bending[here.piece, None] * times,
        shear=shear, shear_limit=bones.shear[here.piece, None] * times,
        sag=sag, sag_limit=sag_limits(frame, held),
        press=_pressed(frame, answer), press_limit=_may_press(frame),
    )  # fmt: skip
    use = np.maximum(
        measured.bending / measured.bending_limit, measured.shear / measured.shear_limit
    )
    return Carried(
        cases=cases, pieces=bones.piece, first=here.first, at=here.at,
        point=bones.start[here.piece] + bones.axes[here.piece, 0] * here.at[:, None],
        moved=np.ascontiguousarray(np.moveaxis(answer.moved, 2, 0)),
        sag=np.ascontiguousarray(sag.T), use=np.ascontiguousarray(use.T),
        sag_limit=measured.sag_limit, effects=Effects(measured), joints=_forces(frame, answer),
        hardest=Hardest(measured), roles=bones.role,
    )  # fmt: skip


def _pressed(frame: Lattice, answer: Response) -> Floats:
    """(j, c) MPa with which what rests is pressed on what it rests on."""
    area = frame.joints.area[:, None]
    return np.where(area > 0, np.maximum(answer.force[:, 2], 0.0) / np.maximum(area, 1e-9), 0.0)


def _may_press(frame: Lattice) -> Floats:
    """(j,): the softer of the two woods that meet, MPa."""
    across, other = frame.bones.across, frame.joints.other
    below = np.where(other == FLOOR, np.inf, across[other])
    return np.minimum(across[frame.joints.one], below)


def _forces(frame: Lattice, answer: Response) -> Forces:
    joints, piece = frame.joints, frame.bones.piece
    other = np.where(joints.other == FLOOR, -1, piece[joints.other])
    return Forces(
        pieces=np.stack([piece[joints.one], other], 1), kind=joints.kind, at=joints.at,
        stiffness=joints.stiffness, force=np.ascontiguousarray(np.moveaxis(answer.force, 2, 0)),
    )  # fmt: skip
