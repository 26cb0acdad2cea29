"""One drawer in its opening, from the front and from the side, its clearances numbered."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from app.panes.section import Drawing, Flat, Gap, Laid, U, V, laid

if TYPE_CHECKING:
    from model.bed import Bed

# Before the left side the foot is at one's right hand: u, which runs to the head, goes leftwards.
TITLES = {
    "left": "From the front, foot at right",
    "right": "From the front, foot at left",
    "foot": "From the front, right side at the right",
}


class Measure(NamedTuple):
    """A dimension by name, the two points it lies between, and where its number goes."""

    name: str
    start: Flat
    end: Flat
    ring: float = 0.5


def drawer_sections(bed: Bed, row: str, drawer: int) -> tuple[Drawing, Drawing]:
    """Front and side of one drawer; `drawer` counts from 1."""
    view = _DrawerView(bed, row, drawer)
    front, side = list(view.front_measures()), list(view.side_measures())
    numbers = numbered(bed, (*front, *side))
    return (
        Drawing(
            TITLES[row], view.front(), gaps_of(front, numbers), *view.front_window(), row == "left"
        ),
        Drawing(
            "Through the middle, front at left",
            view.side(),
            gaps_of(side, numbers),
            *view.side_window(),
        ),
    )


def numbered(bed: Bed, measures: tuple[Measure, ...]) -> dict[str, int]:
    """Every dimension once, from 1; one that is nothing in this bed has no number."""
    names = dict.fromkeys(each.name for each in measures)
    there = (name for name in names if name in bed.dimensions.values and bed[name])
    return {name: number for number, name in enumerate(there, 1)}


def gaps_of(measures: list[Measure], numbers: dict[str, int]) -> tuple[Gap, ...]:
    """The measures that have a number."""
    return tuple(
        Gap(numbers[m.name], m.start, m.end, m.name, m.ring) for m in measures if m.name in numbers
    )


class _DrawerView:
    """Named dimensions of one row, and where they lie as one stands before it."""

    def __init__(self, bed: Bed, row: str, drawer: int) -> None:
        self.bed, self.row = bed, row
        self.name = f"{row}-{drawer}"
        self.laid: Laid = laid(bed, bed[f"{row}.frame"], self.name)
        self.left = float(bed[f"{row}.opening_places"][drawer - 1])
        self.right = self.left + float(bed[f"{row}.opening_width"])
        self.low, self.high = float(bed["opening_bottom"]), float(bed["opening_top"])
        box, front = self.laid.bounds(self._is("box")), self.laid.bounds(self._is("front"))
        (self.box_left, self.box_front, self.box_low), box_far = box
        self.box_right, self.box_back, self.box_top = box_far
        (self.front_left, self.front_face, self.front_low), front_far = front
        self.front_right, _, self.front_top = front_far
        self.middle_u, self.middle_z = (self.left + self.right) / 2, (self.low + self.high) / 2

    def _is(self, kind: str):  # type: ignore[no-untyped-def]
        pieces = self.bed.pieces
        return lambda piece: (
            self.laid.kinds[piece] == kind and pieces.groups[pieces.group[piece]] == self.name
        )

    # ------------------------------------------------------------ from the front

    def front(self):  # type: ignore[no-untyped-def]
        """The frame, the box and what carries it, cut in the middle; the front as an outline."""
        in_frame = (float(self.bed[f"{self.row}.front_plane"]) + self.box_front + 1.0) / 2
        in_frame = max(in_frame, float(self.bed[f"{self.row}.front_plane"]) + 1.0)
        frame = (p for p in self.laid.cut(V, in_frame) if p.kind == "frame")
        middle = self.laid.cut(V, (self.box_front + self.box_back) / 2)
        front = self.laid.seen(V, self._is("front"))
        return (*frame, *(p for p in middle if p.kind != "other front"), *front)

    def front_window(self) -> tuple[Flat, Flat]:
        """The opening, and so much of the frame that its neighbours are seen."""
        aside = 0.12 * (self.right - self.left)
        return (self.left - aside, 0.0), (self.right + aside, float(self.bed["rail_top"]))

    def front_measures(self) -> Iterator[Measure]:
        """Beside, above and below the box; the opening; the front off the floor."""
        row, z, u = self.row, self.middle_z, self.middle_u
        wide, high = self.right - self.left, self.high - self.low
        aside, level = self.left + 0.25 * wide, self.low + 0.3 * high
        yield Measure(f"{row}.box_side_room", (self.left, z), (self.box_left, z))
        yield Measure(f"{row}.box_side_room", (self.box_right, z), (self.right, z))
        yield Measure("box_top_room_built", (u, self.box_top), (u, self.high))
        yield Measure("box_bottom_room", (u, self.low), (u, self.box_low))
        yield Measure(f"{row}.opening_width", (self.left, level), (self.right, level), 0.7)
        yield Measure("opening_height", (aside, self.low), (aside, self.high), 0.6)
        yield Measure(f"{row}.front_bottom", (aside, 0.0), (aside, self.front_low))
        is_inset = self.front_left > self.left
        lap = "inset_reveal" if is_inset else f"{row}.front_lap"
        yield Measure(lap, (self.front_left, level), (self.left, level))

    # ------------------------------------------------------------ from the side

    def side(self):  # type: ignore[no-untyped-def]
        """Cut through the middle of the drawer; bearer and slide behind the plane as outlines."""
        pieces = self.bed.pieces
        half = (self.right - self.left) / 2

        def is_beside(piece: int) -> bool:
            at = pieces.first[piece]
            near = abs(self.laid.lo[at][U] - self.left) < half or self._is("hardware")(piece)
            return near and self.laid.kinds[piece] in ("bearer", "hardware")

        inside = self.side_window()[1][0]
        beside = (p for p in self.laid.seen(U, is_beside) if p.low[0] < inside)
        return (*beside, *self.laid.cut(U, self.middle_u))

    def side_window(self) -> tuple[Flat, Flat]:
        """From the open floor before the front to a little behind the box."""
        deep = self.box_back - self.front_face
        high = float(self.bed["rail_top"])
        return (self.front_face - 0.06 * deep, 0.0), (self.box_back + 0.16 * deep, high)

    def side_measures(self) -> Iterator[Measure]:
        """How deep the box is, what its slide gives, what stays behind it."""
        row, front, high = self.row, self.box_front, self.box_top - self.box_low
        rear = float(self.bed["box_rear_room"])
        slide, travel = float(self.bed[f"{row}.slide_closed"]), float(self.bed[f"{row}.travel"])
        at = (self.box_low + share * high for share in (0.85, 0.6, 0.4, 0.15))
        z = next(at)
        yield Measure(f"{row}.box_depth", (front, z), (self.box_back, z), 0.25)
        z = next(at)
        yield Measure("box_rear_room", (self.box_back, z), (self.box_back + rear, z))
        z = next(at)
        yield Measure(f"{row}.travel", (front, z), (front + travel, z), 0.5)
        z = next(at)
        yield Measure(f"{row}.slide_closed", (front, z), (front + slide, z), 0.75)
