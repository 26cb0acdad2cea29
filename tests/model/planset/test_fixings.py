"""Joints drawn large are called screwed where a screw shows or a step tells of it."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from model.cutting.record import Box
from model.drawings.paper import Text
from model.planset.details.alike import Shot, shots
from model.planset.details.fixings import title_of
from model.planset.details.kinds import joined
from model.planset.details.picture import picture
from model.planset.outside import outside
from model.planset.setting import Setting
from tests.model.planset.sets import BEDS, bed_of

CELL = Box(17.0, 80.0, 101.0, 211.0)

every_bed = pytest.mark.parametrize("name", BEDS)


def words_of(setting: Setting, shot: Shot) -> list[str]:
    return [item.words for item in picture(setting, shot, CELL)[0] if isinstance(item, Text)]


def screwed(setting: Setting) -> Iterator[tuple[Shot, list[str]]]:
    for shot in shots(setting):
        if "screwed" in title_of(setting, shot).lower():
            yield shot, words_of(setting, shot)


@every_bed
def test_what_is_called_screwed_shows_a_screw_or_names_the_step(name: str) -> None:
    setting = Setting(bed=bed_of(name))
    found = list(screwed(setting))

    assert found
    for shot, words in found:
        told = " ".join(words)
        step = re.search(r"see step (\d+)", told)
        assert "wood screw" in told or step, shot.pairs
        if step:
            said = " ".join(setting.steps[int(step[1]) - 1].sentences)
            assert any(a in said and b in said for a, b in shot.pairs), (shot.pairs, said)


@every_bed
def test_a_joint_with_a_screw_of_the_record_is_not_called_otherwise(name: str) -> None:
    """The screws of each part name what takes them: `Screw.into`, and lie where it is."""
    setting = Setting(bed=bed_of(name))
    pieces = setting.bed.pieces
    for shot in shots(setting):
        own = pieces.form(shot.kind.one).screws
        if "screwed" in shot.kind.joint and shot.kind.joint != "brackets or screws" and own:
            assert "screwed" in title_of(setting, shot).lower(), shot.pairs


@every_bed
def test_no_code_of_a_bought_thing_is_printed(name: str) -> None:
    setting = Setting(bed=bed_of(name))
    codes = {code for code in joined(setting).hardware if code}
    for shot in shots(setting):
        told = " ".join(words_of(setting, shot))
        assert not [code for code in codes if code in told]


@every_bed
def test_pulls_are_seen_from_outside_and_nothing_else_that_is_bought(name: str) -> None:
    bed = bed_of(name)
    codes = [part.hardware for part in outside(bed).forms if part.hardware]
    pulls = [
        piece for piece in range(len(bed.pieces))
        if bed.pieces.form(piece).hardware.startswith("PULL-")
    ]  # fmt: skip

    assert len(codes) == len(pulls)
    assert all(code.startswith("PULL-") for code in codes)
