"""Where one piece lies on another, measured the way a maker marks it out: from an edge, an end."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.building.joined import Joined
from model.building.words import HAIR, Words
from model.shop.order import say
from model.shop.order.jobs import FACES
from model.units import Mm

_FACES = {"end": "ends", "edge": "edges"}
_KINDS = {"end": "end", "edge": "edge"}
_MIDDLE = "in the middle"
_FEW = 5  # so many places are read one by one
_OUT = {"left": (0, -1), "right": (0, 1), "foot": (1, -1)}
# Which way the faces at the low and the high end of a bed axis look.
_TOWARD = (
    ("on the bed toward its left", "on the bed toward its right"),
    ("on the bed toward its foot", "on the bed toward its head"),
    ("the lower one on the bed", "the upper one on the bed"),
)
_FLUSH = ("ends flush", "edges flush", "faces flush")


class Where:
    """Places of the pieces of a bed."""

    def __init__(self, joined: Joined, words: Words) -> None:
        self._joined, self._words = joined, words
        low, high = joined.pieces.bounds
        self._low: list[list[float]] = low.tolist()
        self._high: list[list[float]] = high.tolist()
        self._matrices = {
            piece: mark.matrices[k]
            for mark in joined.bed.marks
            for k, piece in enumerate(mark.pieces)
        }

    def low(self, piece: int, axis: int) -> Mm:
        """The lower end of a piece on a bed axis."""
        return self._low[piece][axis]

    def high(self, piece: int, axis: int) -> Mm:
        """The upper end of a piece on a bed axis."""
        return self._high[piece][axis]

    def long_axis(self, piece: int) -> int:
        """The bed axis along which a piece is longest."""
        size = [self._high[piece][k] - self._low[piece][k] for k in range(3)]
        return size.index(max(size))

    def meets(self, one: int, other: int) -> int:
        """The axis across the faces by which two pieces meet: they share least of it."""
        low, high = self._low, self._high
        shared = [
            min(high[one][k], high[other][k]) - max(low[one][k], low[other][k]) for k in range(3)
        ]
        return shared.index(min(shared))

    def sides(self, host: int) -> tuple[tuple[str, str], ...]:
        """The faces of a piece that look the lower and the upper way along each bed axis, by the
        names that its own page has; those of a drawer by where they are in the drawer.
        """
        row = self._joined.group(host).partition("-")[0]
        if row in _OUT:
            return self._in_drawer(host, *_OUT[row])
        return self.own_sides(host)

    def own_sides(self, host: int) -> tuple[tuple[str, str], ...]:
        """The same, always by the names that its own page has."""
        turn = self._turn(host)
        found = []
        for axis in range(3):
            own = [abs(x) for x in turn[axis]]
            k = own.index(max(own))
            low, high = FACES[k]
            found.append((low, high) if turn[axis][k] > 0 else (high, low))
        return tuple(found)

    def _in_drawer(self, host: int, axis: int, sign: int) -> tuple[tuple[str, str], ...]:
        """Front and back along the way out, left and right as seen from the front, up and down."""
        size = [self._high[host][k] - self._low[host][k] for k in range(3)]
        thin = size.index(min(size))
        kinds = ["edge" if k != self.long_axis(host) else "end" for k in range(3)]
        if thin == 2:
            kinds = ["edge", "edge", "face"]
        kinds[thin] = "face"
        across = 1 - axis
        along = ("back", "front") if sign > 0 else ("front", "back")
        left_is_low = sign > 0 if axis == 0 else True
        sides = ("left", "right") if left_is_low else ("right", "left")
        if thin == across:
            sides = self._inner_outer(host, across)
        named = [("", ""), ("", ""), ("lower", "upper")]
        named[axis], named[across] = along, sides
        return tuple(
            (f"{low} {kind}", f"{high} {kind}")
            for (low, high), kind in zip(named, kinds, strict=True)
        )

    def _inner_outer(self, host: int, across: int) -> tuple[str, str]:
        """Which face of a box side looks out of the drawer."""
        group = self._joined.group(host)
        own = [k for k in range(len(self._low)) if self._joined.group(k) == group]
        low = min(self._low[k][across] for k in own)
        high = max(self._high[k][across] for k in own)
        is_far = self._low[host][across] + self._high[host][across] > low + high
        return ("inner", "outer") if is_far else ("outer", "inner")

    def face_of(self, piece: int, host: int) -> str:
        """The face of a host that a piece lies on."""
        axis = self.meets(piece, host)
        middle = self._low[piece][axis] + self._high[piece][axis]
        is_high = middle > self._low[host][axis] + self._high[host][axis]
        return self.sides(host)[axis][is_high]

    def _turn(self, piece: int) -> list[list[float]]:
        """How the axes of a piece's mark run on the bed: (3, 3)."""
        matrix = self._matrices.get(piece, self._joined.pieces.matrices[piece])
        turn: list[list[float]] = matrix[:3, :3].tolist()
        return turn

    # ------------------------------------------------------------ one piece on another

    def on(self, piece: int, host: int, *, looks: bool = False) -> str:
        """`ends flush, 3 3/8" below the upper edge of S1`: where a piece lies on a face.

        `looks` tells of a host that stands upright which way its edges and ends look on the bed.
        """
        across = self.meets(piece, host)
        is_told = looks and self._is_upright(host)
        told = [
            self._along(piece, host, axis, self._names(host, axis, looks=is_told))
            for axis in range(3)
            if axis != across
        ]
        if all(each.startswith(_MIDDLE) for each in told):
            return _MIDDLE
        if all(each in _FLUSH for each in told):
            return "all edges flush"
        return ", ".join(told)

    def beside(self, piece: int, host: int, axis: int) -> str:
        """`flush with the upper edge`: where a piece lies on another along one bed axis."""
        return self._along(piece, host, axis, self._names(host, axis, looks=False))

    def _is_upright(self, host: int) -> bool:
        """Whether a piece's own length stands upright, so that no edge of it is up on the bed."""
        return self.own_sides(host)[2][0].split()[-1] == "end" and not self._joined.group(host)

    def _names(self, host: int, axis: int, *, looks: bool) -> tuple[str, str]:
        low, high = self.sides(host)[axis]
        if not looks:
            return (low, high)
        return (f"{low} ({_TOWARD[axis][0]})", f"{high} ({_TOWARD[axis][1]})")

    def _along(self, piece: int, host: int, axis: int, names: tuple[str, str]) -> str:
        low = self._low[piece][axis] - self._low[host][axis]
        high = self._high[host][axis] - self._high[piece][axis]
        kind = names[0].partition(" (")[0].split()[-1]
        if abs(low) <= HAIR and abs(high) <= HAIR:
            return f"{_FACES.get(kind, 'faces')} flush"
        if abs(low) <= HAIR or abs(high) <= HAIR:
            return f"flush with the {names[0] if abs(low) <= HAIR else names[1]}"
        if abs(low - high) <= HAIR and low > 0:
            return f"{_MIDDLE}, {self._words.size(low)} from each {_KINDS.get(kind, 'face')}"
        nearer = (low, names[0]) if abs(low) <= abs(high) else (high, names[1])
        if nearer[0] < 0:
            return f"{self._words.size(-nearer[0])} past the {nearer[1]}"
        return f"{self._words.size(nearer[0])} from the {nearer[1]}"

    # ------------------------------------------------------------ several pieces along one

    def run(self, pieces: Sequence[int], host: int, axis: int) -> str:
        """`from the near end of S2 to the near edge: S4 0, S5 39 1/4"`: a row along a piece.

        Counted from the end that the row is nearer to; the first of two alike.
        """
        rows = sorted(pieces, key=lambda each: self._low[each][axis])
        low = min(self._low[each][axis] for each in rows) - self._low[host][axis]
        high = self._high[host][axis] - max(self._high[each][axis] for each in rows)
        from_low = low <= high + HAIR
        rows = rows if from_low else rows[::-1]
        places = [
            self._low[each][axis] - self._low[host][axis]
            if from_low
            else self._high[host][axis] - self._high[each][axis]
            for each in rows
        ]
        told = self._listed(rows, places)
        end = self.sides(host)[axis][0 if from_low else 1]
        tenon = ", tenon and all," if self._has_tenon(host) and axis == self.long_axis(host) else ""
        mark = self._words.marks([host])
        return f"from the {end} of {mark}{tenon} to the near edge: {told}"

    def _listed(self, rows: Sequence[int], places: Sequence[Mm]) -> str:
        """Each place by itself; of a long row that is evenly spaced the first and the step."""
        steps = {round(b - a, 2) for a, b in zip(places, places[1:], strict=False)}
        marks = {self._joined.mark_of.get(each, self._words.name(each)) for each in rows}
        if len(rows) > _FEW and len(steps) == 1 and len(marks) == 1:
            step = (places[-1] - places[0]) / (len(places) - 1)
            first, each = self._words.size(places[0]), self._words.size(step)
            return f"{marks.pop()} {first}, then one every {each}, {len(rows)} in all"
        told = [
            f"{self._joined.mark_of.get(each, self._words.name(each))} {self._words.size(place)}"
            for each, place in zip(rows, places, strict=True)
        ]
        return say.listed(told)

    def _has_tenon(self, piece: int) -> bool:
        return any(cut.kind == "tenon cheek" for cut in self._joined.part(piece).cuts)

    def gaps(self, pieces: Iterable[int], axis: int) -> list[Mm]:
        """The clear room between neighbours in a row."""
        rows = sorted(pieces, key=lambda each: self._low[each][axis])
        return [
            self._low[after][axis] - self._high[before][axis]
            for before, after in zip(rows, rows[1:], strict=False)
        ]
