"""Small cutting tasks of every kind, drawn and shrunk by hypothesis: sound ones and absurd ones."""

from __future__ import annotations

from hypothesis import strategies as st

from model.cutting.record import Box, Piece, Stock, Task, Trim, Wishes

# Halves of a millimetre, sixty-fourths of an inch, and what no grid holds.
STEPS = st.sampled_from((1.0, 0.5, 25.4 / 64, 1 / 3))
KERFS = st.sampled_from((0.0, 2.4, 3.0, 3.175, 3.2, 40.0))


@st.composite
def lengths_between(draw: st.DrawFn, least: float, most: float) -> float:
    step = draw(STEPS)
    return step * draw(st.integers(int(least / step) + 1, int(most / step)))


@st.composite
def trims(draw: st.DrawFn) -> Trim:
    edge = st.sampled_from((0.0, 0.0, 2.0, 6.35, 25.0))
    return Trim(*(draw(edge) for _ in range(4)))


@st.composite
def stocks(draw: st.DrawFn, key: str, *, with_bad: bool, widest: float = 700.0) -> Stock:
    length, width = draw(lengths_between(300, 1300)), draw(lengths_between(80, widest))
    on_hand = draw(st.booleans())
    bad = draw(st.lists(bad_spans(length, width), max_size=2)) if with_bad else []
    return Stock(
        key=key,
        length=length,
        width=width,
        quantity=draw(st.sampled_from((0, 1, 2, None) if not on_hand else (1, 2))),
        price=draw(st.sampled_from((None, 9.5, 20.0, 31.25))),
        on_hand=on_hand,
        has_grain=draw(st.booleans()),
        trim=draw(trims()),
        bad=tuple(bad),
        kg_per_m2=draw(st.sampled_from((0.0, 12.0))),
    )


@st.composite
def bad_spans(draw: st.DrawFn, length: float, width: float) -> Box:
    x, y = (draw(st.integers(0, int(2 * side) - 40)) / 2 for side in (length, width))
    long, wide = draw(st.sampled_from((15.0, 90.0, 2000.0))), draw(st.sampled_from((15.0, 2000.0)))
    return Box(x, y, min(length, x + long), min(width, y + wide))


@st.composite
def pieces(draw: st.DrawFn, mark: str, longest: float = 900.0) -> Piece:
    return Piece(
        mark=mark,
        length=draw(lengths_between(20, longest)),
        width=draw(lengths_between(20, 300)),
        quantity=draw(st.integers(1, 4)),
        first=draw(st.sampled_from((1, 1, 3))),
        grain=draw(st.sampled_from(("length", "width", "free"))),
    )


@st.composite
def row_of(draw: st.DrawFn, row: str) -> list[Piece]:
    """Pieces of one strip, alike in width and grain."""
    width, grain = draw(lengths_between(30, 150)), draw(st.sampled_from(("length", "width")))
    stays = draw(st.booleans())
    return [
        Piece(
            mark=f"{row}{at}", length=draw(lengths_between(30, 200)), width=width, grain=grain,
            quantity=draw(st.integers(1, 2)), row=row, stays_whole=stays,
        )
        for at in range(draw(st.integers(1, 3)))
    ]  # fmt: skip


@st.composite
def sheet_tasks(draw: st.DrawFn) -> Task:
    asked = [draw(pieces(f"P{at}")) for at in range(draw(st.integers(1, 6)))]
    for row in ("R", "S")[: draw(st.integers(0, 2))]:
        asked += draw(row_of(row))
    wishes = Wishes(
        strips=draw(st.booleans()),
        offcut_before_settings=draw(st.booleans()),
        least_offcut=draw(st.sampled_from((60.0, 150.0))),
    )
    held = [draw(stocks(f"S{at}", with_bad=True)) for at in range(draw(st.integers(0, 3)))]
    return Task(
        kind="sheets", pieces=tuple(asked), stock=tuple(held), kerf=draw(KERFS), wishes=wishes
    )


@st.composite
def board_tasks(draw: st.DrawFn) -> Task:
    asked = [draw(pieces(f"P{at}")) for at in range(draw(st.integers(1, 6)))]
    held = [
        draw(stocks(f"B{at}", with_bad=True, widest=300.0)) for at in range(draw(st.integers(0, 5)))
    ]
    return Task(kind="boards", pieces=tuple(asked), stock=tuple(held), kerf=draw(KERFS))


@st.composite
def length_tasks(draw: st.DrawFn) -> Task:
    asked = [draw(pieces(f"P{at}")) for at in range(draw(st.integers(1, 6)))]
    held = [draw(stocks(f"L{at}", with_bad=True)) for at in range(draw(st.integers(0, 3)))]
    return Task(kind="lengths", pieces=tuple(asked), stock=tuple(held), kerf=draw(KERFS))


def tasks() -> st.SearchStrategy[Task]:
    return st.one_of(sheet_tasks(), board_tasks(), length_tasks())
