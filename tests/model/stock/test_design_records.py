"""Stock, prices and progress travel with the design: there and back, and refused in a sentence."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model import designs
from model.bed import Design
from model.cost.general_prices import GENERAL
from model.cost.read_prices import with_cell
from model.errors import BadInput
from model.stock.prices import ExtraRow, PriceRow, Prices, RateRow
from model.stock.progress import CutPart, Progress
from model.stock.rows import Board, SheetSize, SoldSize, StockRows
from tests.model.stock.random_plans import random_plan

STOCK = StockRows(
    boards=(
        Board(
            name="A 1", material="red_maple", thickness=31.75, length=2438.4, width=190.5,
            quantity=2, bad=((254.0, 0.0, 304.8, 190.5), (774.7, 0.0, 812.8, 50.8)), price=12.75,
        ),
        Board(
            name="", material="oak_of_mine", thickness=22.1, length=900.0, width=100.0, planed=True
        ),
    ),
    sold=(
        SoldSize(
            material="white_spruce", thickness=38.1, length=3657.6, width=139.7, planed=True
        ),
    ),
    sheets=(
        SheetSize(material="birch_ply_12", length=2440.0, width=1220.0, price=0.0),
        SheetSize(
            material="birch_ply_12", length=700.0, width=0.1 + 400.2, quantity=1, on_hand=True
        ),
    ),
)  # fmt: skip
PRICES = Prices(
    currency="kr", decimals=0, board_measure="cubic metre", hour=412.5, overhead=0.125,
    margin=0.2, tax=0.25, offcut_share=0.4, valid_days=14, terms="Half now.\nHalf then.",
    is_example=True,
    rows=(PriceRow(key="sheet/birch_ply_12/2440x1220", price=64.2), PriceRow(key="glue", pack=0.5)),
    rates=(RateRow(key="crosscut", minutes=0.75),),
    extras=(ExtraRow(name="Delivery", price=30.0), ExtraRow(name="Help")),
)  # fmt: skip
PROGRESS = Progress(
    plans=(random_plan(1, "ply-12"), random_plan(2, "ply-9")),
    cuts_done=frozenset({"ply-12/1/3", "ply-12/1/10", "ply-9/2/1"}),
    bought=frozenset({"glue"}), steps_done=frozenset({"rip/120.0"}),
    parts=(
        CutPart(
            mark="H1/1", piece=2, name="post", material="red_maple", length=1200.1, width=76.0,
            thickness=25.4, rough_length=1225.0, rough_width=89.0, rough_thickness=31.75,
            steps=("joint", "plane"), work="ab12", cut="ply-12/1/3",
        ),
        CutPart(
            mark="B1", piece=1, name="box side", material="birch_ply_12", length=800.0,
            width=187.0, thickness=12.0,
        ),
    ),
)  # fmt: skip
DESIGN = Design(name="Bed", stock=STOCK, prices=PRICES, progress=PROGRESS)


def test_what_travels_with_a_design_reads_back_as_it_was_saved() -> None:
    content = designs.to_bytes(DESIGN)

    assert designs.from_bytes(content) == DESIGN
    assert designs.to_bytes(designs.from_bytes(content)) == content


def test_what_there_is_none_of_is_not_written() -> None:
    record = json.loads(designs.to_bytes(Design(name="Bed")))

    assert list(record) == ["format", "version", "name", "choices"]


def test_the_file_is_the_same_whatever_was_ticked_first() -> None:
    """Sets have no order; a file has."""
    ticked = ["b/1/2", "a/1/1", "c/3/9", "a/1/10", "b/1/11"]

    contents = {
        designs.to_bytes(Design(progress=Progress(cuts_done=frozenset(order))))
        for order in (ticked, ticked[::-1], sorted(ticked))
    }

    assert len(contents) == 1
    assert b'["a/1/1", "a/1/10"' in contents.pop()


def test_what_is_as_usual_is_left_out() -> None:
    record = json.loads(designs.to_bytes(DESIGN))

    assert record["stock"]["sold"] == [
        {
            "material": "white_spruce", "thickness": 38.1, "length": 3657.6, "width": 139.7,
            "planed": True,
        }
    ]  # fmt: skip
    assert record["stock"]["sheets"][1]["quantity"] == 1  # without it, as many as needed
    assert record["prices"]["rows"][1] == {"key": "glue", "pack": 0.5}


def test_lengths_of_stock_may_be_written_with_their_unit() -> None:
    row = {"material": "red_maple", "thickness": "5/4 in", "length": "8'", "width": "7 1/2 in"}

    design = designs.from_bytes(content(stock={"boards": [row]}))

    board = design.stock.boards[0]
    assert (board.thickness, board.length, board.width) == pytest.approx((31.75, 2438.4, 190.5))


def content(**more: Any) -> bytes:
    record = {"format": "bedwright-design", "version": 1, "name": "Bed", "choices": {}}
    return json.dumps(record | more).encode()


def board(**changes: Any) -> dict[str, Any]:
    usual = {"material": "red_maple", "thickness": 25.4, "length": 2000, "width": 150}
    return {"stock": {"boards": [usual | changes]}}


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"stock": []}, "stock must be names and values"),
        ({"stock": {"logs": []}}, "logs.*Known: boards, sold, sheets"),
        ({"stock": {"boards": {}}}, "boards must be a list"),
        ({"stock": {"boards": [3]}}, "stock boards, row 1 must be names and values"),
        (board(colour="red"), "row 1: “colour” is not known"),
        (board(length=-3), "length must be a number from 10 to 20000"),
        (board(length="3 apples"), "length: .*apples"),
        (board(width=float("nan")), "width must be a number"),
        (board(quantity=0), "quantity must be a whole number from 1"),
        (board(quantity=1.5), "quantity must be a whole number"),
        (board(material="../x"), "material must be a key"),
        (board(material=""), "material must be a text"),
        (board(price=-1), "price must be a number"),
        (board(planed="yes"), "planed must be true or false"),
        (board(bad=[[1, 2, 3]]), "bad span is four figures"),
        (board(bad=[[9, 0, 3, 5]]), "ends where it begins"),
        (board(bad=[[1900, 0, 2001, 5]]), "reaches over the board"),
        (board(name="a\u202eb"), "cannot be printed"),
        ({"stock": {"sheets": [{"material": "birch_ply_12", "length": 5}]}}, "length must be"),
        ({"prices": {"rows": [{"price": 3}]}}, "prices rows, row 1: key must be a text"),
        ({"prices": {"decimals": 7}}, "decimals must be a whole number from 0 to 4"),
        ({"prices": {"board_measure": "stere"}}, "board_measure must be one of"),
        ({"prices": {"margin": 1.5}}, "margin must be a number from 0 to 0.99"),
        ({"prices": {"rows": [{"key": "glue", "pack": 0}]}}, "pack must be a number"),
        ({"progress": {"cuts_done": [1]}}, "cuts_done must be a list of short texts"),
        ({"progress": {"parts": [{"mark": "B1"}]}}, "progress parts, row 1: piece must be"),
        ({"progress": {"plans": [{}]}}, "name must be a text"),
        ({"progress": {"plans": [None]}}, "progress plans, row 1 must be"),
    ],
)
def test_bad_content_is_refused_in_a_sentence(more: dict[str, Any], said: str) -> None:
    with pytest.raises(BadInput, match=said) as refusal:
        designs.from_bytes(content(**more))

    assert str(refusal.value).endswith(".") and "\n" not in str(refusal.value)


def test_two_plans_of_one_task_are_refused() -> None:
    record = json.loads(designs.to_bytes(DESIGN))
    record["progress"]["plans"] *= 2

    with pytest.raises(BadInput, match="two plans of ply-12"):
        designs.from_bytes(json.dumps(record).encode())


def test_stock_of_a_wood_that_nobody_knows_is_kept() -> None:
    """The wood may come back; the boards are still in the rack."""
    assert designs.from_bytes(designs.to_bytes(DESIGN)).stock.boards[1].material == "oak_of_mine"


TYPED = st.text(max_size=230)
COLUMN_OF = {"glue": "price", "work": "minutes", "extra": "price", "general": "value"}


@given(
    kind=st.sampled_from(["glue", "work", "extra"]),
    name=TYPED,
    text=st.one_of(TYPED, st.floats(0, 1e12).map(str)),
)
@example(kind="work", name="saw" * 60, text="999999999")
@example(kind="glue", name="p" * 190, text="0.0000001")
def test_a_price_that_can_be_typed_is_in_the_file_again(kind: str, name: str, text: str) -> None:
    """What is taken from the maker must never make a design that cannot be opened."""
    try:
        prices = with_cell(Prices(), f"{kind}/{name}", COLUMN_OF[kind], text)  # type: ignore[arg-type]
    except BadInput:
        return

    assert designs.from_bytes(designs.to_bytes(Design(prices=prices))).prices == prices


@given(st.sampled_from(sorted(GENERAL)), TYPED)
@example("terms", "Half now.\tHalf then.")
@example("terms", "Half now.\nHalf then.")
@example("currency", "\x07")
@example("overhead", "1000")
@example("decimals", "¢")
def test_what_holds_for_the_whole_list_is_in_the_file_again(name: str, text: str) -> None:
    try:
        prices = with_cell(Prices(), f"general/{name}", "value", text)
    except BadInput:
        return

    assert designs.from_bytes(designs.to_bytes(Design(prices=prices))).prices == prices
