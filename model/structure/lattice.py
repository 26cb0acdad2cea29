"""The frame itself: a node wherever a joint meets a piece, and members between the nodes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.mechanics.line_loads import LineLoads
from model.mechanics.space_frame import GROUND, Frame, Joints, Members
from model.parts.pieces import Floats, Ints
from model.structure.joints import FLOOR, Contacts
from model.structure.skeleton import Skeleton

_SAME = 3.0  # mm: joints nearer to each other than this share a node; their arms stay exact
_FREE = 60.0  # mm: a piece that goes on farther beyond its last joint has a node at its end


@dataclass(frozen=True, kw_only=True, eq=False)
class Lattice:
    """Nodes (n) rise by piece and along it: `node_piece`, `node_at` mm; members (m) follow them.

    Nodes of piece i of the frame are rows `first_node[i]` to `first_node[i + 1]`, its members
    `first_member[i]` to `first_member[i + 1]`. `joint_node` (2, j): nodes of the joints' two
    pieces, GROUND for the floor.
    """

    bones: Skeleton
    joints: Contacts
    frame: Frame
    node_piece: Ints
    node_at: Floats
    first_node: Ints
    first_member: Ints
    member_piece: Ints
    member_from: Floats
    joint_node: Ints

    def spread(
        self, case: Ints, piece: Ints, start: Floats, end: Floats, force: Floats
    ) -> LineLoads:
        """Loads along pieces (l), mm from their near ends, as loads along members.

        `force` (l, 3): the whole of each, N on the bed's axes. What lies beyond a piece's outer
        joints goes to the nearest of them.
        """
        last = self.first_node[piece + 1] - 1
        low, high = self.node_at[self.first_node[piece]], self.node_at[last]
        a, b = np.clip(start, low, high), np.clip(end, low, high)
        count = self.first_member[piece + 1] - self.first_member[piece]
        load = np.repeat(np.arange(len(piece)), count)
        step = np.arange(len(load)) - np.repeat(np.cumsum(count) - count, count)
        member = self.first_member[piece[load]] + step
        near = self.member_from[member]
        far = near + self.frame.members.length[member]
        from_, to = np.maximum(a[load], near), np.minimum(b[load], far)
        long = b[load] - a[load]
        # A point load belongs to the one member whose start it is past.
        is_first = (a[load] >= near) & ((a[load] < far) | (step == count[load] - 1))
        share = np.where(long > 0, (to - from_) / np.where(long > 0, long, 1.0), is_first)
        some = (share > 0) & (to >= from_)
        on = load[some]
        own = np.einsum("lij,lj->li", self.frame.members.axes[member[some]], force[on])
        return LineLoads(
            case=case[on],
            member=member[some],
            start=(from_ - near)[some],
            end=(to - near)[some],
            force=own * share[some][:, None],
        )


def lattice(bones: Skeleton, joints: Contacts) -> Lattice:
    """Cut the pieces at their joints. A piece that meets nothing has no node."""
    side = np.concatenate([joints.one, joints.other])
    at = np.concatenate([joints.at, joints.at])
    met = np.flatnonzero(side != FLOOR)
    along = np.einsum("ji,ji->j", at[met] - bones.start[side[met]], bones.axes[side[met], 0])
    along = np.clip(along, 0.0, bones.size[side[met], 0])
    ends = _free_ends(bones, side[met], along)
    piece = np.concatenate([side[met], ends[0]])
    place = np.concatenate([along, ends[1]])
    order = np.lexsort((place, piece))
    new = np.ones(len(order), bool)
    new[1:] = np.diff(piece[order]) != 0
    new[1:] |= np.diff(place[order]) > _SAME
    node = np.empty(len(order), np.intp)
    node[order] = np.cumsum(new) - 1
    node_piece, node_at = piece[order][new], place[order][new]
    joint_node = np.full(len(side), GROUND)
    joint_node[met] = node[: len(met)]
    return _built(bones, joints, node_piece, node_at, joint_node.reshape(2, -1))


def _free_ends(bones: Skeleton, piece: Ints, along: Floats) -> tuple[Ints, Floats]:
    """Pieces that go on beyond their outer joints, and where they end."""
    length = bones.size[:, 0]
    low, high = length.copy(), np.zeros(len(length))
    np.minimum.at(low, piece, along)
    np.maximum.at(high, piece, along)
    met = np.zeros(len(length), bool)
    met[piece] = True
    near = np.flatnonzero(met & (low > _FREE))
    far = np.flatnonzero(met & (length - high > _FREE))
    return np.concatenate([near, far]), np.concatenate([np.zeros(len(near)), length[far]])


def _built(
    bones: Skeleton, joints: Contacts, node_piece: Ints, node_at: Floats, joint_node: Ints
) -> Lattice:
    nodes = bones.start[node_piece] + bones.axes[node_piece, 0] * node_at[:, None]
    begins = np.flatnonzero(node_piece[1:] == node_piece[:-1])
    of_piece = node_piece[begins]
    area, about_y, about_z, torsion = (each[of_piece] for each in bones.inertia)
    count = len(bones.piece)
    members = Members(
        start=begins,
        end=begins + 1,
        axes=bones.axes[of_piece],
        length=node_at[begins + 1] - node_at[begins],
        area=area,
        about_y=about_y,
        about_z=about_z,
        torsion=torsion,
        moe=bones.moe[of_piece],
        shear=bones.shear_modulus[of_piece],
    )
    one, other = joint_node
    springs = Joints(
        one=one, other=other, at=joints.at, stiffness=joints.stiffness, pushes=joints.pushes
    )
    return Lattice(
        bones=bones,
        joints=joints,
        frame=Frame(nodes=nodes, members=members, joints=springs),
        node_piece=node_piece,
        node_at=node_at,
        first_node=np.searchsorted(node_piece, np.arange(count + 1)),
        first_member=np.searchsorted(of_piece, np.arange(count + 1)),
        member_piece=of_piece,
        member_from=node_at[begins],
        joint_node=joint_node,
    )
