"""What joints do to one part: its cuts, holes and screws, gathered joint by joint."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from model.part import Cut, Hole, Screw


@dataclass(frozen=True, kw_only=True)
class Work:
    """Cuts, holes and screws of one part, in its own axes; `one + other` is both."""

    cuts: tuple[Cut, ...] = ()
    holes: tuple[Hole, ...] = ()
    screws: tuple[Screw, ...] = ()

    def __add__(self, other: Work) -> Work:
        return Work(
            cuts=self.cuts + other.cuts,
            holes=self.holes + other.holes,
            screws=self.screws + other.screws,
        )


def gathered(works: Iterable[Work]) -> Work:
    """All of them on one part."""
    return sum(works, Work())
