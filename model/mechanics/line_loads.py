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
    length: Floats,
) -> Between:
    """What happens at stations of `member` (s), `at` mm from its start.

    `ends`, `forces` (m, 12, c): movements of, and forces on, the members' ends in their own axes.
    `stiffness`: E A, E Iy, E Iz of every member (m,).
    """
    ea, eiy, eiz = (each[member][:, None] for each in stiffness)
    x, f, u = at[:, None], forces[member], ends[member]
    sums = _sums(loads, member, at, ends.shape[2])
    force, first, third = sums[:, :3], sums[:, 3:6], sums[:, 6:9]
    moment_z = -f[:, 5] + f[:, 1] * x + first[:, 1]
    moment_y = -f[:, 4] - f[:, 2] * x - first[:, 2]
    pull = u[:, 0] + (-f[:, 0] * x - first[:, 0]) / ea
    aside = u[:, 1] + u[:, 5] * x + (-f[:, 5] * x**2 / 2 + f[:, 1] * x**3 / 6 + third[:, 1]) / eiz
    up = u[:, 2] - u[:, 4] * x + (f[:, 4] * x**2 / 2 + f[:, 2] * x**3 / 6 + third[:, 2]) / eiy
    return Between(
        axial=-f[:, 0] - force[:, 0],
        shear_y=f[:, 1] + force[:, 1],
        shear_z=f[:, 2] + force[:, 2],
        twist=-f[:, 3] * np.ones_like(x),
        moment_y=moment_y,
        moment_z=moment_z,
        moved=np.stack([pull, aside, up], 1),
    )


def _sums(loads: LineLoads, member: Ints, at: Floats, cases: int) -> Floats:
    """Load up to each station, and its first and third integral along x: (s, 9, c)."""
    order = np.argsort(member, kind="stable")
    begins = np.searchsorted(member[order], loads.member)
    count = np.searchsorted(member[order], loads.member, side="right") - begins
    load = np.repeat(np.arange(len(count)), count)
    start = np.cumsum(count) - count
    station = order[np.arange(len(load)) + (begins - start)[load]]
    a, b = loads.stretch
    past_a = np.clip(at[station] - a[load], 0.0, None)
    past_b = np.clip(at[station] - b[load], 0.0, None)
    even = loads.force[load] / (b - a)[load][:, None]
    powers = [(past_a**k - past_b**k) / d for k, d in ((1, 1.0), (2, 2.0), (4, 24.0))]
    put = np.concatenate([even * power[:, None] for power in powers], axis=1)
    return _summed(station, loads.case[load], put, len(at), cases)
