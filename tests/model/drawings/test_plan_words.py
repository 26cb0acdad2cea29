"""Sentences about plans: proven or not, bought or on hand, never more than is known."""

from dataclasses import replace

import pytest

from model.cutting.record import Layout, LeftOut, Plan, Region, Stock
from model.drawings.cut_steps import sawn_plan
from model.drawings.plan_words import (
    bound_words,
    kept_share,
    left_out_words,
    offcut_words,
    plan_sentences,
    proof_words,
    runs_words,
    settings_words,
    title_words,
    used_share,
)
from tests.model.drawings.sample_layout import cut_plan, plan_of, small_sheet

THREE = plan_of(small_sheet(1), small_sheet(2), small_sheet(3))


def on_hand(plan: Plan, *numbers: int) -> Plan:
    layouts = tuple(
        replace(each, stock=replace(each.stock, on_hand=each.number in numbers))
        for each in plan.layouts
    )
    return replace(plan, layouts=layouts, value=plan.value - len(numbers))


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        (THREE, "3 sheets; no plan can need fewer."),
        (replace(THREE, lower_bound=1.2), "3 sheets; no plan can need fewer than 2."),
        (
            replace(on_hand(THREE, 2), lower_bound=2.0),
            "3 sheets, 1 of them on hand; no plan can buy fewer.",
        ),
        (on_hand(plan_of(small_sheet()), 1), "1 sheet, on hand: nothing is bought."),
        (
            replace(on_hand(THREE, 1, 2, 3), measure="area", value=2e6, lower_bound=2e6),
            "3 sheets, on hand, so nothing is bought; no plan can take less.",
        ),
        (
            replace(THREE, measure="price", value=210.0, lower_bound=190.5),
            "3 sheets; no plan can cost less than 190.50, and this one takes 210.00.",
        ),
        (
            replace(THREE, measure="area", value=2e6, lower_bound=1.9e6),
            "3 sheets; no plan can take less than 1.90 m², and this one takes 2.00 m².",
        ),
        (
            replace(THREE, measure="length", value=9e3, lower_bound=9e3),
            "3 sheets; no plan can take less.",
        ),
        (replace(THREE, layouts=()), "Nothing is cut."),
    ],
)
def test_the_bound_is_said_as_it_is_known(plan: Plan, said: str) -> None:
    assert bound_words(plan, "sheet", "mm") == said


def test_a_bound_that_holds_for_some_plans_only_says_for_which() -> None:
    said = bound_words(replace(THREE, covers="any plan of rips then crosscuts"), "board", "mm")

    assert said.startswith("3 boards; no such plan can need fewer.")
    assert "any plan of rips then crosscuts" in said


def test_feet_are_feet() -> None:
    """A foot is 304.8 mm, a square foot its square."""
    plan = replace(THREE, measure="length", value=30480.0, lower_bound=3048.0)

    assert "less than 10.0 ft, and this one takes 100.0 ft" in bound_words(plan, "board", "inch")
    plan = replace(plan, measure="area", value=929030.4, lower_bound=92903.04)
    assert "less than 1.0 sq ft, and this one takes 10.0" in bound_words(plan, "board", "inch")


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        (THREE, "fewest"),
        (replace(THREE, lower_bound=2.0), "at least 2"),
        (replace(THREE, measure="area", value=100.0, lower_bound=95.0), "within 5.0%"),
        (replace(THREE, measure="price"), "cheapest"),
        (replace(THREE, covers="any plan of rips then crosscuts"), "fewest of its kind"),
        (replace(THREE, layouts=()), "–"),
    ],
)
def test_an_unproven_plan_is_never_called_best(plan: Plan, said: str) -> None:
    whole = sawn_plan(cut_plan(small_sheet()), "mm")

    assert proof_words(replace(whole, cut=replace(whole.cut, plan=plan))) == said


def test_what_was_begun_before_a_change_is_held_to_no_bound() -> None:
    begun = sawn_plan(cut_plan(small_sheet(), key="ply-18, begun 1", lower_bound=0.0), "mm")

    assert proof_words(begun) == "begun"
    assert plan_sentences(begun, "mm") == (
        "Begun before the bed was changed: 1 sheet, as far as it was cut.",
    )


@pytest.mark.parametrize(
    ("numbers", "said"),
    [((3,), "3"), ((1, 2, 3, 4), "1–4"), ((7, 1, 2, 2), "1–2, 7"), ((), "")],
)
def test_numbers_that_follow_each_other_are_told_short(numbers: tuple[int, ...], said: str) -> None:
    assert runs_words(numbers) == said


def test_shares_are_of_the_stock_that_is_cut_up() -> None:
    """Two pieces 900 x 300 and one 700 x 200 of a sheet 2440 x 1220; hand-reckoned offcuts."""
    plan = plan_of(small_sheet())

    assert used_share(plan) == pytest.approx((2 * 900 * 300 + 700 * 200) / (2440 * 1220))
    # Beside each strip and above both: what is left of 2434 x 1214 after kerfs of 3.2.
    right = (2434 - 2 * 903.2) * 300 + (2434 - 703.2) * 200
    assert kept_share(plan) == pytest.approx((right + 2434 * (1214 - 506.4)) / (2440 * 1220))


def test_settings_are_held_against_the_fewest_that_any_order_has() -> None:
    sawn = sawn_plan(cut_plan(small_sheet(1), small_sheet(2)), "mm")

    # Two trims, rips at 300 and 200, stops at 900 and 700: each once for both sheets.
    assert settings_words(sawn) == "6 settings for 14 cuts; no order of them has fewer."
    assert settings_words(replace(sawn, floor=5)).endswith("has fewer than 5.")


def test_the_largest_offcut_is_told_as_near_as_it_is_measured() -> None:
    assert offcut_words(plan_of(small_sheet()), "mm") == "Largest offcut 2434 × 708."


def test_a_plan_without_offcuts_says_so() -> None:
    bare = Layout(
        number=1,
        stock=Stock(key="A", length=900.0, width=90.0),
        tree=Region(x=0.0, y=0.0, length=900.0, width=90.0, use="waste"),
    )

    assert offcut_words(plan_of(bare), "mm") == "No offcut is worth keeping."


def test_what_is_left_out_comes_first_and_in_the_makers_unit() -> None:
    out = LeftOut("D1", 3, "No sheet is longer than 2540 mm.")
    cut = cut_plan(small_sheet(), left_out=(out,))

    assert left_out_words(cut.plan, "inch") == (
        'D1 (3) is left out. No sheet is longer than 100".',
    )
    assert plan_sentences(sawn_plan(cut, "mm"), "mm")[0].startswith("D1 (3) is left out.")


def test_a_title_names_the_board_where_it_is_one_of_a_kind() -> None:
    sawn = sawn_plan(cut_plan(small_sheet()), "mm")
    layout = sawn.layouts[0]
    assert title_words(sawn, layout) == "Sheet 1 of 1"

    own = replace(layout, stock=replace(layout.stock, key="offcut behind the door", on_hand=True))

    assert title_words(sawn, own) == "Sheet 1 of 1 · offcut behind the door"
