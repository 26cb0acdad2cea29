"""What is said of a choice can be typed as it stands, in the maker's own unit."""

import pytest

from app.fields.wording import in_unit, outside_text, range_text, within, works_text
from model.brief import all_choices
from model.read_length import parse_length

CHOICES = dict(all_choices())


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("name", [n for n, c in CHOICES.items() if c.is_length])
def test_both_ends_of_a_range_as_shown_lie_inside_it(name: str, unit: str) -> None:
    choice = CHOICES[name]

    said = range_text(choice, unit).removeprefix("From ").partition(". ")[0]
    ends = [parse_length(end, unit) for end in said.split(" to ")]

    assert [outside_text(choice, end, unit) for end in ends] == ["", ""]
    assert "~" not in said


def test_a_range_narrower_than_a_step_is_shown_as_it_is() -> None:
    assert within(CHOICES["side_fit"], 10.1, 10.3, "mm") == (10.1, 10.3)


def test_a_sentence_speaks_in_the_shown_unit() -> None:
    assert in_unit("They hang 25.4 mm low.", "inch") == 'They hang 1" low.'
    assert in_unit("From 50.8 to 76.2 mm is usual.", "inch") == 'From 2" to 3" is usual.'
    assert in_unit("They hang 25.4 mm low.", "mm") == "They hang 25.4 mm low."


def test_options_that_work_are_named_as_the_trade_does() -> None:
    assert works_text(CHOICES["beam"], ("none", "legs"), "mm") == "Beam: none, legs would work."
    assert (
        works_text(CHOICES["left.drawers"], (2, 3), "mm") == "Left drawers from 2 to 3 would work."
    )
