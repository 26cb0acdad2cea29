"""Pieces, sizes and sides in the words of the shop."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence

from model.building.joined import Joined
from model.building.record import Clamping, Driving, Square
from model.cost.sizes import sold_size
from model.materials import pull_screws
from model.shop.order import say
from model.shop.order.bits import bit
from model.units import GRIDS, Kg, Mm

HAIR: Mm = 0.02  # below any tape and above floating-point dust
_LB_IN_A_KG = 2.20462  # international pound, 0.45359237 kg, since 1959
NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def capital(text: str) -> str:
    """A sentence begins with a capital."""
    return text[:1].upper() + text[1:]


def counted(count: int) -> str:
    """A small number in words."""
    return NUMBERS[count] if count < len(NUMBERS) else str(count)


def called(name: str, *, is_wood: bool) -> str:
    """A name as it stands in a sentence: `hook plate (post half)` for `hook plate, post half`."""
    first, comma, rest = name.partition(", ")
    start = first if is_wood else f"{first[:1].lower()}{first[1:]}"
    return start + (f" ({rest})" if comma else "")


def plural(name: str, count: int = 2) -> str:
    """`rails`, `hook plates (post half)`."""
    if count == 1:
        return name
    for mark in (" (", ","):
        first, found, rest = name.partition(mark)
        if found:
            return f"{plural(first)}{found}{rest}"
    return f"{name}{'es' if name.endswith(('s', 'x', 'ch', 'sh')) else 's'}"


def square_check(square: Square, words: Words) -> str:
    """What both diagonals measure, and how far they may be apart."""
    return (
        f"{square.what}, {words.size(square.length)} by {words.size(square.width)}: both diagonals "
        f"measure {words.diagonal(square.diagonal)}. They may differ by "
        f"{words.diagonal(square.most)}; if they differ by more, push the longer one together."
    )


def weight(kg: Kg, unit: str) -> str:
    """`31 kg`, or `68 lb (31 kg)` where the maker reads inches."""
    told = f"{kg:.0f} kg" if kg >= 2 else f"{kg:.1f} kg"
    return f"{kg * _LB_IN_A_KG:.0f} lb ({told})" if unit == "inch" else told


def weight_or_less(kg: Kg, unit: str) -> str:
    """What nobody should exceed, rounded down: `24 kg`, or `53 lb (24 kg)`."""
    told = f"{math.floor(kg)} kg"
    return f"{math.floor(kg * _LB_IN_A_KG)} lb ({told})" if unit == "inch" else told


def load_class(kg: Kg, unit: str) -> str:
    """What a bought part is made for: `45 kg`, or `100 lb (45 kg)`. Pounds are told by the five
    where that is what the class is called, else to the next pound up.
    """
    pounds = kg * _LB_IN_A_KG
    by_five = round(pounds / 5) * 5
    told = by_five if abs(by_five - pounds) <= 1 else math.ceil(pounds)
    return f"{told} lb ({kg:.0f} kg)" if unit == "inch" else f"{kg:.0f} kg"


class Words:
    """Words for the pieces of one bed, in the unit that the maker reads."""

    def __init__(self, joined: Joined) -> None:
        self._joined = joined
        self.unit: str = joined.bed.design.value("shown_unit")

    def size(self, mm: Mm) -> str:
        """A length as the maker reads it, without floating-point dust."""
        return say.size(round(mm, 4) + 0.0, self.unit)

    def near(self, mm: Mm) -> str:
        """A length that nobody sets closer than a sixteenth or a mm: a clamp, a prop."""
        return say.rough(mm, self.unit)

    def up(self, mm: Mm) -> str:
        """How far a clamp must open for a span."""
        return say.clamp_size(mm, self.unit)

    def diagonal(self, mm: Mm) -> str:
        """A diagonal as a tape is read: to the sixteenth or the mm."""
        return say.size(GRIDS["1/16 in" if self.unit == "inch" else "1 mm"].near(mm), self.unit)

    def kg(self, kg: Kg) -> str:
        """A weight: kg, with pounds where the maker reads inches."""
        return weight(kg, self.unit)

    def name(self, piece: int) -> str:
        """What a piece is called: `end rail`."""
        return called(self._joined.part(piece).name, is_wood=self._joined.is_wood(piece))

    def called(self, pieces: Sequence[int]) -> str:
        """Pieces by name and mark: `end rail H3 and upper rail H4`, `4 end stiles S4`."""
        return say.listed(self._called(pieces))

    def marks(self, pieces: Sequence[int]) -> str:
        """Pieces by mark alone: `H3 and H4`; what has no mark by its name."""
        marks = dict.fromkeys(self._mark(piece) for piece in pieces)
        return say.listed(list(marks))

    def names(self, pieces: Sequence[int]) -> str:
        """Pieces by name alone: `rails, stiles and panels`."""
        count = Counter(self.name(piece) for piece in pieces)
        return say.listed([plural(name, many) for name, many in count.items()])

    def _mark(self, piece: int) -> str:
        found = self._joined.mark_of.get(piece)
        return found if found is not None else f"the {self.name(piece)}"

    def _called(self, pieces: Sequence[int]) -> list[str]:
        count: Counter[tuple[str, str]] = Counter()
        for piece in pieces:
            count[self.name(piece), self._joined.mark_of.get(piece, "")] += 1
        named: dict[str, list[tuple[str, int]]] = {}
        for (name, mark), many in count.items():
            named.setdefault(name, []).append((mark, many))
        return [self._of_name(name, marks) for name, marks in named.items()]

    def _of_name(self, name: str, marks: Sequence[tuple[str, int]]) -> str:
        total = sum(many for _, many in marks)
        known = say.listed([mark for mark, _ in marks if mark])
        number = "" if total == len(marks) and known else f"{total} "
        if total == 1 and not known:
            return f"the {name}"
        return f"{number}{plural(name, total)} {known}".strip()

    # ------------------------------------------------------------ screws and clamps

    def screw(self, driving: Driving) -> str:
        """What is driven, without the number: `No. 8 x 2" wood screws`."""
        size = sold_size(driving.length, self.unit)
        if driving.kind == "wood screw":
            return plural(f"No. {driving.gauge} x {size} wood screw", driving.number)
        if driving.kind == "pull screw":
            row = pull_screws()[driving.gauge]
            return plural(row.name.partition(",")[0], driving.number) + f" {size} long"
        kinds = {"pocket screw": "pocket screw", "pin": "panel pin"}
        return plural(kinds[driving.kind], driving.number) + f" {size} long"

    def pilot(self, driving: Driving) -> str:
        """The bit for its pilot hole, as it is sold; "" where none is drilled."""
        return bit("pilot hole", driving.pilot, self.unit) if driving.pilot else ""

    def shank(self, wide: Mm) -> str:
        """The bit for a hole that a screw's shank goes through, as it is sold."""
        return bit("shank hole", wide, self.unit)

    def clamps(self, clamps: Iterable[Clamping]) -> tuple[str, ...]:
        """`4 clamps that open 64" or more`."""
        return tuple(
            f"{each.number} {plural('clamp', each.number)} that open{'s' * (each.number == 1)} "
            f"{self.up(each.span)} or more"
            for each in clamps
        )
