"""Figures and texts in files: nothing that JSON lacks, nothing that a spreadsheet would run."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.exports.plain import harmless, json_bytes, number


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "  =1", "\t=1", "\n@A1", "＝1"])
def test_a_text_that_would_run_gets_an_apostrophe(text: str) -> None:
    assert harmless(text).startswith("'")


@pytest.mark.parametrize(
    "text", ["oak", "1/2 in", "A1/1", "rail, left", "½ = half", "", "'quoted'"]
)
def test_an_ordinary_text_stays_as_it_is(text: str) -> None:
    assert harmless(text) == text


@given(st.text())
def test_no_text_can_begin_a_formula_or_a_new_cell(text: str) -> None:
    shown = harmless(text)

    assert not shown.lstrip().startswith(("=", "+", "-", "@"))
    assert all(each not in shown for each in "\t\r\n\0")


@pytest.mark.parametrize(
    ("value", "expected"),
    [(12.0, 12), (-0.0, 0), (0.1 + 0.2, 0.3), (float("nan"), None), (float("inf"), None)],
)
def test_a_figure_is_what_json_can_hold(value: float, expected: float | None) -> None:
    assert number(value) == expected
    assert str(number(-0.0)) == "0"


@given(
    st.recursive(
        st.none()
        | st.booleans()
        | st.integers()
        | st.floats(allow_nan=False, allow_infinity=False)
        | st.text(st.characters(exclude_categories=["Cs"])),
        lambda inside: (
            st.lists(inside)
            | st.dictionaries(st.text(st.characters(exclude_categories=["Cs"])), inside)
        ),
    )  # fmt: skip
)
def test_json_reads_back_as_it_was(content: object) -> None:
    assert json.loads(json_bytes(content)) == content


def test_what_json_lacks_is_refused() -> None:
    with pytest.raises(ValueError):
        json_bytes([float("nan")])
