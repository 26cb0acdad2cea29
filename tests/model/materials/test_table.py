"""A table that is not as it should be is refused with a sentence that says where."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import pytest

from model.errors import BadInput
from model.materials.table import beside, row_of, rows_of
from model.units import Count, Mm, Places


@dataclass(frozen=True, kw_only=True)
class Peg:
    key: str
    wood: Literal["oak", "ash"]
    length_mm: Mm
    bore_mm: float | None
    count: Count
    sizes: Places
    note: str = ""


HEADINGS = "key,wood,length_mm,bore_mm,count,sizes\n"


def test_cells_become_what_the_row_says() -> None:
    pegs = rows_of(HEADINGS + "a,oak,12.7,,3,6;8.5\nb,ash,1,2,0,\n", Peg, "pegs.csv")

    assert list(pegs) == ["a", "b"]
    assert pegs["a"] == Peg(
        key="a", wood="oak", length_mm=12.7, bore_mm=None, count=3, sizes=(6.0, 8.5)
    )
    assert pegs["b"].bore_mm == 2 and pegs["b"].sizes == ()


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (HEADINGS + "a,oak,long,,3,", "pegs.csv, line 2: length_mm is “long”, not a number."),
        (HEADINGS + "a,oak,,,3,", "pegs.csv, line 2: length_mm is empty; it takes a number."),
        (HEADINGS + "a,oak,-1,,3,", "length_mm is “-1”, not a number of zero or more."),
        (HEADINGS + "a,oak,nan,,3,", "length_mm is “nan”, not a number of zero or more."),
        (HEADINGS + "a,oak,1,,3.5,", "count is “3.5”, not a whole number."),
        (HEADINGS + "a,elm,1,,3,", "wood is “elm”, not one of oak, ash."),
        (HEADINGS + "a,oak,1,,3,6;x", "sizes is “6;x”, not a number."),
        (HEADINGS + "a,oak,1,,3,\na,oak,1,,3,", "line 3: “a” stands twice."),
        (HEADINGS + "a,oak,1", "line 2: the row and the headings differ in length."),
        (HEADINGS + "a,oak,1,,3,,,", "line 2: the row and the headings differ in length."),
        ("key,wood\n", "pegs.csv lacks the column “length_mm”."),
        ("", "pegs.csv lacks the column “key”."),
        (HEADINGS.strip() + ",colour\n", "pegs.csv has a column “colour” that is not known."),
    ],
)
def test_a_malformed_table_is_refused_with_a_sentence(text: str, sentence: str) -> None:
    with pytest.raises(BadInput) as refused:
        rows_of(text, Peg, "pegs.csv")

    assert sentence in str(refused.value)
    assert refused.value.field == "pegs.csv"


def test_the_makers_own_row_takes_the_place_of_its_namesake() -> None:
    peg = Peg(key="a", wood="oak", length_mm=1, bore_mm=None, count=1, sizes=())
    own = Peg(key="a", wood="ash", length_mm=2, bore_mm=None, count=1, sizes=())

    assert beside({"a": peg}, (own,))["a"] is own


def test_a_missing_row_names_what_is_near() -> None:
    with pytest.raises(BadInput, match="no peg called “longe”. Some that exist: long"):
        row_of({"long": Peg, "short": Peg}, "longe", "peg")  # type: ignore[type-var]
