"""The bed in a few figures."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from model.exports import summary
from model.materials import material


def test_sizes_counts_and_verdicts_are_told(small_bed: Any, tmp_path: Path) -> None:
    summary.write(small_bed, tmp_path / "summary.json")
    told = json.loads((tmp_path / "summary.json").read_text("utf-8"))

    assert told["schema"] == 1
    assert told["design"] == "Untitled bed"
    # Posts reach from -835 to 835, rails from 0 to 2000, posts to 600.
    assert told["overall"] == {"length": 2000, "width": 1670, "height": 600}
    assert told["sleeping_height"] == 610
    assert told["cost"] is None
    assert told["checks"] == {"fails": 1, "tight": 0, "note": 0, "holds": 1}
    assert (told["counts"]["pieces"], told["counts"]["hardware"]) == (6, 1)


def test_the_height_is_from_the_floor_with_glides_under_the_posts(
    small_bed: Any, bed_with: Callable[..., Any]
) -> None:
    (post,) = small_bed.parts["head.posts"]
    lifted = replace(post, at=(*post.at[:2], 5.0))  # the lowest wood, on glides of 5 mm

    assert summary.summary(bed_with(head_posts=(lifted,)))["overall"]["height"] == 605


def test_weights_follow_from_wood_and_density(small_bed: Any) -> None:
    weights = summary.summary(small_bed)["weights_kg"]
    poplar, ply = material("yellow_poplar").density_kg_m3, material("birch_ply_12").density_kg_m3

    rail = (2000 * 150 * 25 - 140 * 6 * 8) * 1e-9 * poplar
    posts = 2 * (600 * 70 * 60 - math.pi * 16 * 60) * 1e-9 * poplar
    assert weights["left side"] == pytest.approx(rail, abs=0.001)  # told to the gram
    assert weights["right side"] == pytest.approx(rail, abs=0.001)
    assert weights["headboard"] == pytest.approx(posts, abs=0.001)
    assert weights["drawers"] == pytest.approx(2 * 500 * 120 * 12 * 1e-9 * ply, abs=0.001)
    assert weights["total"] == pytest.approx(sum(weights.values()) / 2, abs=0.003)
