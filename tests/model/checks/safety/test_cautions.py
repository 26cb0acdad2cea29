"""The usual cautions go with every plan, each where it applies."""

from __future__ import annotations

from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.checks.safety.cautions import all_cautions, cautions
from model.exports import cautions_text, checks_text
from model.exports.summary import summary


def bed(**choices: Any) -> Bed:
    named = {name.replace("__", "."): value for name, value in choices.items()}
    return solve(Design().with_choices(named))


def keys(of: Bed) -> list[str]:
    return [each.key for each in cautions(of.pieces, of.materials)]


SOLID = {
    **{"left__side": "plain", "right__side": "plain", "panel_material": "yellow_poplar"},
    **{"head__style": "slats", "foot__style": "low rail"},
}


def test_the_first_caution_says_whose_word_counts() -> None:
    first = all_cautions()[0].text

    assert "not an engineer's certificate" in first
    assert "local code" in first and "licensed or qualified person" in first


def test_what_can_hurt_in_the_shop_and_in_the_bed_is_named() -> None:
    assert {"children", "cords", "load", "mattress", "machines", "dust", "finish", "lifting"} <= {
        each.key for each in all_cautions()
    }


def test_a_bed_with_drawers_and_sheets_shows_every_caution() -> None:
    assert keys(bed()) == [each.key for each in all_cautions()]


def test_a_bed_of_boards_without_drawers_shows_neither_of_theirs() -> None:
    found = keys(bed(**SOLID))

    assert "drawers" not in found and "sheets" not in found
    assert len(found) == len(all_cautions()) - 2


@pytest.mark.parametrize("columns", [80, 40])
def test_the_command_line_prints_them_after_the_checks(columns: int) -> None:
    built = bed(**SOLID)
    told = list(checks_text.lines(built, columns))

    start, wanted = told.index("Cautions"), list(cautions_text.lines(built, columns))

    assert all(len(line) <= columns for line in told)
    assert told[start : start + len(wanted)] == wanted
    assert not [line for line in told[start:] if line.startswith("HOLDS")]


def test_the_plan_package_carries_them() -> None:
    built = bed(**SOLID)

    told = summary(built)["cautions"]

    assert [each["title"] for each in told] == [
        each.title for each in cautions(built.pieces, built.materials)
    ]
    assert all(each["text"].endswith(".") for each in told)
