"""Stock as it is typed and pasted: what is read is what was meant, and shown as it was typed."""

from __future__ import annotations

import pickle
from typing import Any

import pytest

from model.errors import BadInput
from model.materials import materials
from model.stock.cells import BadCell
from model.stock.rows import Board, SheetSize, SoldSize
from model.stock.stock_rows import (
    BOARDS,
    SHEETS,
    SOLD,
    Table,
    cells_of_rows,
    rows_of_cells,
    rows_of_text,
)

KNOWN = materials()
INCH = 25.4

RACK = (
    "Board\tSpecies\tClass\tLength (in)\tWidth\tQty\tBad spans\tPrice each\n"
    "A\tred maple\t5/4\t96\t7 1/2\t\t10-12; 30 1/2 to 32 x 0-2\t\n"
    "B\tWhite oak\t8/4\t10'\t8 in\t3\t\t12,50\n"
    "\t\t\t\t\t\t\t\n"
)


# ---------------------------------------------------------------- reading


def test_a_rack_pasted_from_a_spreadsheet_is_read_as_it_was_meant() -> None:
    one, other = rows_of_text(BOARDS, RACK, "inch", KNOWN)

    assert one == Board(
        name="A", material="red_maple", thickness=31.75, length=2438.4, width=190.5,
        bad=((254.0, 0.0, 304.8, 190.5), (774.7, 0.0, 812.8, 50.8)),
    )  # fmt: skip
    assert other == Board(
        name="B", material="white_oak", thickness=50.8, length=3048.0, width=203.2, quantity=3,
        price=12.5,
    )  # fmt: skip


def test_commas_and_semicolons_part_cells_too() -> None:
    by_comma = "material,length,width,quantity,on hand\nbirch_ply_12,1525,760,2,yes\n"
    by_semicolon = (
        "material;length;width;quantity;on hand\nBirch plywood, sanded, 12 mm;1525,0;760;2;x\n"
    )

    expected = SheetSize(
        material="birch_ply_12", length=1525.0, width=760.0, quantity=2, on_hand=True
    )
    assert rows_of_text(SHEETS, by_comma, "mm", KNOWN) == (expected,)
    assert rows_of_text(SHEETS, by_semicolon, "mm", KNOWN) == (expected,)


def test_sold_sizes_are_read() -> None:
    text = "wood\tthickness\tlength\twidth\tdressed\tcost\nwhite_spruce\t38\t3000\t140\tyes\t7\n"

    assert rows_of_text(SOLD, text, "mm", KNOWN) == (
        SoldSize(
            material="white_spruce", thickness=38.0, length=3000.0, width=140.0, planed=True,
            price=7.0,
        ),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "unit", "thickness"),
    [("8/4", "mm", 50.8), ("4/4", "inch", 25.4), ("3/4", "mm", 19.05), ("26", "mm", 26.0),
     ("1 1/2", "inch", 38.1), ("38 mm", "inch", 38.0), ("16/4", "mm", 101.6)],
)  # fmt: skip
def test_a_thickness_is_a_class_or_a_length(text: str, unit: str, thickness: float) -> None:
    (row,) = rows_of_cells(SOLD, [("red_maple", text, "2 m", "15 cm", "", "")], unit, KNOWN)

    assert row.thickness == pytest.approx(thickness)


@pytest.mark.parametrize(
    ("text", "spans"),
    [
        ("", []),
        ("300-420", [(300, 0, 420, 150)]),
        ("300 to 420;1 m to 1,2 m", [(300, 0, 420, 150), (1000, 0, 1200, 150)]),
        ("300\u2013420 x 0 to 60", [(300, 0, 420, 60)]),
        ("12-3/8 in - 16 in", [(12.375 * INCH, 0, 16 * INCH, 150)]),
    ],
)
def test_bad_spans_are_from_and_to(text: str, spans: list[Any]) -> None:
    cells = ("A", "red_maple", "4/4", "2000", "150", "1", text, "", "")

    (row,) = rows_of_cells(BOARDS, [cells], "mm", KNOWN)

    assert [tuple(span) for span in row.bad] == [pytest.approx(span) for span in spans]


# ---------------------------------------------------------------- showing


ROWS: list[tuple[Table, tuple[Any, ...]]] = [
    (BOARDS, rows_of_text(BOARDS, RACK, "inch", KNOWN)),
    (
        SOLD,
        (
            SoldSize(
                material="red_maple", thickness=19.05, length=2438.4, width=139.7, planed=True
            ),
        ),
    ),
    (SHEETS, (SheetSize(material="mdf_9", length=2440.0, width=1220.0, price=21.25),)),
]  # fmt: skip


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize(("table", "rows"), ROWS)
def test_what_is_shown_reads_back(table: Table, rows: tuple[Any, ...], unit: str) -> None:
    shown = cells_of_rows(table, rows, unit, KNOWN)

    assert all(len(cells) == len(table.columns) for cells in shown)
    if table is not SHEETS or unit == "mm":  # 2440 mm is no whole 64th of an inch
        assert rows_of_cells(table, shown, unit, KNOWN) == rows
    assert rows_of_cells(table, shown, unit, KNOWN, last=rows) == rows


def test_rows_that_were_not_typed_in_keep_their_true_size() -> None:
    """In inches 2440 mm is shown as about 96 1/16: another row's edit must not round it."""
    rows = (
        SheetSize(material="mdf_9", length=2440.0, width=1220.0),
        SheetSize(material="mdf_6", length=2440.0, width=1220.0),
    )
    cells = [list(row) for row in cells_of_rows(SHEETS, rows, "inch", KNOWN)]
    assert cells[0][1].startswith("~")

    cells[1][1] = "97"
    one, other = rows_of_cells(SHEETS, [tuple(row) for row in cells], "inch", KNOWN, last=rows)

    assert one == rows[0]
    assert other.length == pytest.approx(97 * INCH)


def test_classes_are_shown_as_a_yard_says_them() -> None:
    rough, planed = (
        Board(name="", material="red_maple", thickness=25.4, length=900.0, width=90.0, planed=p)
        for p in (False, True)
    )

    assert cells_of_rows(BOARDS, [rough, planed], "inch", KNOWN)[0][2] == "4/4"
    assert cells_of_rows(BOARDS, [rough, planed], "inch", KNOWN)[1][2] == "1"


# ---------------------------------------------------------------- refusing


GOOD = ("A", "red_maple", "4/4", "2000", "150", "1", "", "", "")


@pytest.mark.parametrize(
    ("column", "text", "said"),
    [
        ("name", "x" * 61, "longer than 60"),
        ("material", "rde maple", "no wood called “rde maple”. Did you mean Soft maple"),
        ("material", "birch_ply_12", "no wood called"),
        ("material", "", "material is empty"),
        ("thickness", "0/4", "it can be from 1"),
        ("thickness", "thick", "not understood"),
        ("length", "", "length is empty"),
        ("length", "300 m", "it can be from 10 to 20000 mm"),
        ("width", "-5", "less than nothing"),
        ("quantity", "two", "whole number"),
        ("quantity", "0", "whole number"),
        ("bad", "420-300", "no bad span"),
        ("bad", "knots", "no bad span"),
        ("bad", "1900-2001", "reaches over the board"),
        ("bad", "100-200 x 100-151", "reaches over the board"),
        ("bad", ";".join(f"{n}-{n + 1}" for n in range(101)), "101 spans; 100 at most"),
        ("price", "€3", "plain sum"),
        ("planed", "maybe", "yes or no"),
    ],
)
def test_a_cell_that_cannot_be_read_is_told_by_row_and_column(
    column: str, text: str, said: str
) -> None:
    wrong = tuple(
        text if name == column else cell for name, cell in zip(BOARDS.columns, GOOD, strict=True)
    )

    with pytest.raises(BadCell, match=said) as refusal:
        rows_of_cells(BOARDS, [GOOD, wrong], "mm", KNOWN)

    assert (refusal.value.row, refusal.value.column) == (1, column)
    assert str(refusal.value).startswith("boards, row 2: ")
    copied = pickle.loads(pickle.dumps(refusal.value))
    assert (str(copied), copied.row, copied.column) == (str(refusal.value), 1, column)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "nothing was pasted"),
        ("\n\t\n", "nothing was pasted"),
        (RACK.splitlines()[0], "no rows under its headings"),
        (RACK.replace("Species", "Tree"), "no column “Tree”"),
        (RACK.replace("Species", "Board"), "name stands twice"),
        (RACK.replace("Width", "Name of it"), "no column"),
        ("name\tmaterial\nA\tred maple\n", "lacks the heading thickness"),
        (
            RACK.replace("red maple\t5/4", "red maple\t5/4\t\t\t\t\t\t\t\t1"),
            "more cells than headings",
        ),
    ],
)
def test_a_table_that_cannot_be_read_is_refused(text: str, said: str) -> None:
    with pytest.raises(BadInput, match=said):
        rows_of_text(BOARDS, text, "mm", KNOWN)


def test_more_rows_than_a_rack_holds_are_refused() -> None:
    with pytest.raises(BadInput, match="500 are the most"):
        rows_of_cells(BOARDS, [GOOD] * 501, "mm", KNOWN)
