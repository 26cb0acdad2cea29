"""The words for what lies between the sides: beam, battens, slats or panels, and the mattress."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.building.along import from_start, start_of
from model.building.record import Step
from model.building.said import OUT_AGAIN, Said, Shop, Texts
from model.building.sequence import Planned
from model.building.words import HAIR, capital
from model.checks.safety.weights import lifters
from model.shop.order.aids import spacers


class Decking:
    """Tells what is laid on the frame."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop

    def beam(self, step: Step, planned: Planned) -> Said:
        """The beam under the middle."""
        shop, words, where = self._shop, self._shop.words, self._shop.where
        mains = [each.unit.main for each in planned.brought]
        start, what = start_of(self._shop, mains, 1)
        return Said(
            title=f"Lay the {words.names(mains)}",
            sentences=(
                shop.reason(mains[0]),
                *(
                    f"Lay {words.called([main])} on edge: upper edge "
                    f"{words.size(where.high(main, 2))} above the floor, "
                    f"{words.size(where.low(main, 1) - start)} from the {what}."
                    for main in mains
                ),
                *shop.driving(step),
            ),
            checks=("A straight edge over both cleats: the beam's top is level with theirs.",),
            keep_dry=(OUT_AGAIN,),
        )

    def battens(self, step: Step, planned: Planned) -> Said:
        """Battens under the joints of panels."""
        mains = [each.unit.main for each in planned.brought]
        return Said(
            title=f"Fix the {self._shop.words.names(mains)}",
            sentences=(
                self._shop.reason(mains[0]),
                f"{capital(from_start(self._shop, mains, 1))}.",
                *self._shop.driving(step),
            ),
            checks=("Their tops are level with the cleats: a straight edge rocks on none.",),
            keep_dry=(OUT_AGAIN,),
        )

    def deck(self, step: Step, planned: Planned) -> Said:
        """Slats or panels."""
        shop, words, where = self._shop, self._shop.words, self._shop.where
        mains = [each.unit.main for each in planned.brought]
        start, what = start_of(self._shop, mains, 1)
        first = min(where.low(main, 1) for main in mains)
        return Said(
            title=f"Lay the {words.names(mains)}",
            sentences=(
                shop.reason(mains[0]),
                f"The first lies {words.size(first - start)} from the {what}; work from there to "
                "the head.",
                *shop.driving(step),
                *self._strap(),
            ),
            settings=tuple(
                f"{capital(each.name)} {words.size(each.size)} wide: {each.use}"
                for each in spacers(shop.bed)
                if each.name == "slat spacer"
            ),
            checks=tuple(self._deck_checks(mains)),
            keep_dry=(OUT_AGAIN,),
        )

    def _deck_checks(self, mains: Sequence[int]) -> Iterator[str]:
        where, words = self._shop.where, self._shop.words
        gaps = {round(gap, 2) for gap in where.gaps(mains, 1) if gap > HAIR}
        if len(gaps) == 1:
            start, _ = start_of(self._shop, mains, 1)
            posts = self._shop.made_by("post_left", "post_right", scope="head")
            end = min(where.low(each, 1) for each in posts)
            first = min(where.low(each, 1) for each in mains) - start
            last = end - max(where.high(each, 1) for each in mains)
            yield (
                f"{len(mains)} {words.names(mains)}, {words.size(gaps.pop())} between each two; "
                f"{words.size(first)} is left at the foot and {words.size(last)} at the head."
            )
        if self._shop.joined.rule(mains[0]) == "slat_pieces":
            room = self._shop.bed["slat_clearance_built"]
            yield f"At each end of a slat {words.size(room)} of room to the side rail."

    def _strap(self) -> Iterator[str]:
        if self._shop.bed["slat_fixing"] == "strap" and self._shop.bed["deck"] == "slats":
            yield (
                "Staple a strap along both ends of the slats, so that they keep their gaps; they "
                "are lifted out as one."
            )

    def _lifted(self, step: Step) -> Texts:
        """A mattress too heavy for two to lift is slid in by them."""
        told = self._shop.lifting(step.shown[:1], "The mattress")
        if lifters(self._shop.kg(step.shown[:1])) > 2:
            return (*told, "Two stand it on its edge and slide it in over the foot of the bed.")
        return told

    def mattress(self, step: Step, planned: Planned) -> Said:
        """The mattress, and the bed in its place."""
        words, bed = self._shop.words, self._shop.bed
        return Said(
            title="Lay on the mattress",
            sentences=(
                *self._lifted(step),
                f"It lies {words.size(bed['recess_built'])} deep between the rails; its top is "
                f"{words.size(bed['sleeping_height'])} above the floor.",
            ),
        )
