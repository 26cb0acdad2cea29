"""Checks are fed by name like rules, once for the bed or for each side or end they speak of."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from types import ModuleType
from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.book import FACTS, check_list
from model.checks.record import COMMON, Finding, Verdict, at_least, at_most, check
from model.checks.run import CheckList
from model.rules import Chapter, RuleBook, rule
from model.units import Count, Mm

BOOK = RuleBook({"gap": Mm, "left.drawers": Count, "right.drawers": Count, "left.gap": Mm}, [])
VALUES = {"gap": 5.0, "left.gap": 2.0, "left.drawers": 3, "right.drawers": 0}


@check("fit", "Room for a finger", about="gap", source="a maker's notebook")
def finger_room(gap: Mm) -> Finding:
    """A finger is
    10 mm thick.

    Nobody reads this.
    """
    return at_least(gap, 4.0)


@check("fit", "Drawers alike")
def alike(drawers: Count, opposite_drawers: Count) -> Finding | None:
    """Both sides look alike."""
    return at_least(drawers, opposite_drawers, unit="drawers") if drawers else None


def asked(*functions: Callable[..., Any], scopes: tuple[str, ...] = ("",)) -> tuple[Finding, ...]:
    module = ModuleType(__name__)
    for function in functions:
        setattr(module, function.__name__, function)
    return CheckList(BOOK, [(module, scopes)]).findings(VALUES)


def test_a_finding_tells_its_check() -> None:
    (finding,) = asked(finger_room)

    assert (finding.id, finding.group, finding.title) == ("finger_room", "fit", "Room for a finger")
    assert (finding.source, finding.about, finding.place) == ("a maker's notebook", "gap", "")


def test_the_reason_is_the_first_paragraph_in_one_line() -> None:
    (finding,) = asked(finger_room)

    assert finding.reason == "A finger is 10 mm thick."


def test_a_check_of_a_side_is_asked_with_its_own_values() -> None:
    left, right = sorted(asked(finger_room, scopes=("left", "right")), key=lambda f: f.id)

    assert (left.id, left.place, left.about, left.value) == (
        *("left.finger_room", "left"),
        *("left.gap", 2.0),
    )
    assert (right.id, right.place, right.about, right.value) == (
        *("right.finger_room", "right"),
        *("gap", 5.0),
    )


def test_a_check_may_look_at_the_opposite_side() -> None:
    (left,) = asked(alike, scopes=("left", "right"))

    assert (left.place, left.value, left.limit) == ("left", 3, 0)


def test_a_check_that_does_not_apply_says_nothing() -> None:
    assert asked(alike, scopes=("right",)) == ()


def test_failed_checks_come_first() -> None:
    verdicts = [f.verdict for f in asked(alike, finger_room, scopes=("left", "right"))]

    assert verdicts == [Verdict.FAILS, Verdict.HOLDS, Verdict.HOLDS]


def test_a_check_without_a_source_is_common_practice() -> None:
    (finding,) = asked(alike, scopes=("left",))

    assert finding.source == COMMON == "common practice, no source"


@check("fit", "Pieces are light")
def light(weights: tuple[float, ...], gap: Mm) -> tuple[Finding, ...]:
    """One finding for every piece."""
    return tuple(
        replace(at_most(weight, gap), id=f"piece_{i}", reason=f"Piece {i} weighs {weight}.")
        for i, weight in enumerate(weights)
    )


def test_a_check_may_ask_for_facts_and_say_several_things() -> None:
    module = ModuleType(__name__)
    vars(module)["light"] = light

    found = CheckList(BOOK, [(module, ("",))], ["weights"]).findings(
        VALUES | {"weights": (3.0, 7.0)}
    )

    assert [(f.id, f.verdict, f.reason) for f in found] == [
        ("light.piece_1", Verdict.FAILS, "Piece 1 weighs 7.0."),
        ("light.piece_0", Verdict.HOLDS, "Piece 0 weighs 3.0."),
    ]


def test_a_finding_leads_back_to_its_check() -> None:
    module = ModuleType(__name__)
    vars(module).update(light=light, finger_room=finger_room)
    checks = CheckList(BOOK, [(module, ("left",))], ["weights"])

    for finding in checks.findings(VALUES | {"weights": (3.0,)}):
        step = checks.step_of(finding.id)
        assert step is not None and finding.id.startswith(step.id)
    assert checks.step_of("left.light.piece_0").function is light  # type: ignore[union-attr]
    assert checks.step_of("left.lighter") is None


def test_a_fact_must_not_hide_a_dimension() -> None:
    with pytest.raises(ValueError, match="gap is both a fact and a dimension"):
        CheckList(BOOK, [], ["gap"])


@check("fit", "Room for two fingers", remedies=("gap", "opposite_drawers"))
def two_fingers(gap: Mm) -> tuple[Finding, ...]:
    """Two fingers are 20 mm thick."""
    mended_otherwise = replace(at_least(gap, 25.0), id="thick", remedies=("right.drawers",))
    return at_least(gap, 20.0), mended_otherwise


def test_a_check_names_what_a_maker_would_turn_first() -> None:
    own, otherwise = asked(two_fingers, scopes=("left",))

    assert own.remedies == ("left.gap", "right.drawers")
    assert otherwise.remedies == ("right.drawers",)


@rule
def double_gap(gap: Mm) -> Mm:
    """Twice as wide."""
    return 2 * gap


def test_only_a_choice_can_be_turned() -> None:
    rules, checks = ModuleType(__name__), ModuleType(__name__)
    vars(rules)["double_gap"] = double_gap
    vars(checks)["light"] = check("fit", "Light", remedies=("double_gap",))(lambda: None)

    with pytest.raises(ValueError, match="cannot be mended by double_gap"):
        CheckList(RuleBook({"gap": Mm}, [Chapter(rules)]), [(checks, ("",))])


def test_every_listed_fact_is_given() -> None:
    assert set(solve(Design()).facts) == set(FACTS)


# ---------------------------------------------------------------- the checks of the bed family

STEPS = check_list().steps
SOLID = {
    "panel_material": "white_oak", "panel_stock": 10.0, "front_material": "white_oak",
    "front_panel_material": "white_oak", "bottom_sheet": "white_oak", "deck_sheet": "white_oak",
}  # fmt: skip


@pytest.fixture(scope="module")
def beds() -> list[Bed]:
    """Beds that between them are asked nearly every check."""
    designs = [
        {},
        {"deck": "panels", "mattress_pieces": 2, "mattress_width": 965.0, "beam": "ends"},
        {"front_fit": "inset", "head.style": "slats", "left.nightstand_width": 400.0},
        {"beam": "none", "mattress_width": 965.0, "slat_fixing": "strap", "left.side": "plain"},
        {"slide": "wooden_runner"},
        {
            "slide": "centre_runner",
            "bearer_fixing": "screws",
            "beam": "none",
            "bearer_stock": 25.4,
        },
        {"connector": "cross_bolt_m6", "frame_stock": 38.1},
        {"frame_joint": "dowel", "end_joint": "pocket screw"},
        {"frame_joint": "pocket screw"},
        {"mattress_width_measured": 1550.0, "box_stock_measured": 11.7, "slat_gap_most": 100.0},
        {**SOLID, "front_style": "frame and panel", "front_fit": "inset", "head.style": "planks"},
        {**SOLID, "deck": "panels", "right.side": "closed frame"},
        {"left.room": 100.0, "pull": "cut_out_100", "head.cap_thickness": 19.05},
    ]
    return [solve(Design().with_choices(choices)) for choices in designs]


def test_ids_are_given_once() -> None:
    ids = [step.id for step in STEPS]

    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.id)
def test_every_check_says_why_and_from_where(step: Any) -> None:
    assert step.reason.endswith(".")
    assert len(step.title) <= 60
    assert step.source
    assert step.function.__module__.split(".")[2] == step.group


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.id)
def test_no_source_is_cited_by_a_number_of_our_own(step: Any) -> None:
    """Readers cannot look up `S2` or `B3`: a published name, or `common practice`."""
    assert not re.search(r"\b[A-Z]\d{1,2}\b", step.source + step.reason)


def test_nearly_every_check_is_asked_of_these_beds(beds: list[Bed]) -> None:
    said = [check_list().step_of(finding.id) for bed in beds for finding in bed.findings]
    answered = {step.id.rpartition(".")[2] for step in said if step is not None}

    silent = {step.id.rpartition(".")[2] for step in STEPS} - answered

    # This one speaks only where all others on strength are silent.
    assert silent == {"frame_judged"}


def test_only_what_fails_or_is_noted_has_a_margin_below_zero(beds: list[Bed]) -> None:
    for bed in beds:
        for finding in bed.findings:
            if finding.margin < -1e-6:
                assert finding.verdict in (Verdict.FAILS, Verdict.NOTE), finding.id
            if finding.verdict is Verdict.FAILS:
                assert finding.margin < 0, finding.id


def test_a_margin_is_the_way_from_the_value_to_its_limit(beds: list[Bed]) -> None:
    """But for sheets, whose limit is the size that they mostly have, a millimetre either way."""
    sheets = {step.id for step in STEPS if step.about.endswith("_thickness")}

    for bed in beds:
        for finding in bed.findings:
            way = abs(finding.value - finding.limit)

            if finding.id not in sheets or finding.id == "rail_backs_connector":
                assert abs(finding.margin) == pytest.approx(way, abs=1e-6), finding.id


def test_findings_of_a_bed_are_listed_worst_first(beds: list[Bed]) -> None:
    order = list(Verdict)

    for bed in beds:
        places = [order.index(finding.verdict) for finding in bed.findings]

        assert places == sorted(places)


def test_every_about_names_a_dimension_of_the_bed(beds: list[Bed]) -> None:
    for bed in beds:
        for finding in bed.findings:
            if finding.about:
                assert finding.about in bed.dimensions.values, finding.id
