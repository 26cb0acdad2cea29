"""Lists of parts drawn by lot, as beds give them: a seed gives the same task on every machine."""

from __future__ import annotations

from random import Random

from model.cutting.record import Box, Grain, Piece, Stock, Task, Trim

INCH = 25.4
SHEETS_MM = ((2440.0, 1220.0), (2500.0, 1250.0), (3050.0, 1525.0))
SHEETS_INCH = ((96 * INCH, 48 * INCH), (60 * INCH, 60 * INCH))
MATTRESSES = ((900.0, 2000.0), (1400.0, 2000.0), (1600.0, 2000.0), (1930.0, 2030.0))


class Grid:
    """A shop that measures in half millimetres, or in sixteenths of an inch."""

    def __init__(self, lot: Random) -> None:
        self.lot = lot
        self.is_inch = lot.random() < 0.5
        self.step = INCH / 16 if self.is_inch else 0.5

    def size(self, least: float, most: float) -> float:
        return self.on(self.lot.uniform(least, most))

    def on(self, size: float) -> float:
        return round(size / self.step) * self.step


# ---------------------------------------------------------------- sheets


def bed_list(seed: int) -> Task:
    """Parts of a storage bed from sheets of one thickness: 20 to 80 pieces of 6 to 15 sizes."""
    return _drawn(seed, range(20, 81), range(6, 16))


def any_bed_list(seed: int) -> Task:
    """The same with as few as 6 pieces and as many as 110, of 4 to 15 sizes."""
    return _drawn(seed, range(6, 111), range(4, 16))


def _drawn(seed: int, pieces_wanted: range, sizes_wanted: range) -> Task:
    """The first list that has so many pieces of so many sizes."""
    lot = Random(seed)
    while True:
        grid = Grid(lot)
        parts = lot.choice((_thick, _middle, _thin))(lot, grid)
        pieces = sum(quantity for *_, quantity in parts)
        if pieces in pieces_wanted and len(parts) in sizes_wanted:
            return _sheet_task(lot, grid, parts, seed)


Part = tuple[float, float, Grain, int]


def _rows(lot: Random, grid: Grid) -> list[tuple[float, float, float, int]]:
    """Rows of drawers: box length along the bed, depth, height, count."""
    return [
        (grid.size(380, 900), grid.size(350, 900), grid.size(120, 280), lot.randint(2, 5))
        for _ in range(lot.randint(1, 4))
    ]


def _thick(lot: Random, grid: Grid) -> list[Part]:
    """18 mm: deck, headboard, rails, fronts, bearers, often the boxes too."""
    wide, long = lot.choice(MATTRESSES)
    split = lot.randint(2, 4)
    parts: list[Part] = [
        (grid.on(long / split), grid.on(wide), "free", split),
        (grid.on(wide + 100), grid.size(500, 1000), lot.choice(("length", "width")), 1),
        (grid.on(long), grid.size(180, 320), "length", 2),
        (grid.on(wide), grid.size(150, 320), "length", lot.randint(1, 2)),
    ]
    for length, depth, height, count in _rows(lot, grid):
        parts.append((grid.on(length + 30), grid.on(height + 40), "length", count))
        parts.append((depth, grid.size(60, 100), "free", 2 * count))
        if lot.random() < 0.6:
            parts.append((depth, height, "length", 2 * count))
            parts.append((grid.on(length - 36), height, "length", 2 * count))
    if lot.random() < 0.5:
        parts.append((grid.size(300, 700), grid.size(150, 350), "free", lot.randint(2, 6)))
    return parts


def _middle(lot: Random, grid: Grid) -> list[Part]:
    """12 mm: drawer boxes and dividers."""
    parts: list[Part] = []
    for length, depth, height, count in _rows(lot, grid):
        grain = lot.choice(("length", "free"))
        parts.append((depth, height, grain, 2 * count))
        parts.append((grid.on(length - 24), height, grain, count))
        parts.append((grid.on(length - 24), grid.on(height - 12), grain, count))
    for _ in range(lot.randint(0, 3)):
        parts.append((grid.size(200, 600), grid.size(80, 200), "free", lot.randint(2, 6)))
    return parts


def _thin(lot: Random, grid: Grid) -> list[Part]:
    """6 mm: bottoms, backs and panels."""
    parts: list[Part] = []
    for length, depth, _, count in _rows(lot, grid):
        parts.append((grid.on(length - 12), grid.on(depth - 12), "free", 2 * count))
        parts.append((grid.on(length - 80), grid.size(100, 220), "length", count))
    for _ in range(lot.randint(1, 5)):
        parts.append((grid.size(250, 900), grid.size(150, 600), "free", lot.randint(1, 6)))
    return parts


def _sheet_task(lot: Random, grid: Grid, parts: list[Part], seed: int) -> Task:
    kerf = 3.175 if grid.is_inch else lot.choice((2.4, 2.8, 3.2))
    length, width = lot.choice(SHEETS_INCH if grid.is_inch else SHEETS_MM)
    edge = lot.choice((0.0, 0.0, 6.35 if grid.is_inch else 5.0))
    trim = Trim(lower=edge, left=edge) if lot.random() < 0.5 else Trim(edge, edge, edge, edge)
    stock = Stock(key="sheet", length=length, width=width, trim=trim)
    room = length - trim.left - trim.right, width - trim.lower - trim.upper
    return Task(
        kind="sheets",
        pieces=tuple(_piece(at, part, room) for at, part in enumerate(parts, 1)),
        stock=(stock,),
        kerf=kerf,
        name=f"bed {seed}",
    )


def _piece(at: int, part: Part, room: tuple[float, float]) -> Piece:
    """A part as it is asked for; one too long for the sheet that way round turns its grain."""
    length, width, grain, quantity = part
    along, across = (width, length) if grain == "width" else (length, width)
    if along > room[0] or across > room[1]:
        grain = "free"
        length, width = min(length, room[0]), min(width, room[1])
    return Piece(mark=f"P{at}", length=length, width=width, quantity=quantity, grain=grain)


def several_sizes(seed: int) -> Task:
    """A bed's list from sheets of two sizes with prices, offcuts on hand, and one spoilt sheet."""
    lot, task = Random(seed), bed_list(seed)
    (sheet,) = task.stock
    half = Stock(
        key="half", length=sheet.length / 2, width=sheet.width, price=round(lot.uniform(20, 32), 2)
    )
    left = [
        Stock(
            key=f"offcut {at}",
            length=round(lot.uniform(400, 1500)),
            width=round(lot.uniform(250, 900)),
            quantity=lot.randint(1, 2),
            on_hand=True,
        )
        for at in range(lot.randint(1, 4))
    ]
    x, y = round(lot.uniform(200, 1800)), round(lot.uniform(200, 1000))
    spoilt = Stock(
        key="spoilt", length=sheet.length, width=sheet.width, quantity=1, on_hand=True,
        bad=(Box(x, y, x + 90, y + 60),), trim=sheet.trim,
    )  # fmt: skip
    priced = Stock(key="sheet", length=sheet.length, width=sheet.width, price=50.0, trim=sheet.trim)
    stock = (priced, half, *left, spoilt)
    return Task(kind="sheets", pieces=task.pieces, stock=stock, kerf=task.kerf, name=task.name)


def with_rows(seed: int) -> Task:
    """A bed's list with fronts whose grain runs on, and short parts that are milled in one."""
    lot, task = Random(seed), bed_list(seed)
    height, each = round(lot.uniform(150, 250)), round(lot.uniform(300, 480))
    fronts = (
        Piece(mark="F", length=each, width=height, quantity=lot.randint(2, 3), row="fronts"),
        Piece(mark="FS", length=each + 40, width=height, row="fronts"),
        Piece(
            mark="G", length=120, width=70, quantity=lot.randint(2, 5), row="long", stays_whole=True
        ),
    )
    pieces = (*task.pieces, *fronts)
    return Task(kind="sheets", pieces=pieces, stock=task.stock, kerf=task.kerf, name=task.name)


def tiny_list(seed: int) -> Task:
    """Three to eight pieces on small sheets: few enough to try every way to cut them."""
    lot = Random(seed)
    step, kerf = lot.choice(((1.0, 3.0), (10.0, 0.0), (INCH / 4, INCH / 8), (1.0, 40.0)))
    left, asked = lot.randint(3, 8), []
    while left:
        quantity = min(left, lot.randint(1, 3))
        left -= quantity
        asked.append(
            Piece(
                mark=f"P{len(asked) + 1}",
                length=step * lot.randint(int(100 / step), int(1000 / step)),
                width=step * lot.randint(int(60 / step), int(700 / step)),
                quantity=quantity,
                grain=lot.choice(("length", "width", "free", "free")),
            )
        )
    sheet = Stock(
        key="sheet",
        length=48 * INCH if step == INCH / 4 else 1200.0,
        width=48 * INCH if step == INCH / 4 else lot.choice((800.0, 1000.0)),
        has_grain=lot.random() < 0.6,
        trim=Trim(lower=lot.choice((0.0, 6.0)), left=lot.choice((0.0, 6.0))),
    )
    return Task(kind="sheets", pieces=tuple(asked), stock=(sheet,), kerf=kerf, name=f"tiny {seed}")
