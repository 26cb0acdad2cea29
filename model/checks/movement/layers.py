"""Do the layers of glued-up posts and panels move alike?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from model.checks.movement.ends import MOVEMENT
from model.checks.movement.glue import FREELY
from model.checks.movement.rates import Season, rates
from model.checks.record import Finding, advice, at_most, check
from model.materials import Material
from model.materials.movement import Way
from model.part import Part
from model.parts.pieces import Pieces
from model.units import Mm, Percent


@check(
    "movement",
    "Layers glued face to face move alike",
    about="wood_wettest",
    source=f"{MOVEMENT}; one wood, one direction, one cut: common practice",
)
def layers_move_alike(
    pieces: Pieces,
    materials: Mapping[str, Material],
    bench_moisture: Percent,
    wood_driest: Percent,
    wood_wettest: Percent,
    width_way: Way,
    thickness_way: Way,
) -> Iterator[Finding]:
    """Layers of one wood with their grain one way stay glued; a layer of another cut pulls."""
    season = Season(bench_moisture, wood_driest, wood_wettest, width_way, thickness_way)
    found = rates(pieces, materials, season)
    by_width = np.abs(found.swell[:, 1] - found.swell[:, 2])
    by_width = np.maximum(by_width, np.abs(found.shrink[:, 1] - found.shrink[:, 2]))
    widest: dict[str, tuple[float, int]] = {}
    for i, part in enumerate(pieces.parts):
        if part.layers > 1 and found.solid[i]:
            pulls = (float(by_width[i]) * part.size[1], i)
            widest[part.name] = max(widest.get(part.name, pulls), pulls)
    yield from (_finding(pieces.parts[i], by) for by, i in widest.values())


def _finding(part: Part, by: Mm) -> Finding:
    return replace(
        advice(at_most(by, FREELY)),
        id=part.name.replace(" ", "_"),
        title=f"Layers of the {part.name} move alike",
        reason=f"All {part.layers} layers are of one wood with the grain one way, and move "
        "together. Take boards of one cut: a quarter-sawn layer on a flat-sawn one would pull by "
        f"{by:.1f} mm over {part.size[1]:.0f} mm.",
    )
