"""Findings as people read them on a plan set: alike ones once, pounds first in an inch set."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.building.check_words import in_shop_units, rests_on, said
from model.checks.record import Finding, Verdict
from tests.model.building.beds import DEMOS, QUEEN, demo

# 1 lbf = 4.4482216 N, 1 lb = 0.45359237 kg, 1 psi = 6.894757 kPa, 1 psf = 47.880259 Pa: handbook
# values of NIST SP 811, appendix B, from memory.
TOLD = {
    "bears 1356 N straight": "bears 305 lb (1356 N) straight",
    "weighs 62 kg; a": "weighs 137 lb (62 kg); a",
    "with 1.44 kPa all": "with 30 lb/ft2 (1.44 kPa) all",
    "bent with 199 N m, 4 N m out": "bent with 147 lb ft (199 N m), 3 lb ft (4 N m) out",
    "is 23 kg (51 lb) for": "is 51 lb (23 kg) for",
    "5 MPa.": "725 lb/in2 (5 MPa).",
    "0.9 mm of wood": '~1/32" of wood',
    "30 to 50 mm.": '~1 3/16" to ~1 15/16".',
    "15 mg/m3": "15 mg/m3",
}


@pytest.mark.parametrize("sentence", TOLD)
def test_an_inch_set_tells_pounds_and_inches_first(sentence: str) -> None:
    assert in_shop_units(sentence, "inch") == TOLD[sentence]
    assert in_shop_units(sentence, "mm") == sentence


def finding(place: str, reason: str = "Why.") -> Finding:
    return Finding(
        value=1.0, limit=1.0, margin=0.0, verdict=Verdict.NOTE, title="What", reason=reason,
        place=place, source="common practice, no source",
    )  # fmt: skip


def test_alike_findings_are_told_once_with_their_places() -> None:
    found = said([finding("left"), finding("right"), finding("left", "Other.")], "mm")

    assert [each.title for each in found] == ["What (left and right)", "What (left)"]


@pytest.mark.parametrize("name", DEMOS)
def test_no_row_stands_twice(name: str) -> None:
    rows = said(demo(name).findings, "inch")

    assert len({(each.verdict, each.title, each.reason) for each in rows}) == len(rows)
    reasons = {(each.verdict, each.title, each.reason) for each in demo(name).findings}
    assert len(rows) == len({(v, t, in_shop_units(r, "inch")) for v, t, r in reasons})


def test_what_figures_rest_on_names_the_books_of_the_checks() -> None:
    told = " ".join(rests_on(demo(QUEEN).findings))

    assert "NDS 2018" in told and "Wood Handbook" in told and "16 CFR 1261" in told
    assert "without the book at hand" in told  # some sources say that they are from memory
    known = [replace(finding(""), source="EN 1725, clause 7")]
    assert "without the book" not in " ".join(rests_on(known))
