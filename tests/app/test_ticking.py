"""Ticks from the command line: kept in the design file, told back, refused in a sentence."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from app.cli import main
from model import designs
from model.bed import solve
from model.shop.plans import plans
from model.shop.tracking import accepted
from tests.model.cost.plain_plans import one_each

Out = pytest.CaptureFixture[str]

pytestmark = pytest.mark.usefixtures("lists_alone")

# Without drawers, and in planed sizes that a yard sells: a bed whose plans are found at once.
SMALL = [
    *("--set", "left.side=plain", "--set", "right.side=plain", "--set", "head.style=none"),
    *("--set", "foot.style=none", "--set", "beam=none", "--set", "shown_unit=mm"),
]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "bed.bedwright"
    assert main(["new", str(path), *SMALL]) == 0
    return path


def said(capsys: Out, *arguments: str | Path) -> str:
    capsys.readouterr()
    assert main([str(each) for each in arguments]) == 0
    return capsys.readouterr().out


def refusal(capsys: Out, *arguments: str | Path) -> str:
    capsys.readouterr()
    assert main([str(each) for each in arguments]) == 2
    return capsys.readouterr().err


def order(file: Path, folder: Path, capsys: Out) -> str:
    said(capsys, "plan", file, "-o", folder)
    return (folder / "work_order.txt").read_text("utf-8")


def setting(text: str, operation: str) -> str:
    """The number of the first setting of an operation, as printed."""
    found = re.search(rf"^ *(\d+)  {operation}", text, re.MULTILINE)
    assert found is not None
    return found[1]


def test_a_tick_is_kept_in_the_design_and_printed_with_the_next_plan(
    file: Path, tmp_path: Path, capsys: Out
) -> None:
    number = setting(order(file, tmp_path / "one", capsys), "Plane to thickness")

    told = said(capsys, "tick", file, number)

    assert designs.read(file).progress.steps_done
    assert told.startswith(f"{len(designs.read(file).progress.steps_done)} of ")
    printed = order(file, tmp_path / "two", capsys)
    assert printed.count("[x]") == len(designs.read(file).progress.steps_done)


def test_a_ticked_cut_keeps_its_plan(file: Path, capsys: Out) -> None:
    said(capsys, "tick", file, "1:cut 1")

    progress = designs.read(file).progress
    assert len(progress.cuts_done) == 1
    assert len(progress.plans) == 1


def test_what_was_ticked_can_be_undone(file: Path, capsys: Out) -> None:
    said(capsys, "tick", file, "1")

    said(capsys, "tick", file, "1", "--undo")

    assert designs.read(file).progress.cuts_done == frozenset()


def test_a_kept_plan_that_is_followed_no_more_is_not_passed_over(
    file: Path, tmp_path: Path, capsys: Out
) -> None:
    assert "Kept plans" not in said(capsys, "tick", file, "--keep-plans")
    wider = tmp_path / "wider.bedwright"
    said(capsys, "new", wider, "--from", file, "--set", "kerf=4mm")

    assert "Kept plans that are followed no more" in said(capsys, "tick", wider)


def test_a_bought_row_is_ticked_by_its_key_and_no_other(file: Path, capsys: Out) -> None:
    told = said(capsys, "tick", file, "--bought", "glue/pva")

    assert "1 row of the buying list ticked as bought." in told
    assert designs.read(file).progress.bought == {"glue/pva"}
    assert "Did you mean glue/pva" in refusal(capsys, "tick", file, "--bought", "glue/pv")


def test_settings_and_lines_that_there_are_not_are_refused(file: Path, capsys: Out) -> None:
    assert "numbered from 1 to" in refusal(capsys, "tick", file, "900")
    assert "has no line Z9; it has" in refusal(capsys, "tick", file, "1:Z9")
    assert "no offer to recut H3-1" in refusal(capsys, "tick", file, "--recut", "H3-1")


def test_looking_changes_nothing(file: Path, capsys: Out) -> None:
    before = file.read_bytes()

    said(capsys, "tick", file)

    assert file.read_bytes() == before


# ---------------------------------------------------------------- better plans than the kept ones


@pytest.fixture
def wasteful(file: Path) -> Path:
    """The design with plans kept that cut every piece from a board of its own."""
    bed = solve(designs.read(file))
    for cut in plans(bed):
        assert cut.plan.measure == "area"
        plain = one_each(cut.plan.task)
        taken = sum(each.stock.length * each.stock.width for each in plain.layouts)
        kept = replace(cut, plan=replace(plain, value=taken, measure="area"))
        bed = replace(bed, design=accepted(bed, kept))
    designs.write(bed.design, file)
    return file


def offered(told: str) -> list[str]:
    return re.findall(r"^  bedwright tick \S+ --better-plan (\S+)$", told, re.MULTILINE)


def test_a_better_plan_than_the_kept_one_is_told_and_taken_when_asked(
    wasteful: Path, tmp_path: Path, capsys: Out
) -> None:
    kept = {plan.task.name: plan for plan in designs.read(wasteful).progress.plans}

    told = said(capsys, "plan", wasteful, "-o", tmp_path / "kept")
    first, *others = offered(told)

    assert "A better one is found: it takes" in " ".join(told.split())
    assert designs.read(wasteful).progress.plans == tuple(kept.values()), "told, not taken"

    said(capsys, "tick", wasteful, "--better-plan", first)

    now = {plan.task.name: plan for plan in designs.read(wasteful).progress.plans}
    assert now[first].value < kept[first].value
    assert all(now[key] == kept[key] for key in others)
    assert offered(said(capsys, "plan", wasteful, "-o", tmp_path / "taken")) == others


def test_all_better_plans_are_taken_in_one_go(wasteful: Path, tmp_path: Path, capsys: Out) -> None:
    first, *_ = offered(said(capsys, "plan", wasteful, "-o", tmp_path / "before"))
    assert f"Offers: {first}, " in refusal(capsys, "tick", wasteful, "--better-plan", "oak-1")

    said(capsys, "tick", wasteful, "--better-plan", "all")

    assert offered(said(capsys, "plan", wasteful, "-o", tmp_path / "plan")) == []
    assert "Offers: none" in refusal(capsys, "tick", wasteful, "--better-plan", first)


def test_no_better_plan_is_offered_for_one_that_is_begun(
    wasteful: Path, tmp_path: Path, capsys: Out
) -> None:
    """Its boards are cut up already."""
    _, *others = offered(said(capsys, "plan", wasteful, "-o", tmp_path / "one"))
    said(capsys, "tick", wasteful, "1")

    assert offered(said(capsys, "plan", wasteful, "-o", tmp_path / "two")) == others
