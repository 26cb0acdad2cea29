"""Loads along members, and what they do: to fixed ends, and between the ends.

Source of the formulas: the cubic beam element's shape functions, integrated over the load; between
the ends, the beam equation integrated from the start.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

EVERY = -1  # instead of a load case: in all of them
_POINT = 0.02  # mm: a point load is spread over this much, far below what a beam can tell


@dataclass(frozen=True, kw_only=True, eq=False)
class LineLoads:
    """Loads (p) spread evenly over a stretch of a member in a load case.

    `case` (or EVERY), `member`: indices. `start`, `end`: the stretch, mm from the member's start;
    equal for a point load. `force` (p, 3): the whole of it, N, on the member's own axes.
    """

    case: Ints
    member: Ints
    start: Floats
    end: Floats
    force: Floats

    @property
    def stretch(self) -> tuple[Floats, Floats]:
        """Start and end, a point load spread over a hair."""
        short = self.end - self.start < _POINT
        middle = (self.start + self.end) / 2
        return (
            np.where(short, middle - _POINT / 2, self.start),
            np.where(short, middle + _POINT / 2, self.end),
        )


def at_ends(loads: LineLoads, length: Floats, cases: int) -> Floats:
    """The forces and moments that loads put on the nodes at both ends of their members.

    (m, 12, c), members' own axes: start then end, forces then moments.
    """
    L = length[loads.member]
    a, b = (edge / L for edge in loads.stretch)
    one, two, three, four = ((b**k - a**k) / k / (b - a) for k in (1, 2, 3, 4))
    # Means over the stretch of the shape functions, as powers of x / L.
    near, turn_near = one - 3 * three + 2 * four, (two - 2 * three + four) * L
    far, turn_far = 3 * three - 2 * four, (four - three) * L
    x, y, z = loads.force.T
    put = np.zeros((len(L), 12))
    put[:, 0], put[:, 6] = x * (one - two), x * two
    put[:, 1], put[:, 5], put[:, 7], put[:, 11] = y * near, y * turn_near, y * far, y * turn_far
    put[:, 2], put[:, 4], put[:, 8], put[:, 10] = z * near, -z * turn_near, z * far, -z * turn_far
    return _summed(loads.member, loads.case, put, len(length), cases)


def summed_rows(row: Ints, put: Floats, rows: int) -> Floats:
    """Add up rows (p, c) that fall on the same row: (rows, c). Ten times as quick as `add.at`."""
    columns = put.shape[1]
    cell = row[:, None] * columns + np.arange(columns)
    added = np.bincount(cell.ravel(), put.ravel(), rows * columns)
    return np.asarray(added, float).reshape(rows, columns)


def _summed(row: Ints, case: Ints, put: Floats, rows: int, cases: int) -> Floats:
    """Add up what falls on the same row in the same case: (rows, k, c) from (p, k)."""
    count = put.shape[1]
    cell = row[:, None] * count + np.arange(count)
    every = case == EVERY
    always = np.bincount(cell[every].ravel(), put[every].ravel(), rows * count)
    at = cell[~every] * cases + case[~every, None]
    found = np.bincount(at.ravel(), put[~every].ravel(), rows * count * cases)
    return np.asarray((found.reshape(-1, cases) + always[:, None]).reshape(rows, count, cases))


class Between(NamedTuple):
    """Inner forces and movement at stations (s) of members, per load case: (s, c) each.

    `axial` N (pull above zero); `shear_y`, `shear_z` N; `moment_y`, `moment_z`, `twist` N mm;
    `moved` (s, 3, c) mm; all on the members' own axes.
    """

    axial: Floats
    shear_y: Floats
    shear_z: Floats
    twist: Floats
    moment_y: Floats
    moment_z: Floats
    moved: Floats


def between(
    loads: LineLoads,
    member: Ints,
    at: Floats,
    ends: Floats,
    forces: Floats,
    stiffness: tuple[Floats, Floats, Floats],
) -> Between:
    """What happens at stations of `member` (s), `at` mm from its start.

    `ends`, `forces` (m, 12, c): movements of, and forces on, the members' ends in their own axes.
    `stiffness`: E A, E Iy, E Iz of every member (m,).
    """
    ea, eiy, eiz = (each[member] for each in stiffness)
    at_start = np.concatenate([forces[:, :6], ends[:, :6]], axis=1)
    found = np.matmul(_from_start(at, ea, eiy, eiz), at_start[member])
    found += _from_loads(loads, member, at, (ea, eiy, eiz), ends.shape[2])
    axial, shear_y, shear_z, twist, moment_y, moment_z = (found[:, k] for k in range(6))
    return Between(axial, shear_y, shear_z, twist, moment_y, moment_z, found[:, 6:])


def _from_start(x: Floats, ea: Floats, eiy: Floats, eiz: Floats) -> Floats:
    """(s, 9, 12): the figures of `Between` at x from forces and movements at a member's start."""
    found = np.zeros((len(x), 9, 12))
    found[:, 0, 0], found[:, 1, 1], found[:, 2, 2], found[:, 3, 3] = -1, 1, 1, -1
    found[:, 4, 4], found[:, 4, 2], found[:, 5, 5], found[:, 5, 1] = -1, -x, -1, x
    found[:, 6, 6], found[:, 6, 0] = 1, -x / ea
    found[:, 7, 7], found[:, 7, 11] = 1, x
    found[:, 7, 5], found[:, 7, 1] = -(x**2) / 2 / eiz, x**3 / 6 / eiz
    found[:, 8, 8], found[:, 8, 10] = 1, -x
    found[:, 8, 4], found[:, 8, 2] = x**2 / 2 / eiy, x**3 / 6 / eiy
    return found


def _from_loads(
    loads: LineLoads, member: Ints, at: Floats, stiff: tuple[Floats, Floats, Floats], cases: int
) -> Floats:
    """(s, 9, c): what loads between a member's start and each station add to the same figures."""
    order = np.argsort(member, kind="stable")
    begins = np.searchsorted(member[order], loads.member)
    count = np.searchsorted(member[order], loads.member, side="right") - begins
    load = np.repeat(np.arange(len(count)), count)
    station = order[np.arange(len(load)) + np.repeat(begins - np.cumsum(count) + count, count)]
    a, b = loads.stretch
    past_a = np.clip(at[station] - a[load], 0.0, None)
    past_b = np.clip(at[station] - b[load], 0.0, None)
    x, y, z = (loads.force[load] / (b - a)[load][:, None]).T
    one, two, four = ((past_a**k - past_b**k) / d for k, d in ((1, 1.0), (2, 2.0), (4, 24.0)))
    ea, eiy, eiz = (each[station] for each in stiff)
    none = np.zeros_like(one)
    put = np.stack(
        [
            *(-x * one, y * one, z * one, none, -z * two, y * two),
            *(-x * two / ea, y * four / eiz, z * four / eiy),
        ],
        axis=1,
    )
    return _summed(station, loads.case[load], put, len(at), cases)
