"""Of any bed, sides can be hung on their posts with what stands between them already."""

from __future__ import annotations

import numpy as np

from model.bed import Bed
from tests.properties.conftest import Drawn

SIDES = ("left", "right")
BETWEEN = ("bearers", "runners", "kickers", "kicker_posts")


def wood_of(bed: Bed, *rules: str) -> np.ndarray:
    """Lower and upper corners (n, 2, 3) of all pieces that rules of a name made for the sides."""
    made = [name for side in SIDES for rule in rules if (name := f"{side}.{rule}") in bed.parts]
    rows = np.isin(bed.pieces.rule, [bed.pieces.rules.index(name) for name in made])
    low, high = bed.pieces.bounds
    return np.stack([low[rows], high[rows]], axis=1)


def test_a_side_passes_the_ends_of_what_reaches_from_frame_to_frame(drawn: Drawn) -> None:
    """What fills the bed from side to side exactly cannot be passed by a side that is let down; a
    sixteenth of an inch at each end is what slats get.
    """
    seen = 0
    for bed in drawn.beds:
        inner = bed["rail_inner_x"]
        wide = wood_of(bed, *BETWEEN)
        reach = wide[:, :, 0]
        through = (reach[:, 0] < 10 - inner) & (reach[:, 1] > inner - 10)
        for low, high in reach[through].tolist():
            assert low + inner >= 1.5 - 1e-6, bed.design.name
            assert inner - high >= 1.5 - 1e-6, bed.design.name
            seen += 1

    assert seen > 10


def test_slides_hang_above_the_rail_of_a_lifted_side_or_the_check_tells(drawn: Drawn) -> None:
    """Worked out from the pieces of rail and slides alone, row by row."""
    seen = 0
    for bed in drawn.beds:
        lift = bed["connector_lift"]
        told = {each.id: each for each in bed.findings if each.id.endswith("side_lifts_clear")}
        for side in SIDES:
            rails = bed.parts.get(f"{side}.bottom_rail", ())
            slides = bed.parts.get(f"{side}.slide_holders", ())
            reaches = bed[f"{side}.box_front_plane"] < bed[f"{side}.back_plane"]
            if not (lift and rails and slides and reaches):
                continue
            room = min(each.at[2] for each in slides) - (rails[0].at[2] + rails[0].width)
            found = told[f"{side}.side_lifts_clear"]
            assert found.value <= room + 1e-6, bed.design.name
            assert (found.margin >= -1e-6) == (found.value >= lift - 1e-6)
            seen += 1

    assert seen > 10
