"""The models of real beds, reopened by readers that did not write them."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import lib3mf
import numpy as np
import pytest

from model.bed import Bed, solve
from model.designs import read
from model.errors import BadInput, CannotBuild
from model.exports import step, threemf
from model.exports.scene import items
from model.part import Part
from model.solids.brep import brep
from model.solids.exact import solid
from tests.model.exports import step_reader
from tests.properties.designs import random_design

DEMOS = sorted((Path(__file__).resolve().parents[2] / "resources" / "demos").glob("*.bedwright"))
RANDOM_SEEDS, RANDOM_BEDS = range(100), 3
# The exact solid drills prisms of 48 sides, which take this much less than a round drill.
ROUNDER = math.pi / (24 * math.sin(math.pi / 24))


@cache
def demo(name: str) -> Bed:
    return solve(read(next(path for path in DEMOS if path.stem == name)))


@cache
def random_beds() -> tuple[Bed, ...]:
    found: list[Bed] = []
    for seed in RANDOM_SEEDS:
        if len(found) == RANDOM_BEDS:
            break
        try:
            found.append(solve(random_design(seed)))
        except (BadInput, CannotBuild):
            continue
    return tuple(found)


def beds() -> list[str]:
    return [*(path.stem for path in DEMOS), *(f"random {k}" for k in range(RANDOM_BEDS))]


def bed_named(name: str) -> Bed:
    return random_beds()[int(name.split()[1])] if name.startswith("random ") else demo(name)


def volumes(part: Part) -> tuple[float, float]:
    """Of a part with flat holes, and with round ones, mm3."""
    plain, flat = (solid(each).volume() for each in (replace(part, holes=()), part))
    return flat, plain - (plain - flat) * ROUNDER


@pytest.mark.parametrize("name", beds())
def test_another_kernel_finds_every_piece_sound_and_in_its_place(name: str, tmp_path: Path) -> None:
    bed = bed_named(name)
    step.write(bed, tmp_path / "bed.step")
    found = step_reader.read(tmp_path / "bed.step")
    forms = {item.name: item.shape for item in items(bed)}
    low, high = bed.pieces.bounds
    at = {f"{m.mark}-{k}": piece for m in bed.marks for k, piece in enumerate(m.pieces, 1)}

    pieces = list(found.pieces())

    assert found.product == bed.design.name
    assert Counter(each.name for each in pieces) == Counter(dict.fromkeys(forms, 1))
    for each in {piece.product: piece for piece in pieces}.values():
        shape, form = each.shape, forms[each.name].form
        assert step_reader.is_valid(shape), each.name
        assert step_reader.solids(shape) == 1, each.name
        if each.name in at:
            # A hole that is left to flats has the exact solid's volume. 0.003 %: where the pilot of
            # a pocket screw leaves the end grain aslant, the round one has all its rim outside.
            flat, rounder = volumes(form)
            assert rounder * (1 - 3e-5) <= step_reader.volume(shape) <= flat * (1 + 1e-6), each.name
    for each in pieces:
        if each.name in at:
            piece = at[each.name]
            expected = [low[piece], high[piece]]
            assert np.allclose(step_reader.bounds(each.shape), expected, atol=1e-3), each.name


@pytest.mark.parametrize("name", [path.stem for path in DEMOS])
def test_all_holes_are_round_but_those_of_bolts_that_meet_their_nuts(name: str) -> None:
    for mark in demo(name).marks:
        kinds = [hole.kind for hole in mark.part.holes]
        plain = [kind for kind in kinds if kind not in ("bolt hole", "nut hole")]

        assert len(brep(mark.part).walls) >= len(plain), mark.mark


@pytest.mark.parametrize("name", beds())
def test_the_library_of_the_format_takes_every_piece(name: str, tmp_path: Path) -> None:
    bed = bed_named(name)
    threemf.write(bed, tmp_path / "bed.3mf")
    model = lib3mf.get_wrapper().CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)

    reader.ReadFromFile(str(tmp_path / "bed.3mf"))

    assert reader.GetWarningCount() == 0
    assert model.GetBuildItems().Count() == len(items(bed))
    meshes = model.GetMeshObjects()
    while meshes.MoveNext():
        mesh = meshes.GetCurrentMeshObject()
        assert mesh.IsManifoldAndOriented(), mesh.GetName()
