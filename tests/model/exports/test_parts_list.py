"""The parts list in its three formats, each reopened with another reader than wrote it."""

from __future__ import annotations

import csv
import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import openpyxl
import pytest

from model.bed import Design
from model.exports import parts_csv, parts_json, parts_xlsx

CONTRACT = [
    "mark", "name", "assembly", "quantity", "length", "width", "thickness", "material", "grain",
    "rough_length", "rough_width", "rough_thickness",
]  # fmt: skip
HOSTILE = ["=1+1", "+1", "-1", "@A1", '=HYPERLINK("x")', "a,b;c", 'say "no"', "line\nbreak", "\t=1"]


def as_json(bed: Any, folder: Path) -> dict[str, Any]:
    parts_json.write(bed, folder / "parts.json")
    return json.loads((folder / "parts.json").read_text("utf-8"))


def as_csv(bed: Any, folder: Path) -> list[dict[str, str]]:
    parts_csv.write(bed, folder / "parts.csv")
    with (folder / "parts.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def as_xlsx(bed: Any, folder: Path) -> Any:
    parts_xlsx.write(bed, folder / "parts.xlsx")
    return openpyxl.load_workbook(folder / "parts.xlsx")


def part(content: dict[str, Any], name: str) -> dict[str, Any]:
    return next(each for each in content["parts"] if each["name"] == name)


def test_json_has_the_contracts_columns_one_row_a_mark(small_bed: Any, tmp_path: Path) -> None:
    content = as_json(small_bed, tmp_path)

    assert content["schema"] == 1
    assert [each["mark"] for each in content["parts"]] == [m.mark for m in small_bed.marks]
    assert all(list(each)[:12] == CONTRACT for each in content["parts"])


def test_all_formats_tell_the_same(small_bed: Any, tmp_path: Path) -> None:
    told = [
        {name: each[name] for name in CONTRACT} for each in as_json(small_bed, tmp_path)["parts"]
    ]
    sheet = as_xlsx(small_bed, tmp_path)["Parts"]
    head, *rows = sheet.iter_rows(values_only=True)

    assert [
        dict(zip(head, row, strict=True)) | each for row, each in zip(rows, told, strict=True)
    ] == [dict(zip(head, row, strict=True)) for row in rows]
    plain = [{name: str(value) for name, value in each.items()} for each in told]
    assert [each | row for row, each in zip(as_csv(small_bed, tmp_path), plain, strict=True)] == (
        as_csv(small_bed, tmp_path)
    )


def test_sizes_are_shown_in_the_makers_unit_beside_mm(
    small_bed: Any, bed_with: Callable[..., Any], tmp_path: Path
) -> None:
    metric = bed_with(Design(choices={"shown_unit": "mm"}))

    assert as_csv(small_bed, tmp_path)[-1]["thickness_shown"] == '~15/32"'  # 12 mm
    assert as_csv(metric, tmp_path)[-1]["thickness_shown"] == "12 mm"


def test_only_what_is_sawn_off_a_rough_board_is_shown_coarse(
    small_bed: Any, bed_with: Callable[..., Any], tmp_path: Path
) -> None:
    """A sheet part 120.65 mm wide is cut to that; 5/4 boards are 31.75 mm, whatever is sawn of
    them: 150 + 13 mm is 6 27/64 in, on the next sixteenth 6 7/16 in.
    """
    (side,) = small_bed.parts["left.box_side"]
    parts = {"left_box_side": (replace(side, width=120.65, thickness=12.7),)}
    more = {"rough_length_more": 25.0, "rough_width_more": 13.0}
    inches, metric = (
        as_csv(bed_with(Design(choices=more | {"shown_unit": unit}), **parts), tmp_path)
        for unit in ("inch", "mm")
    )

    def rough(rows: list[dict[str, str]], name: str) -> list[str]:
        row = next(each for each in rows if each["name"] == name)
        return [row[f"rough_{size}_shown"] for size in ("length", "width", "thickness")]

    assert rough(metric, "box side") == ["500 mm", "120.65 mm", "12.7 mm"]
    assert rough(inches, "box side")[1:] == ['4 3/4"', '1/2"']
    assert rough(metric, "side rail") == ["2025 mm", "163 mm", "31.75 mm"]
    assert rough(inches, "side rail")[1:] == ['6 7/16"', '1 1/4"']


def test_a_sheet_size_that_no_tape_shows_is_not_shown_larger(
    small_bed: Any, tmp_path: Path
) -> None:
    """12 mm sheets and 120 mm: the `~` says that the figure is near, not up."""
    side = next(row for row in as_csv(small_bed, tmp_path) if row["name"] == "box side")

    for size in ("length", "width", "thickness"):
        assert side[f"rough_{size}_shown"] == side[f"{size}_shown"]


def test_solid_wood_gets_its_allowance_and_sheets_none(small_bed: Any, tmp_path: Path) -> None:
    """1 in longer, 1/2 in wider; 25 mm thick is milled from 5/4, which is 1 1/4 in rough."""
    content = as_json(small_bed, tmp_path)
    rail, side = part(content, "side rail"), part(content, "box side")

    assert [rail[f"rough_{size}"] for size in ("length", "width", "thickness")] == [
        2025.4,
        162.7,
        31.75,
    ]
    assert [side[f"rough_{size}"] for size in ("length", "width", "thickness")] == [500, 120, 12]


def test_a_laminated_part_names_its_layers_with_their_own_rough_size(
    small_bed: Any, tmp_path: Path
) -> None:
    """Two posts of three 20 mm layers; 20 mm is milled from 4/4, which is 1 in rough."""
    post = part(as_json(small_bed, tmp_path), "post")

    assert post["quantity"] == 2
    assert post["made_of"] == [
        {
            "mark": f"{post['mark']}/1", "quantity": 6, "length": 600, "width": 70, "thickness": 20,
            "rough_length": 625.4, "rough_width": 82.7, "rough_thickness": 25.4,
        }
    ]  # fmt: skip
    assert [post[f"rough_{size}"] for size in ("length", "width", "thickness")] == [625.4, 82.7, 60]
    assert part(as_json(small_bed, tmp_path), "box side")["made_of"] == []


def test_a_timber_thicker_than_any_board_still_has_a_rough_size(
    small_bed: Any, bed_with: Callable[..., Any], tmp_path: Path
) -> None:
    """A solid post of 150 mm: the thickest board is 4 in rough, so 1/2 in is added as across it."""
    (post,) = small_bed.parts["head.posts"]
    thick = replace(post, thickness=150.0, layers=1, holes=())

    content = as_json(bed_with(head_posts=(thick,)), tmp_path)

    assert part(content, "post")["rough_thickness"] == 162.7


def test_a_groove_is_a_feature_with_face_position_and_size(small_bed: Any, tmp_path: Path) -> None:
    content = as_json(small_bed, tmp_path)
    rails = [each for each in content["parts"] if each["name"] == "side rail"]

    sizes = [each["features"][0]["size"] for each in rails]
    assert sizes == [{"length": 140, "width": 6, "thickness": 8}] * len(rails)
    assert {each["features"][0]["kind"] for each in rails} == {"groove"}


def test_a_hole_is_a_feature_with_its_mouth_and_depth(small_bed: Any, tmp_path: Path) -> None:
    (hole,) = part(as_json(small_bed, tmp_path), "post")["features"]

    assert hole["size"] == {"diameter": 8, "depth": 60}
    # The hole goes right through, so either face may be called its mouth.
    assert hole["position"][:2] == [300, 35]


def test_placements_lay_every_piece_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    low, high = small_bed.pieces.bounds
    content = as_json(small_bed, tmp_path)

    for mark, row in zip(small_bed.marks, content["parts"], strict=True):
        size = np.array([row["length"], row["width"], row["thickness"], 1.0])
        for piece, rows in zip(mark.pieces, row["placements"], strict=True):
            matrix = np.array(rows)
            ends = np.array([matrix @ [0, 0, 0, 1], matrix @ size])[:, :3]

            assert np.allclose(np.linalg.det(matrix[:3, :3]), 1)  # wood is turned, never mirrored
            assert np.allclose(ends.min(axis=0), low[piece])
            assert np.allclose(ends.max(axis=0), high[piece])


def test_hardware_and_shop_aids_have_sections_of_their_own(small_bed: Any, tmp_path: Path) -> None:
    content = as_json(small_bed, tmp_path)
    book = as_xlsx(small_bed, tmp_path)

    assert content["hardware"] == [{"code": "slide-450", "name": "slide", "quantity": 1}]
    assert [each["width"] for each in content["shop_aids"]] == [62]
    assert book.sheetnames == ["Parts", "Hardware", "Shop aids"]
    assert book["Hardware"]["A2"].value == "slide-450"


@pytest.mark.parametrize("text", HOSTILE)
def test_no_name_becomes_a_formula(
    bed_named: Callable[[str], Any], tmp_path: Path, text: str
) -> None:
    bed = bed_named(text)
    rows = as_csv(bed, tmp_path)
    cells = [cell for row in as_xlsx(bed, tmp_path)["Parts"].iter_rows() for cell in row]

    assert len(rows) == len(bed.marks)
    for value in [value for row in rows for value in row.values()]:
        assert not value.lstrip().startswith(("=", "+", "-", "@"))
    assert all(cell.data_type in ("s", "n") for cell in cells)
    texts = [cell.value for cell in cells if cell.data_type == "s"]
    assert not any(each.lstrip().startswith(("=", "+", "-", "@")) for each in texts)


def test_json_keeps_a_name_as_it_is(bed_named: Callable[[str], Any], tmp_path: Path) -> None:
    """JSON runs nothing, so nothing is put before a name there."""
    content = as_json(bed_named("=1+1"), tmp_path)

    assert {each["name"] for each in content["parts"]} == {"=1+1"}


def test_figures_in_the_workbook_are_numbers(small_bed: Any, tmp_path: Path) -> None:
    sheet = as_xlsx(small_bed, tmp_path)["Parts"]

    assert all(isinstance(row[4].value, int | float) for row in list(sheet.iter_rows())[1:])
