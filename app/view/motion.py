"""How far each piece stands from its place: drawers pulled out, assemblies pulled apart."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import numpy.typing as npt

from app.view.scene import MATTRESS, OUTWARD, Scene

# Direction of each assembly, and how far it goes as a share of the bed's length.
APART = {
    "headboard": (0.0, 0.34, 0.0),
    "footboard": (0.0, -0.34, 0.0),
    "left side": (-0.26, 0.0, 0.0),
    "right side": (0.26, 0.0, 0.0),
    "deck": (0.0, 0.0, 0.20),
    MATTRESS: (0.0, 0.0, 0.40),
}
DRAWER_APART, FRONT_APART = 0.52, 0.66  # along the drawer's own way out


def offsets(
    scene: Scene, open_shares: Mapping[str, float], apart: float
) -> npt.NDArray[np.float32]:
    """(n, 3), mm: how far each piece stands from its place on the bed."""
    moved = np.zeros((len(scene.looks), 3), np.float32)
    length = float(scene.bounds[1][1] - scene.bounds[0][1])
    if apart > 0:
        moved[:] = [_apart(look.assembly, look.drawer) for look in scene.looks]
        moved *= apart * length
    for drawer, share in open_shares.items():
        if share and drawer in scene.travel:
            moved[list(scene.pieces_of_drawer.get(drawer, ()))] += share * np.array(
                scene.travel[drawer], np.float32
            )
    return moved


def _apart(assembly: str, drawer: str) -> tuple[float, float, float]:
    if drawer:
        x, y, z = OUTWARD[drawer.rpartition("-")[0]]
        far = FRONT_APART if assembly == "fronts" else DRAWER_APART
        return (x * far, y * far, z * far)
    return APART.get(assembly, (0.0, 0.0, 0.0))
