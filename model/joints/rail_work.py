"""What stiles and panels cut into the rails of a face frame: alike in both, mirrored."""

from __future__ import annotations

from dataclasses import dataclass

from model.joints.end_joint import EndJoint, in_mate
from model.joints.groove import middle_groove
from model.joints.work import Work, gathered
from model.part import Face, Point
from model.units import Mm, Spans


@dataclass(frozen=True, kw_only=True)
class RailWork:
    """Stiles and panels along a run: where they meet its rails, in mm along the run, and in what
    joint; `shoulders` are those of each stile at its two edges.

    `starts_at` is where the rail's shoulder begins along the run; `added` what its own tenon adds
    before it.
    """

    joint: EndJoint
    stiles: Spans
    shoulders: Spans
    grooves: Spans
    groove_width: Mm
    groove_depth: Mm
    starts_at: Mm

    def on_edge(self, size: Point, edge: Face, added: Mm = 0.0) -> Work:
        """Cuts and holes in one edge of a rail whose cut size is `size`."""
        shift = added - self.starts_at
        stiles = gathered(
            in_mate(
                self.joint, size, edge, along=(a + shift, b + shift), across=(0.0, size[2]),
                lower=lower, upper=upper,
            )
            for (a, b), (lower, upper) in zip(self.stiles, self.shoulders, strict=True)
        )  # fmt: skip
        panels = tuple(
            middle_groove(
                size, edge, width=self.groove_width, depth=self.groove_depth,
                along=(a + shift, b + shift),
            )
            for a, b in self.grooves
        )  # fmt: skip
        return stiles + Work(cuts=panels)
