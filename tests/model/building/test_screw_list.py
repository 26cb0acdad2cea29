"""Screws by size and head are those of the cost sheet, told apart by what is bought."""

from __future__ import annotations

from collections import Counter

import pytest

from model.building.screw_list import FLAT, HEADS, PAN, screw_list
from model.cost.screws import driven
from tests.model.building.beds import DEMOS, GUEST, QUEEN, demo


@pytest.mark.parametrize("name", DEMOS)
def test_every_screw_of_the_cost_sheet_is_on_the_list_once(name: str) -> None:
    wanted = Counter({(d.kind, round(d.length, 2)): 0 for d in driven(demo(name))})
    for each in driven(demo(name)):
        wanted[each.kind, round(each.length, 2)] += each.count
    found: Counter[tuple[str, float]] = Counter()
    for line in screw_list(demo(name)):
        kind = line.name.removeprefix("8-32 ").lower()
        kind = "wood screw" if kind.endswith("wood screw") else kind
        found[kind, round(line.length, 2)] += line.number

    assert found == wanted


@pytest.mark.parametrize("name", DEMOS)
def test_packs_hold_what_the_bed_takes_and_spares(name: str) -> None:
    for line in screw_list(demo(name)):
        assert line.packs * line.pack >= line.quantity >= line.number


def test_sunk_and_standing_heads_of_one_size_are_two_lines() -> None:
    """The guest bed screws blocks and brackets with No. 8 x 1 1/4 in: two kinds of screw."""
    lines = [each for each in screw_list(demo(GUEST)) if abs(each.length - 31.75) < 0.01]

    assert {each.head for each in lines} == {HEADS[FLAT], HEADS[PAN]}


def test_screws_in_thin_metal_stand_and_those_in_plates_are_sunk() -> None:
    heads = {through: line.head for line in screw_list(demo(QUEEN)) for through in line.through}

    assert heads["slide, inner member"] == heads["angle bracket"] == HEADS[PAN]
    assert heads["hook plate, post half"] == heads["slat"] == HEADS[FLAT]
