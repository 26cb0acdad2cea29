"""The beds that come with the program, cut on paper from the files of their plan package alone:
every piece of wood is followed from the stock to its part, and nothing is missing.
"""

from __future__ import annotations

import copy
import csv
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from app.cli import main
from tests.checkers.cutting_file import file_faults, regions

DEMOS = sorted((Path(__file__).resolve().parents[2] / "resources" / "demos").glob("*.bedwright"))

Json = dict[str, Any]
Row = dict[str, str]


class Package:
    """What is read back of a plan package."""

    def __init__(self, folder: Path) -> None:
        self.cutting: Json = json.loads((folder / "cutting.json").read_text("utf-8"))
        self.parts: Json = json.loads((folder / "parts.json").read_text("utf-8"))
        with (folder / "work_order.csv").open(encoding="utf-8-sig", newline="") as file:
            self.order: list[Row] = list(csv.DictReader(file))

    @property
    def cuts(self) -> dict[str, Json]:
        """Every numbered cut, by the key that the work order gives it."""
        return {
            f"{plan['key']}/{stock['number']}/{region['number']}": region
            for plan in self.cutting["plans"]
            for stock in plan["stock"]
            for region in regions(stock["cuts"])
            if region.get("number")
        }

    @property
    def sawing(self) -> list[Row]:
        """The rows of the work order that make a cut of the plan."""
        cuts = self.cuts
        return [row for row in self.order if row["key"] in cuts]


@pytest.fixture(scope="module", params=DEMOS, ids=lambda path: path.stem)
def package(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Package:
    folder = tmp_path_factory.mktemp("plan")
    assert main(["plan", str(request.param), "-o", str(folder)]) == 0
    return Package(folder)


def test_every_piece_of_every_part_is_cut_once_and_rightly(package: Package) -> None:
    assert file_faults(package.cutting, package.parts) == []


def test_no_piece_is_left_out_of_a_bed_that_comes_with_the_program(package: Package) -> None:
    assert [plan["left_out"] for plan in package.cutting["plans"] if plan["left_out"]] == []


def test_the_work_order_makes_every_cut_once_after_what_frees_its_wood(package: Package) -> None:
    made = [row["key"] for row in package.sawing]
    assert made and sorted(made) == sorted(package.cuts)
    place = {key: at for at, key in enumerate(made)}

    for key, cut in package.cuts.items():
        base = key.rpartition("/")[0]
        for side in filter(None, (cut["low"], cut["high"])):
            inside = [each["number"] for each in regions(side) if each.get("number")]
            assert all(place[f"{base}/{number}"] > place[key] for number in inside)


def test_every_setting_leaves_what_the_plan_says(package: Package) -> None:
    """The distance that is printed is that of the wood on one side of the blade; a trim may be set
    by what goes, the kerf with it.
    """
    cuts = package.cuts

    for row in package.sawing:
        cut = cuts[row["key"]]
        way, _, distance = row["figures_mm"].partition(" ")
        name = "width" if way == "rip" else "length"
        parts = [side[name] for side in (cut["low"], cut["high"]) if side]
        shares = [*parts, *(each + cut["kerf"] for each in parts), cut["kerf"]]
        assert way == cut["cut"]
        assert any(abs(float(distance) - each) < 0.051 for each in shares), row  # printed to 0.1


def test_the_work_order_frees_every_piece_that_the_plans_place(package: Package) -> None:
    freed = [name for row in package.sawing for name in row["frees"].split()]

    placed = sorted(
        f"{piece['mark']}-{piece['piece']}"
        for plan in package.cutting["plans"]
        for stock in plan["stock"]
        for piece in stock["pieces"]
    )

    assert sorted(freed) == placed


# ---------------------------------------------------------------- the checker itself


def first_stock(cutting: Json) -> Json:
    stock: Json = cutting["plans"][0]["stock"][0]
    return stock


def forget_a_piece(cutting: Json) -> None:
    stock = first_stock(cutting)
    leaf = next(each for each in regions(stock["cuts"]) if "mark" in each)
    gone = leaf.pop("mark"), leaf.pop("piece")
    leaf["use"] = "waste"
    stock["pieces"] = [each for each in stock["pieces"] if (each["mark"], each["piece"]) != gone]


def saw_elsewhere(cutting: Json) -> None:
    first_stock(cutting)["cuts"]["at"] += 1


def turn_the_order(cutting: Json) -> None:
    plan = cutting["plans"][0]
    total = sum(1 for s in plan["stock"] for each in regions(s["cuts"]) if each.get("number"))
    for stock in plan["stock"]:
        for each in regions(stock["cuts"]):
            if each.get("number"):
                each["number"] = total + 1 - each["number"]


def claim_a_proof(cutting: Json) -> None:
    plan = cutting["plans"][0]
    plan["lower_bound"], plan["proven"] = plan["value"] / 2, True


def cut_too_short(cutting: Json) -> None:
    first_stock(cutting)["pieces"][0]["length"] -= 5


def take_other_wood(cutting: Json) -> None:
    cutting["plans"][0]["material"] = "Balsa"


SPOILT: list[tuple[Callable[[Json], None], str]] = [
    (forget_a_piece, "are cut or left out, and the parts need"),
    (saw_elsewhere, "a crosscut at"),
    (turn_the_order, "which frees its wood"),
    (claim_a_proof, "proven is True"),
    (cut_too_short, "does not fill its leaf"),
    (take_other_wood, "is cut from Balsa"),
]


@pytest.mark.parametrize("spoil, sentence", SPOILT, ids=lambda each: getattr(each, "__name__", ""))
def test_what_spoils_a_file_is_found(
    package: Package, spoil: Callable[[Json], None], sentence: str
) -> None:
    cutting = copy.deepcopy(package.cutting)
    spoil(cutting)

    assert sentence in "\n".join(file_faults(cutting, package.parts))
