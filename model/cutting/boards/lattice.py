"""All that fits on boards, for a short list: which counts of its strips each of them holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from model.cutting.boards.pattern import Band, Cut, Lying, Pattern
from model.cutting.boards.points import Bools, Cutting, Points, Room
from model.cutting.boards.rack import Blank, Board
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.sums import Ints
from model.cutting.record import Way

WAYS: tuple[Way, Way] = ("crosscut", "rip")  # of ways that both do, the first is taken


@dataclass(frozen=True)
class Filling:
    """The fullest counts that a board holds, (n, lots); of each the form, and where it stands
    among those of its form; of each form and blank the counts in that blank, (n, lots).
    """

    counts: Ints
    form: Ints
    place: Ints
    inside: tuple[tuple[Ints, ...], ...]


class Lattice:
    """A list so short that all its counts can be looked at. Blanks count as clear."""

    def __init__(
        self, sizes: Sequence[Lot], demand: Sequence[int], lots: Sequence[int], kerf: int
    ) -> None:
        """`lots` are the numbers of those that the list holds."""
        self.lots = tuple(lots)
        self.points = Points([demand[lot] for lot in lots])
        self._kerf = kerf
        self._along = {
            "rip": [sizes[lot].along for lot in lots],
            "crosscut": [sizes[lot].across for lot in lots],
        }
        taken = {way: [size + kerf for size in sizes] for way, sizes in self._along.items()}
        self._ways = {way: Cutting(self.points, taken[way], taken[_other(way)]) for way in WAYS}

    def fillings(self, boards: Sequence[Board]) -> list[Filling]:
        """What fits on each board, by all its forms."""
        forms = [form for board in boards for form in board.forms]
        blanks = list(dict.fromkeys(blank for form in forms for blank in form))
        fits: list[Bools] = [np.zeros(self.points.size, dtype=np.bool_) for _ in blanks]
        for way, cutting in self._ways.items():
            held = cutting.fits([self._room(way, blank) for blank in blanks])
            fits = [one | other for one, other in zip(fits, held, strict=True)]
        full = {b: self.points.fullest(held) for b, held in zip(blanks, fits, strict=True)}
        return [self._filling(board, full) for board in boards]

    def pattern(
        self, number: int, board: Board, filling: Filling, at: int, counts: Sequence[int]
    ) -> Pattern:
        """A board with these counts, which are no more than those of its filling."""
        form, left = int(filling.form[at]), np.array(counts)
        cuts = []
        for blank, held in zip(board.forms[form], filling.inside[form], strict=True):
            taken = np.minimum(held[filling.place[at]], left)
            left = left - taken
            cuts.append(self._cut(blank, taken.tolist()))
        return Pattern(number, form, tuple(cuts))

    def _cut(self, blank: Blank, counts: Sequence[int]) -> Cut:
        """Crosscut first where both ways hold them: short boards are easier to joint and plane."""
        for way in WAYS:
            bands = self._ways[way].bands(self._room(way, blank), counts)
            if bands is not None:
                return self._placed(way, blank, bands)
        raise ArithmeticError("A board is to be cut into more than it holds.")

    def _placed(self, way: Way, blank: Blank, bands: Sequence[Sequence[int]]) -> Cut:
        """Bands side by side from the blank's corner, the widest first."""
        widths = self._along[_other(way)]
        wide = {tuple(b): max(w for w, c in zip(widths, b, strict=True) if c) for b in bands}
        low, made = blank.rect.span(way)[0], []
        for band in sorted(bands, key=lambda each: (-wide[tuple(each)], list(each))):
            high = low + wide[tuple(band)]
            made.append(Band(low, high, self._lying(way, blank, band)))
            low = high + self._kerf
        return Cut(way, tuple(made))

    def _lying(self, way: Way, blank: Blank, band: Sequence[int]) -> tuple[Lying, ...]:
        sizes, at = self._along[way], blank.rect.span(_other(way))[0]
        lying = []
        for lot in sorted(range(len(band)), key=lambda n: (-sizes[n], n)):
            for _ in range(band[lot]):
                lying.append(Lying(self.lots[lot], at))
                at += sizes[lot] + self._kerf
        return tuple(lying)

    def _filling(self, board: Board, full: dict[Blank, Ints]) -> Filling:
        each = [self._together([full[blank] for blank in form]) for form in board.forms]
        numbers = [np.arange(len(total)) for total, _ in each]
        return Filling(
            np.concatenate([total for total, _ in each]),
            np.repeat(np.arange(len(each)), [len(n) for n in numbers]),
            np.concatenate(numbers),
            tuple(inside for _, inside in each),
        )

    def _together(self, full: Sequence[Ints]) -> tuple[Ints, tuple[Ints, ...]]:
        """The fullest counts of several blanks together, and what of them lies in each."""
        points, lots = self.points, len(self.lots)
        total: Ints = np.zeros((1, lots), dtype=np.int64)
        inside: tuple[Ints, ...] = ()
        for held in full:
            more = np.minimum(held[None, :, :], points.demand - total[:, None, :])
            sums = (total[:, None, :] + more).reshape(-1, lots)
            numbers, first = np.unique(points.number(sums), return_index=True)
            fullest = points.number(points.fullest(points.below(sums[first])))
            chosen = first[np.isin(numbers, fullest)]
            before = (each[chosen // len(held)] for each in inside)
            inside = (*before, more.reshape(-1, lots)[chosen])
            total = sums[chosen]
        return total, inside

    def _room(self, way: Way, blank: Blank) -> Room:
        rooms = (blank.length + self._kerf, blank.width + self._kerf)
        return rooms if way == "rip" else rooms[::-1]


def _other(way: Way) -> Way:
    return "crosscut" if way == "rip" else "rip"
