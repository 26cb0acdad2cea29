"""A length on paper with plain stretches left out, so that what is cut is seen at a large scale."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from model.units import Mm, Share

WHOLE: Mm = 62.0  # on paper: what is no longer than this is drawn whole
KEPT: Mm = 9.0  # on paper, beside what is cut
GAP: Mm = 2.0  # on paper, between the two sides of a break
_HAIR: Mm = 1e-4


@dataclass(frozen=True, kw_only=True)
class Broken:
    """Where lengths of a part lie on paper. `kept`: (low, high) of what is drawn, rising, mm."""

    kept: tuple[tuple[Mm, Mm], ...]
    scale: Share

    def at(self, length: Mm) -> Mm:
        """Where a length lies; one that is left out lies in the gap."""
        paper = 0.0
        for low, high in self.kept:
            if length <= high:
                return paper + max((length - low) * self.scale, -GAP / 2)
            paper += (high - low) * self.scale + GAP
        return paper - GAP

    @property
    def whole(self) -> Mm:
        """All of it, on paper."""
        return self.at(self.kept[-1][1])

    @property
    def breaks(self) -> list[Mm]:
        """Where each gap ends, on paper."""
        return [self.at(low) for low, _ in self.kept[1:]]

    def pieces(self, low: Mm, high: Mm) -> Iterator[tuple[Mm, Mm]]:
        """What is kept of a stretch, on paper."""
        for first, last in self.kept:
            if min(last, high) - max(first, low) > _HAIR:
                start = self.at(first)
                yield (
                    start + (max(first, low) - first) * self.scale,
                    start + (min(last, high) - first) * self.scale,
                )

    def holds(self, length: Mm) -> bool:
        """Whether it is drawn."""
        return any(low - _HAIR <= length <= high + _HAIR for low, high in self.kept)


def broken(size: Mm, places: Iterable[Mm], scale: Share, whole: Mm = WHOLE) -> Broken:
    """Keep both ends and what lies near the places; what is no longer than `whole` on paper."""
    if size * scale <= whole:
        return Broken(kept=((0.0, size),), scale=scale)
    return near(size, ((place, place) for place in (0.0, size, *places)), scale)


def near(size: Mm, stretches: Iterable[tuple[Mm, Mm]], scale: Share) -> Broken:
    """Keep only what lies near some stretches."""
    beside = KEPT / scale
    kept: list[tuple[Mm, Mm]] = []
    for first, last in sorted(stretches):
        low, high = max(first - beside, 0.0), min(last + beside, size)
        if kept and low <= kept[-1][1] + beside:
            kept[-1] = (kept[-1][0], max(high, kept[-1][1]))
        else:
            kept.append((low, high))
    return Broken(kept=tuple(kept), scale=scale)


def kinked(wide: Mm) -> tuple[tuple[Mm, Mm], ...]:
    """A break line across something so wide: (along it, aside) of its points."""
    middle, k = wide / 2, min(0.9, wide / 6)
    return (
        (-1.5, 0.0), (middle - k, 0.0), (middle - k / 3, 0.9), (middle + k / 3, -0.9),
        (middle + k, 0.0), (wide + 1.5, 0.0),
    )  # fmt: skip
