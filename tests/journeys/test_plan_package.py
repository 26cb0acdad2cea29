"""From a new design to the plan package, through the command line, reopened by other readers."""

from __future__ import annotations

import csv
import json
import os
import struct
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import openpyxl
import pytest
import trimesh

FILES = [
    "bed.3mf", "bed.glb", "bed.step", "bed.stl",
    "checks.csv", "checks.json", "client.html", "cost.csv", "cutting.json", "parts.csv",
    "parts.json", "parts.xlsx", "plan.pdf", "quote.txt", "shopping.csv", "summary.json",
    "work_order.csv", "work_order.txt",
]  # fmt: skip
FOLDERS = ["drawings"]
RUN = "import sys; from app.cli import main; sys.exit(main(sys.argv[1:]))"
LOADED = "import sys; from app.cli import main; main(sys.argv[1:]); print(*sys.modules)"


def bedwright(*arguments: str | Path, run: str = RUN, seed: str = "0") -> str:
    done = subprocess.run(
        [sys.executable, "-c", run, *map(str, arguments)],
        env=os.environ | {"PYTHONHASHSEED": seed},
        capture_output=True,
        text=True,
        encoding="utf-8",
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def design(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("design") / "bed.bedwright"
    bedwright("new", file, "--name", '=1+1 "Ana’s" <bed>')
    return file


@pytest.fixture(scope="module")
def package(design: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("package") / "deep" / "plan"
    bedwright("plan", design, "-o", folder)
    return folder


@dataclass(frozen=True)
class Again:
    """What another process wrote over an older package, beside a file of the maker's own."""

    folder: Path
    loaded: list[str]  # modules


@pytest.fixture(scope="module")
def again(design: Path, tmp_path_factory: pytest.TempPathFactory) -> Again:
    folder = tmp_path_factory.mktemp("again")
    (folder / "notes.txt").write_text("mine")
    (folder / "parts.csv").write_text("old")
    said = bedwright("plan", design, "-o", folder, run=LOADED, seed="4711")
    return Again(folder, said.split())


@pytest.fixture(scope="module")
def parts(package: Path) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads((package / "parts.json").read_text("utf-8"))["parts"]
    return found


@pytest.fixture(scope="module")
def solids(package: Path) -> dict[str, trimesh.Trimesh]:
    """Every node of the model that has a mesh, where it stands."""
    scene = trimesh.load_scene(package / "bed.glb")
    found = {}
    for name in scene.graph.nodes_geometry:
        matrix, mesh = scene.graph[name]
        found[name] = scene.geometry[mesh].copy().apply_transform(matrix)
    return found


def test_the_package_holds_its_files_and_nothing_half_written(package: Path) -> None:
    assert sorted(each.name for each in package.iterdir()) == sorted([*FILES, *FOLDERS])


def files_in(folder: Path) -> dict[str, bytes]:
    """All files in a folder and in the folders in it."""
    found = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def test_the_same_design_gives_the_same_bytes_in_another_process(
    package: Path, again: Again
) -> None:
    one, other = files_in(package), files_in(again.folder)
    assert set(one) == set(other) - {"notes.txt"} and len(one) > len(FILES)
    assert [name for name in one if one[name] != other[name]] == []


def test_writing_again_leaves_what_else_is_in_the_folder(again: Again) -> None:
    assert (again.folder / "notes.txt").read_text() == "mine"
    assert (again.folder / "parts.csv").read_text().startswith("mark,")
    assert sorted(each.name for each in again.folder.iterdir()) == sorted(
        [*FILES, *FOLDERS, "notes.txt"]
    )


def test_the_command_line_loads_no_window_toolkit(again: Again) -> None:
    tops = {name.split(".")[0] for name in again.loaded}
    assert "model" in tops
    assert tops.isdisjoint({"PySide6", "shiboken6", "pyqtgraph", "OpenGL"})


def test_every_piece_of_the_parts_list_is_a_watertight_solid(
    parts: list[dict[str, Any]], solids: dict[str, trimesh.Trimesh]
) -> None:
    named = [f"{each['mark']}-{n + 1}" for each in parts for n in range(each["quantity"])]

    assert set(named) == {name for name in solids if not name.startswith(("HW-", "mattress"))}
    leaking = [n for n, s in solids.items() if not (s.is_watertight and s.is_winding_consistent)]
    assert leaking == []
    assert all(solid.volume > 0 for solid in solids.values())


def test_a_plan_can_be_cut_from_its_own_parts_list(
    parts: list[dict[str, Any]], solids: dict[str, trimesh.Trimesh]
) -> None:
    """The size of a row, laid by the row's matrices, is the box that the model's piece fills."""
    to_file = np.array([[1, 0, 0], [0, 0, 1], [0, -1, 0]]) / 1000
    for each in parts:
        assert len(each["placements"]) == each["quantity"]
        size = np.array([each["length"], each["width"], each["thickness"], 1.0])
        for count, rows in enumerate(each["placements"], start=1):
            ends = (
                np.array([np.array(rows) @ [0, 0, 0, 1], np.array(rows) @ size])[:, :3] @ to_file.T
            )
            bounds = solids[f"{each['mark']}-{count}"].bounds
            assert np.allclose(bounds, np.sort(ends, axis=0), atol=1e-6), each["name"]  # float32


def test_features_tell_the_wood_that_is_taken_away(
    parts: list[dict[str, Any]], solids: dict[str, trimesh.Trimesh]
) -> None:
    """Every part with a cut or hole is less than its stock, and no other is."""
    for each in parts:
        stock = each["length"] * each["width"] * each["thickness"]
        solid = solids[f"{each['mark']}-1"].volume * 1e9
        # Eased edges are told and not modelled: a millimetre that a plane takes by feel.
        cut = [feature for feature in each["features"] if feature["kind"] != "eased edge"]
        assert (solid < stock * (1 - 1e-7)) == bool(cut), each["name"]


def test_rough_sizes_hold_the_finished_ones(parts: list[dict[str, Any]]) -> None:
    for each in parts:
        for size in ("length", "width", "thickness"):
            assert each[f"rough_{size}"] >= each[size]


def test_weights_are_those_of_the_solids(
    package: Path, parts: list[dict[str, Any]], solids: dict[str, trimesh.Trimesh]
) -> None:
    from model.materials import materials

    density = {row.name: row.density_kg_m3 for row in materials().values()}
    total = sum(
        solids[f"{each['mark']}-{count + 1}"].volume * density[each["material"]]
        for each in parts
        for count in range(each["quantity"])
    )

    told = json.loads((package / "summary.json").read_text("utf-8"))
    assert told["weights_kg"]["total"] == pytest.approx(total, rel=1e-5)  # float32 corners
    assert told["counts"]["pieces"] == sum(each["quantity"] for each in parts)


def test_no_two_marks_have_one_name(parts: list[dict[str, Any]]) -> None:
    names = [each["mark"] for each in parts]

    assert len(names) == len(set(names))


def test_tables_agree_whoever_reads_them(package: Path, parts: list[dict[str, Any]]) -> None:
    with (package / "parts.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    head, *rows = openpyxl.load_workbook(package / "parts.xlsx")["Parts"].iter_rows(
        values_only=True
    )

    assert [line["mark"] for line in lines] == [each["mark"] for each in parts]
    assert [row[0] for row in rows] == [each["mark"] for each in parts]
    at = head.index("length")
    assert [row[at] for row in rows] == [each["length"] for each in parts]
    assert [float(line["length"]) for line in lines] == [each["length"] for each in parts]


def test_checks_agree_with_their_summary(package: Path) -> None:
    checks = json.loads((package / "checks.json").read_text("utf-8"))["checks"]
    told = json.loads((package / "summary.json").read_text("utf-8"))["checks"]
    with (package / "checks.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))

    assert {verdict: count for verdict, count in told.items() if count} == {
        verdict: sum(each["verdict"] == verdict for each in checks)
        for verdict in {each["verdict"] for each in checks}
    }
    assert [line["id"] for line in lines] == [each["id"] for each in checks]
    assert all(each["reason"] and each["source"] for each in checks)


def test_drawers_can_be_slid_clear_of_the_bed_by_their_travel(package: Path) -> None:
    """A reader needs the file alone: which node, how far, which way."""
    content = (package / "bed.glb").read_bytes()
    (length,) = struct.unpack("<I", content[12:16])
    record = json.loads(content[20 : 20 + length])
    nodes = record["nodes"]
    drawers = [each for each in nodes if each["name"].startswith("drawer-")]

    assert len(drawers) == 6  # three on each side
    for each in drawers:
        axis = each["extras"]["axis"]
        assert axis == ([-1, 0, 0] if "-left-" in each["name"] else [1, 0, 0])
        assert each["extras"]["travel_mm"] > 0
        inside = [nodes[child]["name"] for child in each["children"]]
        assert any(not name.startswith("HW-") for name in inside)
        assert not {"matrix", "translation", "rotation", "scale"} & set(each)


def test_the_design_of_a_hostile_name_runs_nothing(package: Path) -> None:
    told = json.loads((package / "summary.json").read_text("utf-8"))
    book = openpyxl.load_workbook(package / "parts.xlsx")

    assert told["design"] == '=1+1 "Ana’s" <bed>'
    assert all(cell.data_type != "f" for page in book for row in page.iter_rows() for cell in row)
