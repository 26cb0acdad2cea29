"""Questions for bounds: typed in, and made by cutting sheets, so that what is enough is known."""

from random import Random

from model.cutting.bounds.question import Question, Sheet, Size, Way

# Fixed pieces of Martello, Vigo, Management Science 44(3):388-399, 1998, class 9, 20 pieces, first
# instance (cl_09_020_01): 19 sheets of 100 x 100, turned or not.
CL_09_020_01 = (
    *((56, 75), (97, 77), (62, 73), (98, 84), (71, 50), (76, 93), (83, 55), (83, 55), (97, 88)),
    *((67, 71), (64, 99), (80, 89), (85, 87), (70, 60), (57, 53), (89, 85), (84, 98), (85, 61)),
    *((62, 70), (10, 42)),
)

# A furniture maker's list: Macedo, Alves, Valerio de Carvalho, Computers & OR 37(6):991-1001, 2010
# (A43), length, width, demand; sheets 2750 x 1220; 7 as given, 6 when pieces may turn.
A43 = (
    *((987, 705, 1), (1903, 486, 2), (1120, 486, 2), (986, 433, 4), (623, 426, 1), (228, 210, 2)),
    *((2357, 935, 2), (1181, 733, 4), (2040, 320, 1), (1236, 143, 2), (1780, 740, 1)),
)

# Another of his lists (A5); sheets 2470 x 2080; 13 as given.
A5 = (
    *((623, 986, 10), (623, 486, 16), (736, 310, 32), (486, 310, 16), (706, 286, 28)),
    *((728, 210, 16), (2357, 975, 12), (303, 386, 8)),
)


def size(length: int, width: int, demand: int = 1, turns: bool = False) -> Size:
    ways: tuple[Way, ...] = ((length, width), (width, length)) if turns else ((length, width),)
    return Size(tuple(dict.fromkeys(ways)), demand)


def ask(sheet: tuple[int, int], *sizes: Size) -> Question:
    """Sheets of one kind, as many as needed, each at a cost of 1."""
    return asks((Sheet(*sheet, None, 1),), *sizes)


def asks(sheets: tuple[Sheet, ...], *sizes: Size) -> Question:
    """Ways that fit no sheet are left out, as they are in a question of a task."""
    fitting = (
        Size(tuple(way for way in each.ways if any(at.takes(way) for at in sheets)), each.demand)
        for each in sizes
    )
    return Question(sizes=tuple(fitting), sheets=sheets)


def cut_at_random(seed: int) -> tuple[Question, int]:
    """Pieces sawn from a few sheets, some lost again, and what those sheets cost together."""
    draw = Random(seed)
    sheets = tuple(_sheet(draw, number) for number in range(draw.choice((1, 1, 2, 3))))
    used = [draw.randint(1, 3) if each.quantity is None else each.quantity for each in sheets]
    pieces: list[Way] = []
    for sheet, number in zip(sheets, used, strict=True):
        for _ in range(number):
            pieces += _sawn(draw, sheet)
    kept = pieces[: max(1, round(len(pieces) * draw.choice((1.0, 1.0, 0.9))))]
    turns = draw.random()
    alike: dict[tuple[Way, bool], int] = {}
    for length, width in kept:
        key = ((length, width), draw.random() < turns - 0.3)
        alike[key] = alike.get(key, 0) + 1
    sizes = (size(*way, demand, turned) for (way, turned), demand in alike.items())
    cost = sum(each.cost * number for each, number in zip(sheets, used, strict=True))
    return asks(sheets, *sizes), cost


def _sheet(draw: Random, number: int) -> Sheet:
    length, width = draw.choice(((20, 10), (30, 15), (244, 122), (12, 12), (2440, 1220), (7, 9)))
    on_hand = number > 0 and draw.random() < 0.5
    quantity = draw.randint(1, 3) if on_hand or draw.random() < 0.3 else None
    return Sheet(length, width, quantity, 0 if on_hand else draw.choice((1, 3, 55)))


def _sawn(draw: Random, sheet: Sheet) -> list[Way]:
    parts: list[Way] = [(sheet.length, sheet.width)]
    least = max(1, sheet.length // draw.choice((4, 8, 20)))
    for _ in range(draw.randint(0, 7)):
        at = draw.randrange(len(parts))
        length, width = parts[at]
        along = draw.random() < 0.5
        side = length if along else width
        if side >= 2 * least:
            cut = draw.randint(least, side - least)
            parts[at] = (cut, width) if along else (length, cut)
            parts.append((side - cut, width) if along else (length, side - cut))
    return parts
