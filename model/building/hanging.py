"""The words for drawers where the bed stands: hung, stopped, fronted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from model.building.record import Step
from model.building.said import Said, Shop
from model.building.sequence import Planned
from model.building.words import HAIR, capital
from model.dimensions.pulls import DRIVER_ROOM
from model.shop.order import say
from model.units import Mm

_LONG_BITS = {"inch": '6"', "mm": "150 mm"}  # common practice, no source


def long_bit(unit: str) -> str:
    """The bit that reaches screws where no chuck gets in."""
    return f"driver bit {_LONG_BITS[unit]} long or more"


def front_places(shop: Shop, row: str, fronts: Sequence[int]) -> str:
    """How the fronts of a row stand: their heights above the floor, and to their openings."""
    words = shop.words
    low = min(shop.where.low(piece, 2) for piece in fronts)
    high = max(shop.where.high(piece, 2) for piece in fronts)
    return (
        f"lower edge {words.size(low)} above the floor the bed stands on, upper edge "
        f"{words.size(high)}, {_beside(shop, row)}"
    )


def fixed_front_places(shop: Shop, row: str, fronts: Sequence[int], placed: Sequence[int]) -> str:
    """How fixed fronts stand to the rails of the side that lies on the bench, and to openings."""
    where, words = shop.where, shop.words
    rails = [
        piece for piece in shop.wood(placed)
        if "rail" in words.name(piece) and where.long_axis(piece) != 2
    ]  # fmt: skip
    rails.sort(key=lambda piece: where.low(piece, 2))
    low, high = where.low(fronts[0], 2), where.high(fronts[0], 2)
    told = []
    for rail in rails:
        faces, mark = where.own_sides(rail)[2], words.marks([rail])
        if where.high(rail, 2) < (low + high) / 2:
            off = low - where.high(rail, 2)
            told.append(f"lower edge {_off(shop, off)} the {faces[1]} of {mark}")
        elif where.low(rail, 2) > (low + high) / 2:
            off = high - where.low(rail, 2)
            told.append(f"upper edge {_off(shop, off)} the {faces[0]} of {mark}")
    return ", ".join([*told, _beside(shop, row)])


def _off(shop: Shop, off: Mm) -> str:
    """How far an edge is above (or below) another."""
    if abs(off) <= HAIR:
        return "flush with"
    return f"{shop.words.size(abs(off))} {'above' if off > 0 else 'below'}"


def _beside(shop: Shop, row: str) -> str:
    """How the fronts of a row stand to the sides of their openings."""
    words, known = shop.words, shop.bed.dimensions.values
    room = (float(known[f"{row}.opening_width"]) - float(known[f"{row}.front_width"])) / 2
    if room < -HAIR:
        return f"lapping the frame by {words.size(-room)} at each side of the opening"
    return f"a gap of {words.size(room)} at each side of the opening"


_PACKER_SIDES = ("thickness", "width", "length")


class Hanging:
    """Tells how drawers are hung."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop

    def drawers(self, step: Step, planned: Planned) -> Said:
        """Boxes on their slides or runners."""
        return Said(
            title="Hang the drawers",
            sentences=(
                "Drawers are hung while the deck is open: all can be reached from above.",
                *self._which(step, planned),
                *self._shop.driving(step),
                *self._how(),
            ),
            checks=tuple(self._checks(planned)),
        )

    def _how(self) -> Iterator[str]:
        known = self._shop.bed.dimensions.values
        if known.get("is_side_mount"):
            yield (
                "Pull the outer members of the slides out, start both inner members in them at "
                "once, and push the box home. Both sides run alike, or a slide lies out of level."
            )
        else:
            yield "Rub what slides with paraffin wax, and push each box home."
        if known.get("has_skids"):
            yield "Behind the slides the box rests on its skids: both touch."

    def _checks(self, planned: Planned) -> Iterator[str]:
        words, bed = self._shop.words, self._shop.bed
        for row in self._rows(planned):
            opening, box = bed[f"{row}.opening_width"], bed[f"{row}.box_width"]
            height, high = bed["opening_height"], bed["box_height"]
            yield (
                f"{capital(row)} row: opening {words.size(opening)} wide and {words.size(height)} "
                f"high, box {words.size(box)} wide and {words.size(high)} high: "
                f"{words.size((opening - box) / 2)} of room at each side. Do not force a box that "
                f"binds: {self._eased()}."
            )

    def _eased(self) -> str:
        if self._shop.bed.dimensions.values.get("is_side_mount"):
            return "pack its slide, or set it anew"
        return "plane what rubs, and wax it"

    def stops(self, step: Step, planned: Planned) -> Said:
        """Stops that are screwed on when the box is in."""
        return Said(
            title="Screw on the drawer stops",
            sentences=(
                self._shop.reason(planned.brought[0].unit.main),
                *self._shop.driving(step),
            ),
            checks=("Pull every drawer against its stop, gently, then harder.",),
        )

    def fronts(self, step: Step, planned: Planned) -> Said:
        """Fronts that are set to even gaps, and their pulls."""
        return Said(
            title="Set the drawer fronts",
            sentences=(
                *self._packers(planned),
                *self._which(step, planned),
                *self._held(planned),
                "The holes in the box are wider than the screws: loosen them, move the front until "
                "all gaps are even, and drive them tight. Then put on the pulls.",
                *self._shop.driving(step),
            ),
            settings=tuple(self._gaps(planned)),
            checks=(
                "Close all drawers and look along each row: gaps even, fronts in one plane.",
                "Open and close each once more: no front rubs.",
            ),
        )

    def _held(self, planned: Planned) -> Iterator[str]:
        """How a front is held and screwed; low screws are bored for with the front off."""
        hold = (
            "Shim each front to its gaps with strips of card, hold it to the box with clamps or "
            "double-sided tape"
        )
        low = self._above_bottom(planned)
        if low >= DRIVER_ROOM:
            yield f"{hold}, and drive the screws from inside the box."
            return
        yield (
            f"{hold}, and mark its pilot holes through the holes of the box. Take it off, bore "
            "them on the bench, and hold it to its gaps again."
        )
        words = self._shop.words
        yield (
            f"Drive the screws from inside the box, the lower ones with a {long_bit(words.unit)}: "
            f"they stand only {words.size(low)} above the bottom, where no chuck gets in."
        )

    def _above_bottom(self, planned: Planned) -> Mm:
        """How far the lowest screws of the fronts are above the bottoms of their drawers."""
        known = self._shop.bed.dimensions.values
        heights = [min(known[f"{row}.front_screw_heights"]) for row in self._rows(planned)]
        return float(min(heights) - known["box_floor"])

    def _which(self, step: Step, planned: Planned) -> Iterator[str]:
        """Which of several kinds goes where in each row; nothing where any fits anywhere."""
        shop = self._shop
        own: dict[str, list[int]] = {}
        for piece in shop.wood((*step.shown, *step.brought)):
            own.setdefault(shop.joined.group(piece), []).append(piece)
        kinds = {
            group: tuple(dict.fromkeys(shop.words.marks([piece]) for piece in pieces))
            for group, pieces in own.items()
        }
        if len(set(kinds.values())) == 1:
            return
        for row, mains in self._rows(planned).items():
            axis = 0 if row == "foot" else 1
            mains = sorted(mains, key=lambda each: shop.where.low(each, axis))
            told = [_known_by(kinds[shop.joined.group(main)], kinds.values()) for main in mains]
            if len(set(told)) == 1:
                yield f"{capital(row)} row: {'those' if len(told) > 1 else 'that'} with {told[0]}."
            else:
                start = "left" if row == "foot" else "foot"
                rest = ", ".join(f"that with {each}" for each in told)
                yield f"{capital(row)} row, from the {start}: {rest}."

    def _packers(self, planned: Planned) -> Iterator[str]:
        """What fills the air between a panel and the box front where the pulls' screws clamp."""
        words, bed = self._shop.words, self._shop.bed
        known = bed.dimensions.values
        sizes = {
            tuple(float(known[f"{row}.pull_packer_{side}"]) for side in _PACKER_SIDES)
            for row in self._rows(planned)
        }
        for thick, wide, long in sorted(sizes):
            if thick:
                yield (
                    f"First glue a packer of scrap {words.size(thick)} thick, {words.near(wide)} x "
                    f"{words.near(long)}, to the back of the panel behind each pull, flush with "
                    "the back of the front's frame, and bore it through the holes in the panel: "
                    "without it the pull's screws would bend the panel over the air behind it."
                )

    def _gaps(self, planned: Planned) -> Iterator[str]:
        joined = self._shop.joined
        for row in self._rows(planned):
            own = [
                piece
                for piece in range(len(joined.pieces))
                if joined.group(piece).partition("-")[0] == row
                and joined.part(piece).assembly == "fronts"
                and joined.is_wood(piece)
            ]
            yield f"{capital(row)} row: {front_places(self._shop, row, own)}."

    def _rows(self, planned: Planned) -> dict[str, Sequence[int]]:
        """The mains that are brought, row by row."""
        rows: dict[str, list[int]] = {}
        for each in planned.brought:
            row = self._shop.joined.group(each.unit.main).partition("-")[0]
            rows.setdefault(row, []).append(each.unit.main)
        return dict(rows)


def _known_by(own: tuple[str, ...], all_kinds: Iterable[tuple[str, ...]]) -> str:
    """The mark that no other kind has; all marks where each of them is elsewhere too."""
    others = {mark for kind in all_kinds if kind != own for mark in kind}
    return next((mark for mark in own if mark not in others), say.listed(own))
