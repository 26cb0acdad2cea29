"""A choice refuses what it cannot be, in a sentence that names the field and the reason."""

from __future__ import annotations

import math
from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.brief.declare import (
    Choice,
    choices_of,
    count,
    flag,
    length,
    measured,
    number,
    option,
    row_of,
)
from model.errors import BadInput
from model.units import GRIDS, Count, Measured, Mm, Share, ShopGrid

INCH = 25.4
# Whole numbers beyond what a float can hold, as a spoilt file may have them.
HUGE = [pytest.param(10**400, id="huge"), pytest.param(-(10**400), id="hugely negative")]
WOODS = {"ash": "a row for ash", "oak": "a row for oak"}


class Bench:
    """Bench"""

    rail: Mm = length(
        184, cut=True, least=90, most=350, why_least="Too narrow to carry.", why_most="Too heavy.",
        help="Width of the rail.",
    )  # fmt: skip
    fit: Mm = length(13, least=0, most=38, help="Room beside it.")
    rail_measured: Measured = measured("the rail", least=80, most=360)
    slats: Count = count(14, least=4, most=60, why_least="Fewer do not carry.", help="How many.")
    open_share: Share = number(0.2, least=0, most=1, help="How much is open.")
    deck: Literal["slats", "panels"] = option("slats", help="What one lies on.")
    has_back: bool = flag(False, help="A back.")
    wood: str = row_of(lambda: WOODS, "oak", help="What it is made of.")
    note = "no choice at all"


class Leg:
    """Leg"""

    scopes = ("left", "right")
    defaults = {"right.height": 90.0}

    height: Mm = length(60, least=10, most=200, help="Floor to the rail.")
    leg_kind: Literal["round", "square"] = option("round", label="Shape of the leg", help="Shape.")


BENCH = {choice.name: choice for choice in choices_of(Bench)}


def refused(name: str, value: Any, unit: str = "mm") -> BadInput:
    with pytest.raises(BadInput) as problem:
        BENCH[name].checked(value, unit)
    assert problem.value.field == name
    assert name in problem.value.sentence
    return problem.value


# ---------------------------------------------------------------- lengths


@pytest.mark.parametrize("value", [90, 350, 184.0, "184", "184 mm", "18,4 cm"])
def test_a_length_inside_its_range_is_taken(value: Any) -> None:
    checked = BENCH["rail"].checked(value)

    assert 90 <= checked <= 350
    assert type(checked) is float


def test_a_bare_number_is_read_in_the_unit_that_is_shown() -> None:
    assert BENCH["rail"].checked("7 1/4", "inch") == pytest.approx(7.25 * INCH)
    assert BENCH["rail"].checked("184 mm", "inch") == 184


def test_a_number_that_is_no_text_is_in_mm_whatever_is_shown() -> None:
    assert BENCH["rail"].checked(184, "inch") == 184


def test_both_ends_of_a_range_belong_to_it() -> None:
    assert BENCH["rail"].checked("90") == 90
    assert BENCH["rail"].checked("350") == 350


def test_too_little_is_refused_with_the_least_and_its_reason() -> None:
    sentence = refused("rail", 89.9).sentence

    assert sentence == "rail is 89.9 mm; the least is 90 mm. Too narrow to carry."


def test_too_much_is_refused_with_the_most_and_its_reason() -> None:
    sentence = refused("rail", "40 cm").sentence

    assert sentence == "rail is 400 mm; the most is 350 mm. Too heavy."


def test_an_end_without_a_reason_is_told_without_one() -> None:
    assert refused("fit", 50).sentence == "fit is 50 mm; the most is 38 mm."


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, -1, -1e300, 1e300, *HUGE])
def test_no_length_is_infinite_negative_or_huge(value: Any) -> None:
    refused("fit", value)
    refused("rail_measured", value)


@pytest.mark.parametrize("value", [True, False, None, [184], {"mm": 184}, b"184", 184j, object()])
def test_what_is_no_number_is_no_length(value: Any) -> None:
    refused("rail", value)


@pytest.mark.parametrize(
    "text", ["", "  ", "wide", "184 kg", "-5", "1/0", "nan", "inf", "1e400", "9" * 79, "1" * 500]
)
def test_a_text_that_is_no_length_is_refused_in_a_sentence(text: str) -> None:
    assert len(refused("rail", text).sentence) < 300


@given(st.one_of(st.none(), st.booleans(), st.floats(), st.integers(), st.text(), st.binary()))
def test_whatever_comes_a_choice_takes_it_or_says_why_not(value: Any) -> None:
    for choice in BENCH.values():
        try:
            checked = choice.checked(value)
        except BadInput as problem:
            assert problem.field == choice.name
        else:
            assert choice.checked(checked) == checked


# ---------------------------------------------------------------- measured


@pytest.mark.parametrize("nothing", [None, "", "   "])
def test_a_measured_value_may_be_left_out(nothing: Any) -> None:
    assert BENCH["rail_measured"].checked(nothing) is None


def test_a_measured_value_has_a_range_too() -> None:
    assert BENCH["rail_measured"].checked("183.4") == 183.4
    assert "the least is 80 mm" in refused("rail_measured", 8).sentence


def test_only_a_measured_value_may_be_left_out() -> None:
    may = {name for name, choice in BENCH.items() if choice.may_be_empty}

    assert may == {"rail_measured"}


# ---------------------------------------------------------------- counts and shares


@pytest.mark.parametrize("value", [14, 14.0, "14", "14.0"])
def test_a_count_is_a_whole_number(value: Any) -> None:
    checked = BENCH["slats"].checked(value)

    assert (checked, type(checked)) == (14, int)


@pytest.mark.parametrize(
    "value", [14.5, "14,5", "fourteen", "", True, None, math.nan, math.inf, *HUGE]
)
def test_what_is_no_whole_number_is_no_count(value: Any) -> None:
    refused("slats", value)


def test_a_count_out_of_its_range_is_told_without_a_unit() -> None:
    assert refused("slats", 3).sentence == "slats is 3; the least is 4. Fewer do not carry."


def test_a_share_is_a_plain_number() -> None:
    assert BENCH["open_share"].checked("0,25") == 0.25
    assert "mm" not in refused("open_share", 2).sentence


# ---------------------------------------------------------------- keys and yes or no


def test_an_option_is_one_of_its_words() -> None:
    assert BENCH["deck"].checked("panels") == "panels"
    assert refused("deck", "springs").sentence == (
        "deck cannot be 'springs'. It can be: slats, panels."
    )


def test_a_row_is_one_of_the_tables_keys() -> None:
    assert BENCH["wood"].checked("ash") == "ash"
    assert "ash, oak" in refused("wood", "yew").sentence


@pytest.mark.parametrize("value", [None, 1, True, ["slats"], ""])
def test_what_is_no_text_is_no_key(value: Any) -> None:
    refused("deck", value)
    refused("wood", value)


@pytest.mark.parametrize(
    ("value", "meant"), [(True, True), (False, False), ("yes", True), ("No", False), (" on ", True)]
)
def test_yes_and_no_are_read_as_they_are_said(value: Any, meant: bool) -> None:
    assert BENCH["has_back"].checked(value) is meant


@pytest.mark.parametrize("value", [1, 0, None, "maybe", ""])
def test_what_is_neither_yes_nor_no_is_refused(value: Any) -> None:
    refused("has_back", value)


# ---------------------------------------------------------------- what the rules receive


def test_a_cut_length_reaches_the_rules_on_the_grid() -> None:
    sixteenth = GRIDS["1/16 in"]

    given_length = BENCH["rail"].given(184.0, sixteenth)

    assert given_length == pytest.approx(116 * INCH / 16)  # 115.9 steps


def test_a_fit_or_a_measured_size_stays_as_it_is() -> None:
    """No saw is set to them: putting them on the grid would change what the tape said."""
    sixteenth = GRIDS["1/16 in"]

    assert BENCH["fit"].given(13.0, sixteenth) == 13.0
    assert BENCH["rail_measured"].given(183.7, sixteenth) == 183.7
    assert BENCH["rail_measured"].given(None, sixteenth) is None


def test_rules_receive_the_row_and_not_its_key() -> None:
    assert BENCH["wood"].given("ash", GRIDS["1 mm"]) == "a row for ash"


# ---------------------------------------------------------------- how a topic is read


def test_a_topic_gives_its_choices_in_their_order() -> None:
    assert list(BENCH) == [
        *("rail", "fit", "rail_measured", "slats"),
        *("open_share", "deck", "has_back", "wood"),
    ]


def test_a_label_is_the_name_in_words_unless_it_has_its_own() -> None:
    legs = {choice.name: choice for choice in choices_of(Leg)}

    assert BENCH["rail_measured"].label == "Rail measured"
    assert legs["left.leg_kind"].label == "Shape of the leg"


def test_a_topic_of_both_sides_gives_each_choice_twice() -> None:
    legs = {choice.name: choice for choice in choices_of(Leg)}

    assert list(legs) == ["left.height", "left.leg_kind", "right.height", "right.leg_kind"]
    assert [legs[f"{side}.height"].default for side in Leg.scopes] == [60.0, 90.0]
    assert [legs[f"{side}.height"].topic for side in Leg.scopes] == ["Left leg", "Right leg"]


def test_an_option_takes_its_words_from_the_annotation() -> None:
    assert BENCH["deck"].options == ("slats", "panels")


def test_kinds_are_told_apart() -> None:
    def those(test: str) -> list[str]:
        return [name for name, choice in BENCH.items() if getattr(choice, test)]

    assert those("is_length") == ["rail", "fit", "rail_measured"]
    assert those("is_count") == ["slats"]
    assert those("is_flag") == ["has_back"]


def test_a_grid_may_be_picked_like_any_row() -> None:
    class Shop:
        """Shop"""

        grid: ShopGrid = row_of(lambda: GRIDS, "1 mm", help="Step.")

    (choice,) = choices_of(Shop)

    assert isinstance(choice, Choice)
    assert choice.keys == tuple(GRIDS)
    assert choice.given("0.5 mm", GRIDS["1 mm"]).step == 0.5
