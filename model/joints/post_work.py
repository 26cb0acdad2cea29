"""What a post takes from its end: the rails' joints and the groove for panels or planks."""

from __future__ import annotations

from dataclasses import dataclass

from model.joints.end_joint import EndJoint, in_mate
from model.joints.groove import groove, middle
from model.joints.work import Work, gathered
from model.part import Face, Point
from model.units import Mm, Spans

Meeting = tuple[Mm, Mm, Mm, Mm]  # lower and upper edge above the floor, lower and upper shoulder


@dataclass(frozen=True, kw_only=True)
class PostWork:
    """Heights above the floor of all that meets a post; `starts_at` is the post's own lower end.

    `across` is where rails meet the post's depth, from its outer face.
    """

    joint: EndJoint
    meetings: tuple[Meeting, ...]
    across: tuple[Mm, Mm]
    grooves: Spans
    groove_width: Mm
    groove_depth: Mm
    starts_at: Mm

    def on_edge(self, size: Point, edge: Face) -> Work:
        """Cuts and holes in the edge that looks at the other post."""
        rails = gathered(
            in_mate(
                self.joint, size, edge, along=(low - self.starts_at, high - self.starts_at),
                across=self.across, lower=lower, upper=upper,
            )
            for low, high, lower, upper in self.meetings
        )  # fmt: skip
        inside = middle(self.across[1] - self.across[0], self.groove_width)
        walls = (self.across[0] + inside[0], self.across[0] + inside[1])
        grooves = tuple(
            groove(
                size, edge, between=walls, depth=self.groove_depth,
                along=(low - self.starts_at, high - self.starts_at),
            )
            for low, high in self.grooves
        )  # fmt: skip
        return rails + Work(cuts=grooves)
