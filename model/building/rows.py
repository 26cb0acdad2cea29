"""Rows of members along what they are joined to: where each stands, and the spacer between them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.building.joints import FRAMED
from model.building.record import Step
from model.building.said import Shop
from model.building.words import HAIR, capital, plural


class Rows:
    """Where the members of a glue-up stand along each other."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop

    def places(self, step: Step) -> Iterator[str]:
        """Stiles along a rail, rails along a post; what alike hosts have alike is told once."""
        shop, words = self._shop, self._shop.words
        told: set[str] = set()
        for host, own in self._rows(step):
            axis = shop.where.long_axis(host)
            run = shop.where.run(own, host, axis)
            name = plural(words.name(own[0]), len(own)) if len(self._names(own)) == 1 else "Places"
            sentence = f"{capital(name)} {run}."
            key = f"{words.marks(own)} {words.name(host)}"
            if key not in told:
                told.add(key)
                yield sentence
                yield from self._spacer(own, axis)

    def _rows(self, step: Step) -> Iterator[tuple[int, list[int]]]:
        """Each host with the members that stand along it and are joined to it in this step.

        Only where one holds the other: members that hold each other find their place by the joint.
        """
        shop = self._shop
        wood = set(shop.wood((*step.there, *step.shown)))
        new = wood & set(step.shown)
        rows: dict[int, list[int]] = {}
        held = {(link.one, link.other) for link in shop.joined.links if link.joint in FRAMED}
        for one, other in sorted(held):
            ends = {one, other}
            if ends <= wood and ends & new and (other, one) not in held:
                rows.setdefault(other, []).append(one)
        seen: set[tuple[int, ...]] = set()
        for host in sorted(rows, key=lambda each: (shop.where.low(each, 2), each)):
            row = tuple(rows[host])
            is_across = shop.where.long_axis(host) != shop.where.long_axis(row[0])
            if row not in seen and is_across:
                seen.add(row)
                yield host, list(row)

    def _spacer(self, own: Sequence[int], axis: int) -> Iterator[str]:
        """The clear room between neighbours, where it is the same for all."""
        words = self._shop.words
        gaps = self._shop.where.gaps(own, axis)
        if gaps and len({round(gap, 2) for gap in gaps}) == 1 and gaps[0] > HAIR:
            between = f"between {words.marks(own)}" if len(self._names(own)) > 1 else "between them"
            yield (
                f"Spacer {words.size(gaps[0])} long: it stands {between} while they are clamped, "
                "and keeps them parallel."
            )

    def _names(self, own: Sequence[int]) -> set[str]:
        return {self._shop.words.name(piece) for piece in own}
