"""What every solid part changes over the year: to read, and to leave room for."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from model.checks.movement.ends import MOVEMENT
from model.checks.movement.rates import Season, rates
from model.checks.record import Finding, Verdict, check
from model.materials import Material
from model.materials.movement import Way
from model.parts.pieces import Pieces
from model.units import Percent


@check("movement", "Widths over the year, driest to wettest", about="wood_wettest", source=MOVEMENT)
def seasonal_widths(
    pieces: Pieces,
    materials: Mapping[str, Material],
    bench_moisture: Percent,
    wood_driest: Percent,
    wood_wettest: Percent,
    width_way: Way,
    thickness_way: Way,
) -> Iterator[Finding]:
    """Solid parts swell and shrink across their width; sheet goods and lengths keep still."""
    season = Season(bench_moisture, wood_driest, wood_wettest, width_way, thickness_way)
    found = rates(pieces, materials, season)
    swing = (found.swell + found.shrink)[:, 1]
    changes: dict[str, dict[tuple[str, int], float]] = {}
    for i, part in enumerate(pieces.parts):
        if found.solid[i]:
            width = part.size[1]
            called = (part.name, round(width))
            changes.setdefault(part.assembly, {})[called] = float(swing[i]) * width
    for assembly, parts in changes.items():
        moves = sorted(parts.items(), key=lambda each: -each[1])
        told = ", ".join(f"{name} {width} mm: {by:.1f}" for (name, width), by in moves)
        yield Finding(
            id=assembly.replace(" ", "_"),
            place=assembly,
            value=moves[0][1],
            limit=math.inf,
            margin=math.inf,
            verdict=Verdict.HOLDS,
            reason=f"From {wood_driest:g} to {wood_wettest:g} % of moisture these widths change by "
            f"(mm): {told}. Lengths and sheet goods keep still.",
        )
