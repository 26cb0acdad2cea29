"""What `plan` says of the package that it wrote."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from app import planning
from tests.model.planset.sets import bed_of


@pytest.mark.parametrize(("name", "said"), [("床 bed", True), ("Žofie’s bed", False)])
def test_letters_that_no_page_shows_are_told(
    name: str, said: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    paths = (tmp_path / "plan.pdf",)
    monkeypatch.setattr("model.exports.package.write_package", lambda bed, folder: paths)
    bed = bed_of("loft_single")
    bed = replace(bed, design=replace(bed.design, name=name))

    told = " ".join(planning.written(bed, tmp_path, Path("bed.bedwright"), 80))

    assert ("The set's letters have no 床: an empty box □ is printed in its place." in told) == said
