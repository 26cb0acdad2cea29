"""Profiles for a router, opened again: layers, sizes, notes."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
import trimesh

from model.exports.profile_dxf import profile_file, told
from model.materials import materials
from model.part import Cut, Face, Hole, Part
from model.parts.marks import Mark, marks
from tests.model.exports.dxf_reader import extents, opened, plain

SIZE = (600.0, 200.0, 18.0)


def mark(*work: Cut | Hole, **more: Any) -> Mark:
    part = Part(
        name="box side", assembly="drawers", length=SIZE[0], width=SIZE[1], thickness=SIZE[2],
        lies="uvz", at=(0.0, 0.0, 0.0), material="ply",
        cuts=tuple(each for each in work if isinstance(each, Cut)),
        holes=tuple(each for each in work if isinstance(each, Hole)), **more,
    )  # type: ignore[arg-type]  # fmt: skip
    (found,) = marks({"box_side": (part,)})
    return found


GROOVE = Cut("groove", Face.FACE, (0.0, 12.7, 11.65), (600.0, 19.05, 18.0))
RECESS = Cut("recess", Face.BACK, (100.0, 50.0, 0.0), (160.0, 80.0, 3.0))
THROUGH = Hole("hole", Face.FACE, (50.0, 100.0, 18.0), (0.0, 0.0, -1.0), 8.0, 18.0)
BLIND = Hole("hole", Face.FACE, (70.0, 100.0, 18.0), (0.0, 0.0, -1.0), 5.0, 12.0)
DOWEL = Hole("dowel hole", Face.NEAR, (0.0, 100.0, 9.0), (1.0, 0.0, 0.0), 8.0, 30.0)


def layers(document: Any) -> dict[str, list[str]]:
    """Kinds of entities by layer."""
    found: dict[str, list[str]] = {}
    for each in document.modelspace():
        found.setdefault(each.dxf.layer, []).append(each.dxftype())
    return found


def notes(document: Any) -> list[str]:
    return [plain(text.dxf.text) for text in document.modelspace().query("TEXT")]


def test_layers_name_what_is_done_how_deep_and_from_which_face() -> None:
    found = layers(opened(profile_file(mark(GROOVE, RECESS, THROUGH, BLIND), "mm")))

    assert found.pop("notes") == ["TEXT"] * 4
    assert found == {
        "outline": ["LWPOLYLINE"],
        "pocket-6.35mm-face": ["LWPOLYLINE"],
        "pocket-3mm-back": ["LWPOLYLINE"],
        "hole-8mm-through": ["CIRCLE"],
        "hole-5mm-12mm-deep-face": ["CIRCLE"],
    }


def test_an_inch_bed_has_inches() -> None:
    document = opened(profile_file(mark(GROOVE), "inch"))

    assert "pocket-0.25in-face" in layers(document)
    assert document.header["$INSUNITS"] == 1
    assert extents(document, but="notes") == pytest.approx((0, 0, SIZE[0], SIZE[1]), abs=1e-6)


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_a_reader_that_did_not_write_it_finds_the_outline_and_the_hole(unit: Any) -> None:
    found = trimesh.load_path(io.BytesIO(profile_file(mark(THROUGH), unit)), file_type="dxf")

    mm = 25.4 if unit == "inch" else 1.0
    by_layer = {
        str(each.layer): np.asarray(each.discrete(found.vertices)) for each in found.entities
    }
    names = {"mm": ("millimeters", "HOLE-8MM-THROUGH"), "inch": ("inches", "HOLE-0.315IN-THROUGH")}
    units, hole = names[unit]
    assert found.units == units
    corners, round_ = mm * by_layer["OUTLINE"], mm * by_layer[hole]
    assert np.allclose([corners.min(axis=0), corners.max(axis=0)], [(0, 0), SIZE[:2]])
    assert np.allclose(np.linalg.norm(round_ - THROUGH.at[:2], axis=1), 4.0)


def test_outlines_are_closed() -> None:
    document = opened(profile_file(mark(GROOVE, RECESS), "mm"))

    assert all(line.closed for line in document.modelspace().query("LWPOLYLINE"))


def test_the_notes_stand_below_the_part_and_name_it() -> None:
    document = opened(profile_file(mark(GROOVE, grain="length"), "mm"))

    assert notes(document) == [
        "B1 box side, 1 piece",
        "ply; 18mm thick; grain from left to right",
        "The face lies up, the near end at the left.",
    ]
    assert all(text.dxf.insert.y < -text.dxf.height for text in document.modelspace().query("TEXT"))


def test_a_board_of_fibres_has_no_grain_to_lay_along() -> None:
    fibres = materials()["mdf_18"]
    board = replace(mark(GROOVE, grain="length"), made_of=fibres)

    assert fibres.flat is not None and not fibres.flat.has_grain
    assert notes(opened(profile_file(board, "mm")))[1].endswith("; no grain")


def test_work_from_below_is_said_to_need_the_sheet_turned() -> None:
    said = notes(opened(profile_file(mark(GROOVE, RECESS), "mm")))

    assert any("-back" in line and "turn the sheet over" in line for line in said)


def test_what_is_not_in_the_file_is_said() -> None:
    said = notes(opened(profile_file(mark(GROOVE, DOWEL), "mm")))

    assert said[-1] == "Not in this file: dowel holes in the near end. See drawings/B1.dxf."


@pytest.mark.parametrize(
    ("length", "unit", "words"),
    [
        (6.35, "mm", "6.35mm"),
        (6.35, "inch", "0.25in"),
        (12.0, "mm", "12mm"),
        (9.2, "inch", "0.3622in"),
    ],
)
def test_lengths_in_names_of_layers_are_decimals(length: float, unit: Any, words: str) -> None:
    assert told(length, unit) == words
