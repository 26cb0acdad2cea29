"""What the corner of a drawer box bears when front or back is pushed off its sides."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from model.brief.drawers import BoxJoint
from model.materials import Allowed
from model.mechanics.duration import LoadTime, Product, duration_factor
from model.mechanics.fasteners.glue import design_glue_shear
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral, wood_side
from model.mechanics.fasteners.strengths import Design, DesignStress
from model.solids.screwing import ScrewPoint
from model.units import Count, Mm, Newton

JERK: LoadTime = "ten minutes"  # all jerks of a bed's life together; common practice, no source
# How much of a board's edge holds glue: of plywood the veneers that show long grain, half of them;
# of a board nothing, for its end shows end grain; of fibreboard all, which has no grain.
# Source: first principles; end grain: Wood Handbook 2021, chapter 10, from memory
EDGE_GLUED: dict[Product, float] = {"plywood": 0.5, "fibreboard": 1.0, "solid": 0.0}
CHEEK_GLUED: dict[Product, float] = {"plywood": 0.5, "fibreboard": 1.0, "solid": 1.0}


@dataclass(frozen=True, kw_only=True)
class Corner:
    """One corner: its joint, the sheet, the height that is in the joint, and what holds it.

    `behind` is the side's wood behind a back in a dado (0 elsewhere), `cheeks` how many faces of
    dovetails meet, `screws` the pocket screws of one end of front or back.
    """

    joint: BoxJoint
    sheet: Allowed
    thickness: Mm
    height: Mm
    behind: Mm = 0.0
    cheeks: Count = 0
    screws: tuple[ScrewPoint, ...] = ()

    def holds(self) -> tuple[Newton, str]:
        """What the corner bears, and what by. Where several things hold it, the strongest counts:
        glue is too stiff to share with screws, and wood behind a back is met when glue has failed.
        """
        each = (
            (self._glue(), f"the glue of its {self.joint}{' joint' * (self.joint == 'butt')}"),
            (self._wall(), "the wood behind its dado"),
            (self._screws(), "its pocket screws"),
        )
        return max(each, key=lambda pair: pair[0])

    def _glue(self) -> Newton:
        cheeks = self.joint == "dovetail"
        share = (CHEEK_GLUED if cheeks else EDGE_GLUED)[self.sheet.product]
        if not share or self.height <= 0:
            return 0.0
        face = self.cheeks * self.thickness if cheeks else self.height
        return self._lasting * design_glue_shear(
            DesignStress(self.sheet.shear_mpa), share * face * self.thickness
        )

    def _wall(self) -> Newton:
        """The side's wood behind a dado shears off along its grain."""
        if not self.behind:
            return 0.0
        return self._lasting * self.sheet.shear_mpa * self.behind * self.height / 1.5

    def _screws(self) -> Newton:
        return duration_factor(JERK, "solid") * sum(self._screw(each) for each in self.screws)

    def _screw(self, point: ScrewPoint) -> Design:
        """Through the end of one board into the face of another: the head's side is end grain."""
        gravity, screw = self.sheet.specific_gravity, point.screw
        if point.bite <= screw.diameter:
            return Design(0.0)
        joint = ScrewJoint(
            shank=screw.diameter, side=screw.length - point.bite, side_bearing=wood_side(gravity),
            main_gravity=gravity, bite=point.bite,
        )  # fmt: skip
        return design_screw_lateral(joint, in_end_grain=True)

    @property
    def _lasting(self) -> float:
        return self.sheet.lasting(JERK)


def pocket_screws(points: Iterable[ScrewPoint], rule: str) -> tuple[ScrewPoint, ...]:
    """The pocket screws at one end of the part that a rule makes: those into the near side."""
    return tuple(
        point for point in points
        if point.rules[0] == rule and point.screw.kind == "pocket screw"
        and point.screw.into.endswith("near_sides") and point.into >= 0
    )  # fmt: skip
