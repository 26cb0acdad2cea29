"""One change that makes a check hold, found by building: checked by building it once more."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from model import designs
from model.bed import Bed, Design, solve
from model.brief.leeway import turnable, turns
from model.checks.record import Finding, Verdict
from model.errors import CannotBuild
from model.improve import NOTHING, Improvement, improvement, improvements
from model.improve.answers import ALL_SOLVES, NOT_LOOKED
from model.improve.beds import Beds
from model.improve.search import SOLVES, Search
from model.mend import Stopped

INCH = 25.4
DEMOS = Path(__file__).resolve().parents[2] / "resources" / "demos"
MENDED = (Verdict.HOLDS, Verdict.NOTE)

# What a maker might have typed, and the check that does not hold then.
MISHAPS: dict[str, tuple[dict[str, Any], str]] = {
    "slats far apart": ({"slat_gap_most": 100.0}, "slat_gap"),
    "too few slats": ({"slats_by": "count", "slat_count": 11}, "slat_gap"),
    "a tight well": ({"side_fit": 4.0}, "mattress_drops_in_across"),
    "no room behind the box": ({"box_rear_room": 8.0}, "left.box_clears_back"),
    "a cleat that is too narrow": ({"cleat_stock": 18.0}, "slat_bearing"),
    "screws too short for the cleat": (
        {"cleat_screw": "4"},
        "left.screws_inside.cleat.wood_screw_4",
    ),
    "a sheet of another thickness": ({"bottom_stock": 9.0}, "bottom_sheet_thickness"),
    "a slide that is not sold": ({"slide_length": 585.0}, "left.slide_is_sold"),
    "a closed deck without vents": ({"deck": "panels", "vent_rows": 0}, "deck_breathes"),
    "inset fronts that touch": ({"front_fit": "inset", "inset_reveal": 1.0}, "left.inset_clear"),
}


def said(bed: Bed, id: str) -> Finding:
    return next(finding for finding in bed.findings if finding.id == id)


def mended(changes: Mapping[str, Any], id: str) -> tuple[Bed, Improvement]:
    """A bed with a check that does not hold, and what is offered for it."""
    bed = solve(Design().with_choices(changes))
    finding = said(bed, id)
    assert finding.verdict in (Verdict.FAILS, Verdict.TIGHT)
    found = improvement(bed, finding)
    assert found is not None
    return bed, found


@pytest.fixture(scope="module", params=MISHAPS)
def case(request: pytest.FixtureRequest) -> tuple[Bed, Improvement]:
    return mended(*MISHAPS[request.param])


# ---------------------------------------------------------------- what is offered is true


def test_the_check_holds_when_the_bed_is_built_anew(case: tuple[Bed, Improvement]) -> None:
    bed, found = case

    changed = solve(bed.design.with_choices(found.changes))

    assert found.then is not None
    assert said(changed, found.then.id) == found.then
    assert found.then.verdict in MENDED


def test_a_smaller_step_of_the_same_choice_would_not_do(case: tuple[Bed, Improvement]) -> None:
    bed, found = case
    value = bed.design.value
    ways = [way for name in found.finding.remedies for way in turns(name, value).runs]
    run = next((r for r in ways if any(turn.changes == found.changes for turn in r)), ())

    for turn in run:
        if turn.changes == found.changes:
            break
        try:
            changed = solve(bed.design.with_choices(turn.changes))
        except CannotBuild:
            continue
        assert said(changed, found.finding.id).verdict not in MENDED, turn


def test_nothing_else_gets_worse_unsaid(case: tuple[Bed, Improvement]) -> None:
    bed, found = case
    changed = solve(bed.design.with_choices(found.changes))
    order = list(Verdict)
    before = {finding.id: finding for finding in bed.findings}
    own = {found.finding.id, found.then.id if found.then else ""}

    worse = {
        finding.id
        for finding in changed.findings
        if finding.id not in own
        and order.index(finding.verdict)
        < order.index(before[finding.id].verdict if finding.id in before else Verdict.HOLDS)
    }

    assert worse == {finding.id for finding in found.worse}
    for finding in found.worse:
        assert finding.title in found.effects


def test_only_the_workshops_choices_are_turned(case: tuple[Bed, Improvement]) -> None:
    _, found = case

    assert found.changes.keys() <= turnable()


def test_the_same_bed_always_gets_the_same_answer(case: tuple[Bed, Improvement]) -> None:
    bed, found = case
    again = solve(bed.design, solve(Design()))

    assert improvement(again, said(again, found.finding.id)) == found


# ---------------------------------------------------------------- which of several


def test_slats_by_their_gap_come_closer_and_slats_by_count_become_more() -> None:
    _, by_gap = mended(*MISHAPS["slats far apart"])
    _, by_count = mended(*MISHAPS["too few slats"])

    assert list(by_gap.changes) == ["slat_gap_most"]
    assert by_count.changes == {"slat_count": 14}


def test_the_fit_that_lets_the_largest_mattress_drop_in_is_the_least_that_does() -> None:
    """Half an inch of tolerance needs a quarter inch at each side, and 3 mm more not to be tight:
    1/4 in and 1.5 mm come to 5/16 in on a grid of sixteenths.
    """
    _, found = mended(*MISHAPS["a tight well"])

    assert found.changes == {"side_fit": pytest.approx(5 / 16 * INCH)}


def test_what_a_maker_turns_first_is_taken_before_a_smaller_change_of_something_else() -> None:
    """Slats a hair wider would close the gaps too; whoever builds beds puts them closer."""
    bed, found = mended(*MISHAPS["slats far apart"])
    finding = said(bed, "slat_gap")

    assert found.choice in finding.remedies == ("slat_gap_most", "slat_count")


def test_a_sheet_is_changed_with_its_thickness() -> None:
    """A bottom that is reckoned with 9 mm is bought as 9 mm; one sheet is one change."""
    _, found = mended(*MISHAPS["a sheet of another thickness"])

    assert found.changes == {"bottom_sheet": "birch_ply_9", "bottom_stock": 9.0}


def test_a_finding_that_is_called_by_its_screw_is_found_again_under_another_gauge() -> None:
    bed = solve(Design().with_choices({"cleat_screw": "4", "frame_wood": "birch_ply_18"}))
    finding = said(bed, "left.screws_inside.cleat.wood_screw_4")

    search = Search(Beds(bed), finding)
    other = solve(bed.design.with_choices({"cleat_screw": "8"}), bed)

    then = search.check.of(other)
    assert then is not None and then.id == "left.screws_inside.cleat.wood_screw_8"


def test_a_change_that_lets_another_check_fail_mends_nothing() -> None:
    """Every change that is offered leaves fewer checks that fail; for a tight one, no more."""
    for name in ("too few slats", "a cleat that is too narrow"):
        bed = solve(Design().with_choices(MISHAPS[name][0]))
        for answer in improvements(bed):
            if answer.improvement is not None:
                changed = solve(bed.design.with_choices(answer.improvement.changes))
                failed = [
                    sum(f.verdict is Verdict.FAILS for f in each.findings)
                    for each in (changed, bed)
                ]
                assert failed[0] < failed[1] + (answer.finding.verdict is Verdict.TIGHT)


def test_a_beam_that_sags_is_not_mended_by_leaving_it_out() -> None:
    """Without a beam nobody asks how far it sags; the slats then carry all of it."""
    plain = {f"{side}.side": "plain" for side in ("left", "right")}
    bed = solve(Design().with_choices({**plain, "beam": "ends", "beam_height": 38.0}))
    finding = replace(said(bed, "beam_sags"), remedies=("beam",))
    assert finding.verdict is Verdict.FAILS
    assert "beam_sags" not in {
        f.id for f in solve(bed.design.with_choices({"beam": "none"})).findings
    }

    found = improvement(bed, finding, solves=3)  # no more than the three other kinds of beam

    assert found is None or found.changes != {"beam": "none"}


def test_another_joint_takes_over_what_the_first_one_did_not_hold() -> None:
    """Bolts are not asked of a rail on plates: the rail is still there, and held otherwise."""
    bolted = {
        **{"connector": "cross_bolt_m6", "frame_joint": "mortise and tenon"},
        **{"frame_stock": 38.1, "frame_wood": "engelmann_spruce"},
    }
    bed = solve(Design().with_choices(bolted))
    failed = [f for f in bed.findings if ".bolts_hold." in f.id and f.verdict is Verdict.FAILS]

    found = improvement(bed, replace(failed[0], remedies=("connector",)), solves=5)

    assert found is not None
    changed = solve(bed.design.with_choices(found.changes))
    own = found.then or failed[0]
    assert own.id not in {f.id for f in changed.findings if f.verdict is Verdict.FAILS}


def test_no_drawer_is_taken_away_so_that_it_no_longer_racks() -> None:
    """One wide drawer on short slides racks; more drawers would help, but two were not asked for.

    What was looked for is bounded, and the answer is that there is none.
    """
    wide = {"left.drawers": 1, "left.depth": "slide", "slide_length": 300.0}
    bed = solve(Design().with_choices(wide))

    search = Search(Beds(bed), said(bed, "left.drawer_racks"))

    assert search.answer() is None
    assert search.spent <= SOLVES


def test_all_answers_of_a_bed_are_bounded_together() -> None:
    wide = {
        **{f"{side}.drawers": 1 for side in ("left", "right")},
        **{f"{side}.room": 200.0 for side in ("left", "right")},
        **{f"{side}.nightstand_width": 800.0 for side in ("left", "right")},
        "slide_length": 300.0,
    }
    bed = solve(Design().with_choices(wide))
    wanted = [f for f in bed.findings if f.verdict in (Verdict.FAILS, Verdict.TIGHT)]

    answers = list(improvements(bed))

    assert [answer.finding for answer in answers] == wanted
    assert sum(answer.spent for answer in answers) <= ALL_SOLVES


# ---------------------------------------------------------------- how it is told


def test_the_sentence_names_old_and_new_value_and_the_limit() -> None:
    _, found = mended(*MISHAPS["too few slats"])

    assert found.sentence.startswith('Slat count 14 in place of 11 would do: 2 7/16" of at most 3"')


def test_a_metric_bed_is_told_in_millimetres() -> None:
    metric = {"shown_unit": "mm", "grid": "1 mm", "side_fit": 4.0}

    _, found = mended(metric, "mattress_drops_in_across")

    assert found.sentence.startswith(
        "Side fit 8 mm in place of 4 mm would do: 16.2 mm of at least 12.7 mm."
    )


def test_sizes_that_the_maker_looks_at_are_told_when_they_move() -> None:
    """4 mm of fit become 5/16 in at each side: on sixteenths the well is 1/4 in wider."""
    bed, found = mended(*MISHAPS["a tight well"])
    changed = solve(bed.design.with_choices(found.changes))

    assert changed["bed_width"] - bed["bed_width"] == pytest.approx(INCH / 4)
    assert 'Overall width 63 1/8" in place of 62 7/8"' in found.effects
    assert "leeping height" not in found.effects


def test_other_checks_that_are_mended_are_told() -> None:
    _, found = mended(*MISHAPS["no room behind the box"])

    assert "It also helps: “Room behind the box (right)” holds." in found.effects


def test_of_many_checks_that_are_mended_the_number_is_told() -> None:
    weak = {"frame_wood": "white_spruce", "slats_by": "count", "frame_joint": "pocket screw"}
    bed = solve(Design().with_choices({**weak, "connector": "hook_plate_100"}))
    finding = next(f for f in bed.findings if ".pocket_screws_hold" in f.id)

    found = improvement(bed, replace(finding, remedies=("frame_wood",)))

    assert found is not None and len(found.better) > 4
    assert f"It also helps {len(found.better)} other checks." in found.effects


def test_a_value_that_looks_alike_in_inches_is_told_in_millimetres() -> None:
    """0.3 mm and 0.4 mm of play are both about 1/64 in."""
    bed = solve(Design().with_choices({"slide": "side_mount_full_heavy"}))

    found = improvement(bed, said(bed, "left.box_runs_free"))

    assert found is not None
    new, _, old = found.change.partition(" in place of ")
    assert new.removeprefix("Slide play ").lstrip("~") != old.lstrip("~")


def test_where_nothing_makes_a_failed_check_hold_only_just_is_told_too() -> None:
    """A king without a beam hangs too heavily on its plates; a beam takes some of it off them."""
    bed = solve(Design().with_choices({"beam": "none", "mattress_width": 1930.4}))
    finding = said(bed, "left.connectors_carry")
    assert finding.verdict is Verdict.FAILS

    found = improvement(bed, finding)

    assert found is not None and found.then is not None
    assert found.then.verdict is Verdict.TIGHT
    assert "only just, " in found.sentence
    again = said(solve(bed.design.with_choices(found.changes)), finding.id)
    assert again.verdict is Verdict.TIGHT


# ---------------------------------------------------------------- stopping


def test_nobody_waits_for_an_answer_that_is_no_longer_asked_for() -> None:
    bed = solve(Design().with_choices({"slat_gap_most": 100.0}))
    asked: list[int] = []

    def third() -> bool:
        asked.append(1)
        return len(asked) > 2

    with pytest.raises(Stopped):
        improvement(bed, said(bed, "slat_gap"), stop=third)
    assert len(asked) == 3


def test_what_was_not_looked_for_is_told_apart_from_what_was_not_found(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("model.improve.answers.ALL_SOLVES", 3)
    wide = {"left.drawers": 1, "left.depth": "slide", "slide_length": 300.0}

    answers = list(improvements(solve(Design().with_choices(wide))))

    assert [answer.spent for answer in answers][:2] == [3, 0]
    assert {answer.sentence for answer in answers if answer.improvement is None} == {
        *(NOTHING, NOT_LOOKED)
    }


def test_the_tight_groove_of_a_demo_has_a_way_out() -> None:
    bed = solve(designs.read(DEMOS / "split_king_foot_drawers.bedwright"))
    finding = said(bed, "head.groove_keeps_walls")

    found = improvement(bed, finding)

    assert finding.verdict is Verdict.TIGHT
    assert found is not None and found.changes.keys() & set(finding.remedies)
    changed = solve(bed.design.with_choices(found.changes))
    assert said(changed, finding.id).verdict is Verdict.HOLDS
