"""The beds that come with the program are ones that a maker may build."""

from __future__ import annotations

from pathlib import Path

import pytest

from model.bed import solve
from model.checks.record import Verdict
from model.designs import read

DEMOS = sorted((Path(__file__).resolve().parents[2] / "resources" / "demos").glob("*.bedwright"))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_nothing_fails_in_a_bed_that_comes_with_the_program(path: Path) -> None:
    bed = solve(read(path))

    assert [(f.id, f.reason) for f in bed.findings if f.verdict is Verdict.FAILS] == []


def test_there_are_beds_to_look_at() -> None:
    assert len(DEMOS) >= 4
