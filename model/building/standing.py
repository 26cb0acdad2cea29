"""The words of the final assembly: what is stood up, hooked in, laid down, hung and closed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from model.building.along import from_start
from model.building.brackets import bracket_places
from model.building.decking import Decking
from model.building.hanging import Hanging
from model.building.record import Step
from model.building.said import OUT_AGAIN, Said, Shop
from model.building.sequence import Planned
from model.building.sides import Sides
from model.building.words import capital
from model.shop.order import say
from model.units import Mm


class Standing:
    """Tells the final assembly."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop
        hanging, decking, sides = Hanging(shop), Decking(shop), Sides(shop)
        self._tell: Mapping[str, Callable[[Step, Planned], Said]] = {
            "headboard": self._headboard,
            "first side": sides.side,
            "footboard": sides.footboard,
            "second side": sides.side,
            "divider": self._put_in,
            "bearer": self._put_in,
            "under the bed": self._put_in,
            "beam": decking.beam,
            "drawer": hanging.drawers,
            "stop": hanging.stops,
            "front": hanging.fronts,
            "pull": hanging.fronts,
            "batten": decking.battens,
            "deck": decking.deck,
            "mattress": decking.mattress,
        }

    def tell(self, step: Step, planned: Planned) -> Said:
        """The words for what is brought in a step."""
        said = self._tell[planned.role](step, planned)
        return said._replace(sentences=(*said.sentences, *self._turned_in(planned)))

    def _headboard(self, step: Step, planned: Planned) -> Said:
        return Said(
            title="Stand the headboard",
            sentences=(
                "Bring all assemblies to the room and lay a blanket on the floor: the bed is put "
                "together where it will stand.",
                *self._shop.lifting(step.brought or step.shown, "The headboard"),
                "Stand it a step away from the wall, and let a helper hold it.",
            ),
        )

    # ------------------------------------------------------------ under the bed

    def _put_in(self, step: Step, planned: Planned) -> Said:
        shop = self._shop
        mains = [each.unit.main for each in planned.brought]
        return Said(
            title=f"Fix the {shop.words.names(mains)}",
            sentences=(
                *dict.fromkeys(shop.reason(main) for main in mains),
                *self._rows(mains),
                *self._faced(planned),
                *self._loose(step),
                *shop.driving(step),
            ),
            checks=tuple(self._bearer_checks(mains)) if planned.role == "bearer" else (),
            keep_dry=(OUT_AGAIN,),
        )

    def _faced(self, planned: Planned) -> Iterator[str]:
        """Bearers with something on them are not alike at both faces."""
        pieces = self._shop.joined.pieces
        on = {
            self._shop.words.name(piece)
            for piece in planned.first.pieces
            if pieces.parts[pieces.part[piece]].name.startswith(("slide,", "skid", "runner"))
        }
        if planned.role == "bearer" and on:
            yield "Turn each so that what is fixed to it looks at the drawer that it carries."

    def _loose(self, step: Step) -> Iterator[str]:
        """What brackets and other fittings do that come in this step."""
        new = [piece for copy in step.copies for piece in copy]
        bought = [piece for piece in new if not self._shop.joined.is_wood(piece)]
        yield from list(dict.fromkeys(self._shop.reason(piece) for piece in bought))[:1]
        yield from bracket_places(self._shop, step)

    def _rows(self, mains: Sequence[int]) -> Iterator[str]:
        """How high things stand, and where in a row: from the foot, or from the left."""
        where, words = self._shop.where, self._shop.words
        rows: dict[tuple[int, Mm, str], list[int]] = {}
        for piece in mains:
            axis = 1 if where.long_axis(piece) == 0 else 0
            key = (axis, round(where.low(piece, 2), 2), words.name(piece))
            rows.setdefault(key, []).append(piece)
        for (axis, low, name), own in rows.items():
            yield (
                f"{capital(name)}: lower edge {words.size(low)} above the floor; "
                f"{from_start(self._shop, own, axis)}."
            )

    def _bearer_checks(self, mains: Sequence[int]) -> Iterator[str]:
        """The clear room between the two bearers of a drawer, where slides hang on them."""
        words, known = self._shop.words, self._shop.bed.dimensions.values
        if known.get("is_side_mount"):
            rows = dict.fromkeys(
                self._shop.joined.pieces.made_by(main)[0].partition(".")[0] for main in mains
            )
            widths = dict.fromkeys(words.size(known[f"{row}.opening_width"]) for row in rows)
            yield (
                f"Between the two bearers of a drawer: {say.listed(list(widths), 'or')}, in front "
                "and behind alike. A spacer of this length sets them."
            )
        yield "Each stands square to its side, and upright."

    # ------------------------------------------------------------ what is common

    def _turned_in(self, planned: Planned) -> Iterator[str]:
        if any(each.way is None for each in planned.brought):
            yield (
                "It has no straight way in: tilt it, put one end in its place first, and let the "
                "other down."
            )
