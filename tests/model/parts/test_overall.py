"""How large a bed is, with and without what is screwed to its fronts."""

from __future__ import annotations

import pytest

from model.bed import Bed, Design, solve
from model.parts.overall import overall, with_pulls


def bed(**choices: object) -> Bed:
    changes = {key.replace("__", "."): value for key, value in choices.items()}
    return solve(Design().with_choices(changes))


def test_pulls_at_both_sides_make_a_bed_wider_by_both() -> None:
    """A bar pull of 128 mm stands 32 mm out of its front."""
    made = bed(pull="bar_128")

    wood, whole = overall(made.marks, made.pieces), with_pulls(made.marks, made.pieces)

    fronts = [k for k in range(len(made.pieces)) if made.pieces.form(k).hardware.startswith("PULL")]
    low, high = (bound[fronts] for bound in made.pieces.bounds)
    assert whole.width == pytest.approx(max(high[:, 0].max() * 2, wood.width))
    assert wood.width < whole.width <= wood.width + 2 * 32 + 1e-6
    assert (whole.length, whole.height) == (wood.length, wood.height)
    assert high[:, 0].max() == pytest.approx(-low[:, 0].min())


def test_without_pulls_both_are_one() -> None:
    made = bed(pull="cut_out_100")

    assert overall(made.marks, made.pieces) == with_pulls(made.marks, made.pieces)
