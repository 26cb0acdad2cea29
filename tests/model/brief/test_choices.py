"""Every choice of the bed family says what it is, where it ends, and why it ends there."""

from __future__ import annotations

import re

import pytest

from model.brief import all_choices, defaults, given
from model.brief.declare import Choice
from model.units import GRIDS

EVERY = pytest.mark.parametrize("choice", all_choices().values(), ids=lambda choice: choice.name)
RANGED = pytest.mark.parametrize(
    "choice",
    [choice for choice in all_choices().values() if choice.least is not None],
    ids=lambda choice: choice.name,
)


@EVERY
def test_a_default_is_a_choice_that_could_be_made(choice: Choice) -> None:
    assert choice.checked(choice.default) == choice.default


@EVERY
def test_a_choice_has_help_and_a_label(choice: Choice) -> None:
    assert choice.help.endswith(".")
    assert choice.label and choice.label[0].isupper()


@EVERY
def test_a_choice_is_named_in_words(choice: Choice) -> None:
    assert re.fullmatch(r"((left|right|foot|head)\.)?[a-z]+(_[a-z0-9]+)*", choice.name)


@EVERY
def test_a_choice_has_a_range_or_keys_or_is_yes_or_no(choice: Choice) -> None:
    assert choice.is_flag or choice.keys or choice.least is not None


@RANGED
def test_a_range_says_why_each_end_is_its_end(choice: Choice) -> None:
    assert choice.why_least.endswith(".")
    assert choice.why_most.endswith(".")


@RANGED
def test_a_range_has_room(choice: Choice) -> None:
    assert choice.least is not None and choice.most is not None
    assert choice.least < choice.most


@RANGED
def test_both_ends_of_every_range_can_be_chosen(choice: Choice) -> None:
    assert choice.checked(choice.least) == choice.least
    assert choice.checked(choice.most) == choice.most


def test_a_measured_size_may_differ_from_its_nominal_one_both_ways() -> None:
    for name, choice in all_choices().items():
        nominal = all_choices().get(name.removesuffix("_measured"))
        if choice.may_be_empty and nominal is not None and nominal is not choice:
            assert choice.least is not None and nominal.least is not None
            assert choice.most is not None and nominal.most is not None
            assert choice.least < nominal.least, name
            assert choice.most > nominal.most, name


def test_every_nominal_stock_can_be_measured() -> None:
    stocks = ("frame", "slat", "deck", "box", "bottom", "front", "panel")

    assert {f"{stock}_stock_measured" for stock in stocks} <= set(all_choices())


def test_names_are_given_once() -> None:
    from model.brief import TOPICS
    from model.brief.declare import choices_of

    named = [choice.name for topic in TOPICS for choice in choices_of(topic)]

    assert len(named) == len(set(named))


def test_what_was_not_chosen_is_the_default() -> None:
    received = given({"left.drawers": 2, "mattress_width": 1600.0})

    assert received["left.drawers"] == 2
    assert received["mattress_width"] == 1600
    assert received["right.drawers"] == defaults()["right.drawers"]
    assert set(received) == set(all_choices())


@pytest.mark.parametrize("grid", GRIDS)
def test_all_cut_lengths_reach_the_rules_on_the_makers_grid(grid: str) -> None:
    received = given({"grid": grid})

    assert received["grid"] is GRIDS[grid]
    for name, choice in all_choices().items():
        if choice.cut:
            assert GRIDS[grid].holds(received[name]), name


def test_a_bed_without_foot_drawers_is_the_start() -> None:
    assert defaults()["foot.drawers"] == 0
    assert defaults()["left.drawers"] > 0


def test_the_drawers_of_a_row_end_at_six() -> None:
    """Design of the family: 0 to 6 a side."""
    for row in ("left", "right", "foot"):
        choice = all_choices()[f"{row}.drawers"]
        assert (choice.least, choice.most) == (0, 6)
