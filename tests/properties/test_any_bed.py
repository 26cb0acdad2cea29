"""Whatever is asked for: a bed that can be built, or one sentence that says why not."""

from collections import Counter
from typing import get_args

import pytest

from model.bed import solve
from model.book import open_book
from model.brief import all_choices
from model.brief.ends import EndStyle
from model.brief.sides import SideKind
from model.mend import candidates
from model.solids.exact import exact_overlaps
from tests.properties.conftest import Drawn
from tests.properties.designs import random_design


def test_every_design_is_built_or_refused_with_a_sentence(drawn: Drawn) -> None:
    for outcome in drawn.outcomes:
        if outcome.refusal is not None:
            assert outcome.refusal.sentence.endswith("."), outcome.design.name
            assert outcome.refusal.field, outcome.design.name


def test_every_refusal_leads_to_a_choice_of_the_maker(drawn: Drawn) -> None:
    book = open_book()

    for outcome in drawn.outcomes:
        if outcome.refusal is not None:
            names = candidates(outcome.refusal, book)
            assert names, f"{outcome.design.name}: {outcome.refusal.sentence}"
            assert set(names) <= set(all_choices())


def test_no_bed_that_is_built_has_parts_that_collide_hang_or_hit(drawn: Drawn) -> None:
    for outcome in drawn.built:
        assert outcome.faults == (), outcome.design.name


def test_at_least_three_designs_in_five_are_built(drawn: Drawn) -> None:
    """Refusing everything would pass every other test here."""
    assert len(drawn.built) >= 0.6 * len(drawn.outcomes)


@pytest.mark.parametrize("end", ["head", "foot"])
def test_every_end_style_is_built_fifty_times(drawn: Drawn, end: str) -> None:
    found = Counter(o.design.value(f"{end}.style") for o in drawn.built)

    assert {style: found[style] for style in get_args(EndStyle) if found[style] < 50} == {}


@pytest.mark.parametrize("side", ["left", "right"])
def test_every_kind_of_side_is_built_fifty_times(drawn: Drawn, side: str) -> None:
    found = Counter(o.design.value(f"{side}.side") for o in drawn.built)

    assert {kind: found[kind] for kind in get_args(SideKind) if found[kind] < 50} == {}


def test_every_row_of_drawers_is_built_fifty_times(drawn: Drawn) -> None:
    found = Counter(row for o in drawn.built for row in o.rows)

    assert {row: found[row] for row in ("left", "right", "foot") if found[row] < 50} == {}


def test_every_word_of_every_choice_is_built(drawn: Drawn) -> None:
    """No option of the family is a dead end."""
    built = {
        (n, o.design.value(n)) for o in drawn.built for n, c in all_choices().items() if c.options
    }

    words = {(n, word) for n, c in all_choices().items() for word in c.options}
    assert words - built == set()


def test_every_printed_size_is_a_named_dimension(drawn: Drawn) -> None:
    """Arithmetic hidden in a part would leave a size that nobody can ask why."""
    for outcome in drawn.built:
        assert outcome.unnamed == (), outcome.design.name


def test_exact_solids_share_no_space_either(drawn: Drawn) -> None:
    """A second proof by another way. Reference: solid booleans of the library manifold3d."""
    for bed in drawn.beds[:12]:
        assert exact_overlaps(bed.parts, bed.pieces) == (), bed.design.name


def test_a_bed_changed_step_by_step_equals_one_made_afresh(drawn: Drawn) -> None:
    last = drawn.beds[0]

    for bed in drawn.beds[1:]:
        last = solve(bed.design, last)
        assert dict(last.dimensions.values) == dict(bed.dimensions.values)


def test_a_row_adds_up_to_its_frame(drawn: Drawn) -> None:
    for bed in drawn.beds:
        for row in ("left", "right", "foot"):
            if not bed[f"{row}.bays"]:
                continue
            openings = bed[f"{row}.bays"] * bed[f"{row}.opening_width"]
            stiles = bed[f"{row}.first_end_stile"] + bed[f"{row}.last_end_stile"]
            stiles += (bed[f"{row}.bays"] - 1) * bed["mid_stile"]
            assert openings + stiles == pytest.approx(bed[f"{row}.row_run"], abs=1e-6)  # float dust


def test_the_same_seed_draws_the_same_design() -> None:
    assert random_design(7) == random_design(7)
