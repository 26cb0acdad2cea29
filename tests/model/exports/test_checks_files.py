"""The checks as JSON, as CSV and as text: one list, three shapes."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

from model.bed import Design, solve
from model.exports import checks_csv, checks_json, checks_text
from model.improve import Answer, improvements

CONTRACT = [
    "id", "group", "title", "value", "limit", "unit", "margin", "verdict", "reason", "source",
]  # fmt: skip


def test_json_has_the_contracts_columns(small_bed: Any, tmp_path: Path) -> None:
    checks_json.write(small_bed, tmp_path / "checks.json")
    content = json.loads((tmp_path / "checks.json").read_text("utf-8"))

    assert content["schema"] == 1
    assert [list(each) for each in content["checks"]] == [CONTRACT, CONTRACT]
    assert content["checks"][0]["verdict"] == "fails"
    assert content["checks"][1]["margin"] is None  # endless: JSON has no word for it


def test_csv_tells_the_same(small_bed: Any, tmp_path: Path) -> None:
    checks_csv.write(small_bed, tmp_path / "checks.csv")
    with (tmp_path / "checks.csv").open(encoding="utf-8", newline="") as file:
        first, second = csv.DictReader(file)

    assert list(first) == CONTRACT
    assert (first["margin"], second["margin"]) == ("-0.5", "")
    assert (first["source"], second["unit"]) == ("a handbook", "MPa")


def test_text_fits_the_terminal_and_ends_with_a_tally(small_bed: Any) -> None:
    lines = list(checks_text.lines(small_bed, 80))

    assert max(len(line) for line in lines) <= 80
    assert lines[0] == "FAILS  Box runs free, left"
    assert "31.25 MPa" in "\n".join(lines)
    assert lines[-1] == "Of 2 checks 1 fails, 1 holds."


def test_text_says_what_would_mend_a_check_below_it() -> None:
    bed = solve(Design().with_choices({"slats_by": "count", "slat_count": 11}))

    told = "\n".join(checks_text.lines(bed, 80, improvements(bed)))

    failed, _, rest = told.partition("\nNOTE")
    assert "Would hold with: Slat count 14 in place of 11" in " ".join(failed.split())
    assert "Would hold" not in rest


def test_text_says_when_no_single_change_would() -> None:
    wide = {"left.drawers": 1, "left.depth": "slide", "slide_length": 304.8, "right.drawers": 0}
    bed = solve(Design().with_choices(wide))
    finding = next(f for f in bed.findings if f.id == "left.drawer_racks")

    told = "\n".join(checks_text.lines(bed, 80, [Answer(finding, None, 160)]))

    assert "No single change was found that makes this hold." in told
    assert max(len(line) for line in told.splitlines()) <= 80
