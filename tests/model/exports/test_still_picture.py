"""The picture of the page, opened with another reader."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from PIL import Image

from model.bed import Design, solve
from model.exports.still_picture import SIZE, still_picture

PAPER = (246, 244, 239)
BLUE = "#2040c0"


def opened(content: bytes) -> Any:
    with Image.open(io.BytesIO(content)) as picture:
        picture.load()
        assert picture.format == "PNG" and picture.mode == "RGB"
        return np.asarray(picture).astype(int)


@pytest.fixture
def bed(small_bed: Any) -> Any:
    return replace(small_bed, values=dict(small_bed.values) | {"finished": "what shows"})


@pytest.fixture(scope="module")
def whole() -> Any:
    return solve(Design())


def test_the_bed_stands_in_the_middle_with_paper_all_round(whole: Any) -> None:
    picture = opened(still_picture(whole, None))

    assert picture.shape == (SIZE[1], SIZE[0], 3)
    drawn = np.abs(picture - PAPER).max(axis=2) > 3
    rows, columns = np.flatnonzero(drawn.any(axis=1)), np.flatnonzero(drawn.any(axis=0))
    assert abs((rows[0] + rows[-1]) / 2 - SIZE[1] / 2) < 3
    assert abs((columns[0] + columns[-1]) / 2 - SIZE[0] / 2) < 3
    # 0.92 of the tighter side, less what no face of the bed reaches.
    assert max(np.ptp(rows) / SIZE[1], np.ptp(columns) / SIZE[0]) == pytest.approx(0.92, abs=0.02)
    assert 0.2 < drawn.mean() < 0.8


def test_paint_shows_on_the_frame_and_leaves_the_mattress(whole: Any) -> None:
    wood, painted = opened(still_picture(whole, None)), opened(still_picture(whole, BLUE))

    is_blue = painted[..., 2] > painted[..., 0] + 40
    assert is_blue.mean() > 0.1
    assert not (wood[..., 2] > wood[..., 0] + 40).any()
    middle = SIZE[1] // 2 - 20, SIZE[0] // 2
    assert painted[middle].tolist() == wood[middle].tolist()


def test_what_is_nearer_hides_what_is_behind(whole: Any) -> None:
    """In the middle lies the mattress, grey as bedding is, over slats of yellow wood."""
    picture = opened(still_picture(whole, None))

    middle = picture[SIZE[1] // 2 - 30 : SIZE[1] // 2 - 10, SIZE[0] // 2 - 20 : SIZE[0] // 2]
    assert np.ptp(middle, axis=2).max() < 10
    assert middle.min() > 200


def test_faces_are_bounded_by_darker_lines(bed: Any) -> None:
    rail = {name: made for name, made in bed.parts.items() if name == "right.side_rail"}

    picture = opened(still_picture(replace(bed, parts=rail), "#ffffff"))

    light = picture.min(axis=2)
    edges, faces = light < 150, (light >= 150) & (light < 230)
    assert faces.sum() > 4 * edges.sum() > 400  # lines of a dot or two, 2 m long and more


def test_the_same_bed_gives_the_same_bytes(bed: Any) -> None:
    assert still_picture(bed, BLUE) == still_picture(bed, BLUE) != still_picture(bed, None)
