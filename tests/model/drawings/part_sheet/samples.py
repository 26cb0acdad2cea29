"""Parts of our own making, to be drawn."""

from __future__ import annotations

from typing import Any

import numpy as np

from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.sheet import PartSheet, part_sheet
from model.part import Part
from model.parts.marks import Mark

MM = Told("mm")


def part(length: float, width: float, thickness: float, **more: Any) -> Part:
    return Part(
        name="sample", assembly="deck", length=length, width=width, thickness=thickness,
        lies="uvz", at=(0.0, 0.0, 0.0), material="european_oak", **more,
    )  # fmt: skip


def mark_of(sample: Part, **more: Any) -> Mark:
    return Mark(
        mark="D1", name=sample.name, assembly=sample.assembly, quantity=1, length=sample.length,
        width=sample.width, thickness=sample.thickness, material=sample.material,
        grain=sample.grain, part=sample, features=(*sample.cuts, *sample.holes),
        layers=sample.layers, pieces=(0,), matrices=np.eye(4)[None], **more,
    )  # fmt: skip


def sheet_of(sample: Part, told: Told = MM, width: float = 180, height: float = 240) -> PartSheet:
    return part_sheet(mark_of(sample), told, width, height)
