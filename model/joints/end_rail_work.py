"""What the rails of an end take in their facing edges: stiles, panels, planks, slats."""

from __future__ import annotations

from dataclasses import dataclass

from model.joints.end_joint import EndJoint, in_mate
from model.joints.groove import middle_groove
from model.joints.work import Work, gathered
from model.part import Cut, Face, Point
from model.units import Mm, Places, Spans


@dataclass(frozen=True, kw_only=True)
class EndRailWork:
    """Where things meet the rails, in mm across the bed from its middle.

    `stiles` stand between panels, whose `openings` tell where the rails' grooves may stop;
    `spindles` are where open slats begin. `starts_at` is the rail's left end, its tenon included.
    """

    joint: EndJoint
    stiles: Spans
    openings: Spans
    spindle_joint: EndJoint
    spindles: Places
    spindle_width: Mm
    spindle_shoulder: Mm
    is_grooved: bool
    groove_width: Mm
    groove_depth: Mm
    starts_at: Mm

    def on_edge(self, size: Point, edge: Face) -> Work:
        """Cuts and holes in one edge of a rail whose cut size is `size`."""
        across = (0.0, size[2])
        stiles = gathered(
            in_mate(
                self.joint, size, edge, along=self._on_rail(span), across=across,
                lower=self.groove_depth, upper=self.groove_depth,
            )
            for span in self.stiles
        )  # fmt: skip
        spindles = gathered(
            in_mate(
                self.spindle_joint, size, edge,
                along=self._on_rail((at, at + self.spindle_width)), across=across,
                lower=self.spindle_shoulder, upper=self.spindle_shoulder,
            )
            for at in self.spindles
        )  # fmt: skip
        return stiles + spindles + Work(cuts=self._grooves(size, edge))

    def _grooves(self, size: Point, edge: Face) -> tuple[Cut, ...]:
        """One groove right through; it stops under stiles without tenons, which need the wood."""
        if not self.is_grooved:
            return ()
        width, depth = self.groove_width, self.groove_depth
        spans = [self._on_rail((low - depth, high + depth)) for low, high in self.openings]
        if self.joint.has_tenon or not self.stiles:
            spans = [(0.0, size[0])]
        return tuple(
            middle_groove(
                size, edge, width=width, depth=depth, along=(max(low, 0.0), min(high, size[0]))
            )
            for low, high in spans
        )

    def _on_rail(self, span: tuple[Mm, Mm]) -> tuple[Mm, Mm]:
        return (span[0] - self.starts_at, span[1] - self.starts_at)
