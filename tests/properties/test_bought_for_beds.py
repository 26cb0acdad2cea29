"""Whatever bed is built, what is bought for it is told whole, and fits where it goes."""

from __future__ import annotations

from collections import Counter

import pytest

from model.bed import Bed
from model.building.care import care_sheet, may_hold
from model.building.consumables import consumables
from model.building.fittings import fittings
from model.building.screw_list import screw_list
from model.building.steps import build_steps
from model.building.washers import washer_room
from model.cost.screws import driven
from tests.properties.designs import built_from

BEDS = 40
TOLD = ("HOOK-PLATE", "KEYHOLE-PLATE", "CROSS-BOLT", "BED-BOLT", "BRACKET", "GLIDE", "DOWEL-")


@pytest.fixture(scope="module")
def beds() -> tuple[Bed, ...]:
    """Of random designs."""
    return built_from(60_001, BEDS)


def test_every_screw_is_bought_once_with_its_head(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        wanted: Counter[float] = Counter()
        for each in driven(bed):
            wanted[round(each.length, 2)] += each.count
        found: Counter[float] = Counter()
        for line in screw_list(bed):
            found[round(line.length, 2)] += line.number
            assert line.packs * line.pack >= line.quantity >= line.number

        assert found == wanted, bed.design.name


def test_every_kind_of_hardware_is_told_with_what_it_must_measure(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        keys = {each.key for each in fittings(bed)}
        for each in bed.hardware:
            begins = next((one for one in TOLD if each.code.startswith(one)), None)
            if begins and not each.code.startswith("GLIDE-BUTTON"):
                assert begins.rstrip("-").lower() in keys, (bed.design.name, each.code)


def test_a_washer_lies_flat_and_bears_on_wood(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        room = washer_room(bed)
        if room is not None:
            assert room.most >= room.hole + 2.0, bed.design.name


def test_no_drawer_is_filled_beyond_its_slides(beds: tuple[Bed, ...]) -> None:
    """Contents and the whole drawer, steel and pull too, weigh no more than the pair's class."""
    for bed in beds:
        for row in ("left", "right", "foot"):
            if not bed[f"{row}.drawer_count"]:
                continue
            drawer = bed.pieces.group == bed.pieces.groups.index(f"{row}-1")
            whole = float(bed.weights[drawer].sum()) + may_hold(bed, row)
            assert may_hold(bed, row) == 0 or whole <= bed["slide"].load_kg
            assert may_hold(bed, row) <= bed[f"{row}.drawer_contents"]


def test_every_bed_has_a_care_sheet_and_a_list_of_small_things(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        steps = bed.once(build_steps)

        assert all(line.text for line in care_sheet(bed, steps))
        assert consumables(bed, steps)
