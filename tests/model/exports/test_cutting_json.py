"""`cutting.json` as a stranger reads it: sawn again figure by figure, against `parts.json`."""

from __future__ import annotations

import json
from collections.abc import Callable
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from model.bed import Bed, solve
from model.designs import read
from model.exports import cutting_json, parts_json
from tests.checkers.cutting_file import file_faults

DEMOS = sorted((Path(__file__).resolve().parents[3] / "resources" / "demos").glob("*.bedwright"))
Files = tuple[dict[str, Any], dict[str, Any]]
EVERY_DEMO = pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)


@cache
def bed_of(demo: Path) -> Bed:
    return solve(read(demo))


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Path], Files]:
    """The cutting plans and the parts list of a demo."""

    @cache
    def written(demo: Path) -> Files:
        folder = tmp_path_factory.mktemp("plan")
        cutting_json.write(bed_of(demo), folder / "cutting.json")
        parts_json.write(bed_of(demo), folder / "parts.json")
        cutting, parts = (
            json.loads((folder / name).read_bytes()) for name in ("cutting.json", "parts.json")
        )
        return cutting, parts

    return written


@EVERY_DEMO
def test_every_piece_of_the_parts_list_can_be_sawn_as_it_is_told(
    files: Callable[[Path], Files], demo: Path
) -> None:
    assert file_faults(*files(demo)) == []


@EVERY_DEMO
def test_nothing_is_left_out_of_a_demo(files: Callable[[Path], Files], demo: Path) -> None:
    assert [plan["left_out"] for plan in files(demo)[0]["plans"] if plan["left_out"]] == []


@EVERY_DEMO
def test_a_bound_is_no_more_than_the_plan_takes(files: Callable[[Path], Files], demo: Path) -> None:
    for plan in files(demo)[0]["plans"]:
        assert plan["lower_bound"] <= plan["value"] * (1 + 1e-9)
        assert plan["proven"] == (plan["value"] <= plan["lower_bound"] * (1 + 1e-9) + 1e-9)
        assert plan["bound_covers"]


@EVERY_DEMO
def test_plans_tell_what_their_contract_asks_for(
    files: Callable[[Path], Files], demo: Path
) -> None:
    cutting, _ = files(demo)

    assert cutting["schema"] == 1
    for plan in cutting["plans"]:
        assert set(plan) >= {"material", "thickness", "lower_bound", "proven", "stock"}
        for stock in plan["stock"]:
            assert set(stock) >= {
                *("length", "width", "kerf", "trim", "bad", "on_hand", "grain", "pieces", "cuts")
            }
            assert list(stock["trim"]) == ["lower", "upper", "left", "right"]


# ---------------------------------------------------------------- the reader sees what is wrong


def _moved(cutting: dict[str, Any]) -> None:
    cutting["plans"][0]["stock"][0]["pieces"][0]["x"] += 2


def _short(cutting: dict[str, Any]) -> None:
    cutting["plans"][0]["stock"][0]["pieces"][0]["length"] -= 1


def _gone(cutting: dict[str, Any]) -> None:
    cutting["plans"][0]["stock"][0]["pieces"].pop()


def _twice(cutting: dict[str, Any]) -> None:
    stock = cutting["plans"][0]["stock"]
    stock.append(deepcopy(stock[0]))


def _knotty(cutting: dict[str, Any]) -> None:
    cutting["plans"][0]["stock"][0]["bad"] = [[0, 0, 9999, 9999]]


def _renumbered(cutting: dict[str, Any]) -> None:
    cutting["plans"][0]["stock"][0]["cuts"]["number"] += 1


@pytest.mark.parametrize("spoil", [_moved, _short, _gone, _twice, _knotty, _renumbered])
def test_a_spoilt_plan_is_seen(
    files: Callable[[Path], Files], spoil: Callable[[dict[str, Any]], None]
) -> None:
    cutting, parts = deepcopy(files(DEMOS[1]))

    spoil(cutting)

    assert file_faults(cutting, parts)
