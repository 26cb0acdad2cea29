"""Every material has the look of its kind, and none of the maker's own is left without one."""

from __future__ import annotations

import re

import pytest

from model.materials import materials
from model.materials.colour import wood_colour


@pytest.mark.parametrize("key", [*materials(), "wych_elm", ""])
def test_every_material_has_a_colour(key: str) -> None:
    assert re.fullmatch("[0-9A-F]{6}", wood_colour(key))


def test_the_longest_name_that_fits_counts() -> None:
    assert wood_colour("birch_ply_12") == wood_colour("birch_ply_18") != wood_colour("wych_elm")


def test_walnut_is_darker_than_maple() -> None:
    def light(key: str) -> int:
        return sum(bytes.fromhex(wood_colour(key)))

    assert light("black_walnut") < light("black_cherry") < light("sugar_maple")
