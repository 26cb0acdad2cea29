"""Checks of the frame: what is worst, where, under which load, and how near to its limit."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from model.bed import solve
from model.checks.record import Finding, Verdict
from model.checks.strength import frame
from model.parts.pieces import Pieces
from model.structure.record import Carried, Case, Effect, EffectKind, Strength, Unjudged
from model.structure.skeleton import ROLES
from model.structure.spans import SAG_LIMITS
from tests.model.structure.frames_of_beds import DEMOS, demo, design

Check = Callable[[Strength, Pieces], Finding | None]
PIECES = cast(Pieces, SimpleNamespace(labels=("slat 1 of the deck", "slat 2 of the deck")))


def checks() -> list[Check]:
    """All but the one that says whether the others can be asked."""
    marked = [each for each in vars(frame).values() if hasattr(each, "check")]
    return [each for each in marked if each is not frame.frame_judged]


def effect(kind: EffectKind, value: float, limit: float, piece: int = 0) -> Effect:
    return Effect(
        piece=piece, kind=kind, value=value, limit=limit, unit="MPa" if kind != "sag" else "mm",
        case=0, at=312.4, source="A handbook",
    )  # fmt: skip


def carried(*hardest: tuple[str, Effect]) -> Carried:
    """A frame of which only the hardest effects are known, by role."""
    return Carried(
        cases=(Case(key="kneel", title="Kneeling on slat 1", reason="A test."),),
        pieces=np.array([0, 1]), first=np.array([0, 0, 0]), at=np.zeros(0),
        point=np.zeros((0, 3)), moved=np.zeros((1, 0, 3)), sag=np.zeros((1, 0)),
        use=np.zeros((1, 0)), sag_limit=np.full(2, np.inf), effects={},
        hardest={(role, each.kind): each for role, each in hardest},
    )  # fmt: skip


def said(finding: Finding | None) -> Finding:
    assert finding is not None
    return finding


def test_a_finding_tells_what_bends_where_and_under_which_load() -> None:
    found = said(frame.slats_bear(carried(("slat", effect("bending", 20.0, 30.0))), PIECES))

    assert (found.value, found.limit, found.margin, found.unit) == (20, 30, 10, "MPa")
    assert found.pieces == (0,)
    assert found.reason == (
        "Bending of slat 1 of the deck, 312 mm from its end: kneeling on slat 1. A test."
    )


@pytest.mark.parametrize(
    ("value", "verdict"),
    [(26.9, Verdict.HOLDS), (27.1, Verdict.TIGHT), (29.9, Verdict.TIGHT), (30.1, Verdict.FAILS)],
)
def test_nine_tenths_of_its_strength_is_tight_and_more_than_all_fails(
    value: float, verdict: Verdict
) -> None:
    found = frame.slats_bear(carried(("slat", effect("bending", value, 30.0))), PIECES)

    assert said(found).verdict is verdict


@pytest.mark.parametrize(
    ("value", "verdict"), [(2.9, Verdict.HOLDS), (3.1, Verdict.TIGHT), (4.1, Verdict.FAILS)]
)
def test_a_slat_is_tight_past_a_240th_of_its_span(value: float, verdict: Verdict) -> None:
    """span/180, better span/240: three quarters of 4 mm over 720 mm."""
    found = said(frame.slats_sag(carried(("slat", effect("sag", value, 4.0))), PIECES))

    assert found.verdict is verdict
    assert found.source == "A handbook"


@pytest.mark.parametrize(("value", "verdict"), [(1.43, Verdict.HOLDS), (1.45, Verdict.TIGHT)])
def test_a_bearer_is_tight_past_nine_tenths_of_a_16th_of_an_inch(
    value: float, verdict: Verdict
) -> None:
    found = frame.bearers_sag(carried(("bearer", effect("sag", value, 1.6))), PIECES)

    assert said(found).verdict is verdict


def test_of_bending_shear_and_pressure_the_one_nearest_to_its_limit_is_told() -> None:
    loads = carried(
        ("slat", effect("bending", 20.0, 40.0)),
        ("slat", effect("shear", 3.0, 4.0, piece=1)),
        ("slat", effect("bearing", 1.0, 2.0)),
        ("slat", effect("sag", 9.0, 4.0)),
    )

    found = said(frame.slats_bear(loads, PIECES))

    assert (found.value, found.pieces) == (3.0, (1,))
    assert found.reason.startswith("Shear of slat 2 of the deck")


def test_of_several_roles_the_one_nearest_to_its_limit_is_told() -> None:
    loads = carried(
        ("side rail", effect("bending", 10.0, 40.0)),
        ("bottom rail", effect("bending", 30.0, 40.0, piece=1)),
    )

    assert said(frame.rails_bear(loads, PIECES)).value == 30


@pytest.mark.parametrize("asked", checks(), ids=lambda each: each.__name__)
def test_what_a_bed_has_not_is_asked_nothing(asked: Check) -> None:
    assert asked(carried(), PIECES) is None


@pytest.mark.parametrize("asked", checks(), ids=lambda each: each.__name__)
def test_what_cannot_be_judged_is_no_pass_and_no_failure_of_a_part(asked: Check) -> None:
    assert asked(Unjudged(sentence="The slat cannot be judged."), PIECES) is None


def test_a_frame_that_cannot_be_judged_fails_with_its_sentence() -> None:
    found = said(frame.frame_judged(Unjudged(sentence="The beam is held by nothing.", piece=7)))

    assert (found.verdict, found.reason, found.pieces) == (
        Verdict.FAILS, "The beam is held by nothing.", (7,),
    )  # fmt: skip
    assert said(frame.frame_judged(Unjudged(sentence="A figure is missing."))).pieces == ()
    assert frame.frame_judged(carried()) is None


def test_every_role_is_judged_by_some_check() -> None:
    """What carries and is asked by no check would pass in silence."""
    judged = set()
    for asked in checks():
        for role in set(ROLES.values()):
            for kind in ("bending", "sag"):
                loads = carried((role, effect(cast(EffectKind, kind), 1.0, 2.0)))
                if asked(loads, PIECES) is not None:
                    judged.add((role, kind))

    assert {role for role, kind in judged if kind == "bending"} == set(ROLES.values())
    assert {role for role, kind in judged if kind == "sag"} >= set(SAG_LIMITS)


@pytest.mark.parametrize("name", DEMOS)
def test_a_real_beds_findings_are_the_hardest_of_what_it_carries(name: str) -> None:
    bed = demo(name).bed
    loads = bed.strength
    assert isinstance(loads, Carried)
    said_of = {finding.id: finding for finding in bed.findings}

    for asked in checks():
        found = asked(loads, bed.pieces)
        if found is None:
            assert asked.__name__ not in said_of
            continue
        told = said_of[asked.__name__]
        assert (told.value, told.limit, told.verdict) == (found.value, found.limit, found.verdict)
        assert (told.verdict is Verdict.FAILS) == (told.value > told.limit)
        assert told.source and told.remedies and len(told.title) <= 60


def test_a_thin_slat_fails_its_check_and_a_thick_one_holds() -> None:
    thin, thick = (solve(design("loft_single", slat_stock=h)) for h in (14.0, 26.0))

    verdicts = [
        next(f.verdict for f in each.findings if f.id == "slats_bear") for each in (thin, thick)
    ]

    assert verdicts == [Verdict.FAILS, Verdict.HOLDS]


def test_checks_are_fed_by_the_names_of_facts() -> None:
    for asked in checks():
        assert set(inspect.signature(asked).parameters) == {"strength", "pieces"}
