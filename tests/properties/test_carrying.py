"""Any bed comes apart, and what it comes apart into is all of it."""

from __future__ import annotations

import numpy as np

from model.mechanics.carry import round_corner, through_door
from tests.properties.conftest import Drawn

FRAME = ("post_left", "post_right", "top_rail", "side_rail")


def test_no_assembly_holds_two_ends_or_an_end_and_a_side(drawn: Drawn) -> None:
    for bed in drawn.beds:
        for assembly in bed.carried:
            rules = {bed.pieces.rules[bed.pieces.rule[piece]] for piece in assembly.pieces}
            places = {
                scope for scope, _, name in (r.partition(".") for r in rules) if name in FRAME
            }

            assert len(places) <= 1, (bed.design.name, assembly.name)


def test_every_end_and_side_is_carried_whole_and_once(drawn: Drawn) -> None:
    for bed in drawn.beds:
        counts = {each.name: each.count for each in bed.carried}

        for name in ("headboard", "footboard", "left side", "right side"):
            assert counts[name] == 1, (bed.design.name, name)
        drawers = {row: bed[f"{row}.drawer_count"] for row in ("left", "right", "foot")}
        assert {row: counts.get(f"{row} drawer", 0) for row in drawers} == drawers


def test_nothing_that_is_carried_weighs_less_than_its_wood(drawn: Drawn) -> None:
    for bed in drawn.beds:
        for assembly in bed.carried:
            wood = bed.masses[list(assembly.pieces)].sum()

            assert 0 < assembly.kg >= wood - 1e-9, (bed.design.name, assembly.name)


def test_a_wider_way_lets_no_less_through(drawn: Drawn) -> None:
    for bed in drawn.beds:
        sizes = np.array([each.size for each in bed.carried])
        narrow = (through_door(sizes, 700, 1900).room, round_corner(sizes, 700, 800, 2000).room)
        wide = (through_door(sizes, 800, 2000).room, round_corner(sizes, 750, 900, 2100).room)

        for less, more in zip(narrow, wide, strict=True):
            assert np.all((less < 0) | (more >= 0)), bed.design.name


def test_every_safety_finding_is_a_finite_number_with_a_reason(drawn: Drawn) -> None:
    for bed in drawn.beds:
        for finding in (f for f in bed.findings if f.group == "safety"):
            told = (finding.value, finding.limit, finding.margin)

            assert np.isfinite(told).all(), (bed.design.name, finding.id)
            assert finding.reason.endswith(".") and len(finding.title) <= 60
