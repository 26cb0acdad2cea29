"""Random designs over the whole parameter space: every style, every side, every row; numbers all
over their range.
"""

from __future__ import annotations

import random
from contextlib import suppress
from typing import Any

from model.bed import Bed, Design, solve
from model.brief import all_choices
from model.brief.declare import Choice
from model.errors import CannotBuild

ANYWHERE = 0.012  # share of the numbers, two in each design, drawn from their whole range
NEAR = 0.35  # share that are drawn near their default
WORD_CHANGES = 0.55  # share of the words that are drawn anew

SHAPES = ("head.style", "foot.style", "left.side", "right.side", "deck", "beam", "slide")


def random_design(seed: int) -> Design:
    """A design drawn with this seed; the words that shape the bed are always drawn anew."""
    rng = random.Random(seed)
    drawn = {name: _drawn(rng, choice) for name, choice in all_choices().items()}
    changes = {name: value for name, value in drawn.items() if value is not None}
    return Design(name=f"random {seed}").with_choices(_paired(rng, changes))


def built_from(seed: int, count: int) -> tuple[Bed, ...]:
    """So many beds that can be built, of designs with this seed and those after it."""
    found: list[Bed] = []
    while len(found) < count:
        with suppress(CannotBuild):
            found.append(solve(random_design(seed)))
        seed += 1
    return tuple(found)


def _paired(rng: random.Random, changes: dict[str, Any]) -> dict[str, Any]:
    """What nobody would ask for without the other: mostly bolts in thick rails, bearers under a
    beam on them.
    """
    if "bolt" in changes.get("connector", "") and rng.random() < 0.9:
        changes["frame_stock"] = rng.choice((38.1, 40.0, 44.45))
        changes["post_width"] = rng.choice((76.2, 88.9, 101.6))
        changes["bottom_rail_width"] = rng.choice((76.2, 88.9))
    if changes.get("foot.drawers"):
        for side in ("left", "right"):
            changes[f"{side}.drawers"] = min(changes[f"{side}.drawers"], 2)
    drawers = all(
        changes.get(f"{side}.side") == "drawer" and changes.get(f"{side}.drawers")
        for side in ("left", "right")
    )
    if changes.get("beam") == "bearers" and not drawers and rng.random() < 0.9:
        changes["beam"] = rng.choice(("none", "legs", "ends"))
    if changes.get("beam") == "ends" and changes.get("foot.drawers") and rng.random() < 0.9:
        changes["beam"] = "none"
    return changes


def _drawn(rng: random.Random, choice: Choice) -> Any:
    if choice.is_flag:
        return rng.random() < 0.3
    if choice.name.endswith("drawers"):
        return rng.choice(
            (0, 1, 2, 2, 3, 3, 4, 6) if not choice.name.startswith("foot") else (0, 0, 0, 1, 2)
        )
    if choice.keys:
        shaping = choice.name in SHAPES
        return rng.choice(choice.keys) if shaping or rng.random() < WORD_CHANGES else None
    return _number(rng, choice)


def _number(rng: random.Random, choice: Choice) -> float | None:
    assert choice.least is not None and choice.most is not None
    luck = rng.random()
    if luck < ANYWHERE:
        value = rng.uniform(choice.least, choice.most)
    elif luck < ANYWHERE + NEAR and choice.default is not None:
        reach = 0.12 * abs(choice.default)
        low, high = (
            max(choice.least, choice.default - reach),
            min(choice.most, choice.default + reach),
        )
        value = rng.uniform(low, high)
    else:
        return None
    return round(value) if choice.is_count else round(value, 3)
