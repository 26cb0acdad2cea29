"""A refused design comes with a way out, and the way out was built."""

from typing import Any

import pytest

from model.bed import Design, solve
from model.book import open_book
from model.brief import all_choices
from model.errors import CannotBuild
from model.mend import Stopped, works
from tests.properties.conftest import Drawn

TRIED = 20  # refused designs: some hundred beds are built for each

ASKED = {
    "drawers too many for the rail": {"left.drawers": 6, "mid_stile": 200, "mattress_length": 1500},
    "drawers that meet in the middle": {"left.depth": "full"},
    "rail too low for an opening": {"rail_height": 200},
    "cleat that hangs into the openings": {"top_rail_width": 80},
    "beam in the drawers' way": {"foot.drawers": 2, "beam": "legs", "beam_height": 150},
}


def _refused(design: Design) -> CannotBuild:
    with pytest.raises(CannotBuild) as refusal:
        solve(design)
    return refusal.value


def _check_way_out(design: Design, refusal: CannotBuild) -> None:
    mended = works(design, refusal, open_book())

    assert mended.sentence.startswith(refusal.sentence)
    solve(design.with_choices(mended.changes))
    if mended.range is not None:
        for end in mended.range:
            value: Any = int(end) if all_choices()[mended.choice].is_count else end
            solve(design.with_choices({mended.choice: value}))
    for key in mended.keys:
        word: Any = {"yes": True, "no": False}.get(key, key)
        solve(design.with_choices({mended.choice: word}))
    assert mended.range or mended.keys or mended.conflict


def test_every_way_out_of_random_refusals_builds_at_both_ends(drawn: Drawn) -> None:
    refused = [o for o in drawn.outcomes if o.refusal is not None]

    for outcome in refused[:: max(1, len(refused) // TRIED)][:TRIED]:
        assert outcome.refusal is not None
        _check_way_out(outcome.design, outcome.refusal)


@pytest.mark.parametrize("asked", list(ASKED))
def test_the_usual_mistakes_have_a_way_out(asked: str) -> None:
    design = Design().with_choices(ASKED[asked])

    _check_way_out(design, _refused(design))


def test_the_range_names_its_choice_and_its_ends_in_the_shown_unit() -> None:
    design = Design().with_choices({"top_rail_width": 80, "slat_stock": 19.05})

    mended = works(design, _refused(design), open_book())

    assert mended.choice == "top_rail_width"
    assert 'Top rail width from 3 3/4" to' in mended.sentence
    # recess 38.1, slat 19.05 and cleat 38.1 mm are 95.25 mm together


def test_choices_in_conflict_are_named_when_no_single_one_helps() -> None:
    """Both sides' drawers cross the bed, and the foot has drawers too: one change is not enough."""
    design = Design().with_choices(
        {"left.depth": "full", "right.depth": "full", "foot.drawers": 3, "foot.depth": "full"}
    )

    mended = works(design, _refused(design), open_book())

    assert len(mended.conflict) >= 2
    assert "in conflict" in mended.sentence
    solve(design.with_choices(mended.changes))


def test_nobody_waits_for_an_answer_that_is_no_longer_asked_for() -> None:
    design = Design().with_choices({"top_rail_width": 80})

    with pytest.raises(Stopped):
        works(design, _refused(design), open_book(), stop=lambda: True)
