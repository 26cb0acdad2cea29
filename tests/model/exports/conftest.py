"""A bed of four kinds of parts whose sizes and volumes can be reckoned by hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from types import SimpleNamespace
from typing import Any

import pytest

from model.bed import Design
from model.checks.record import Finding, Verdict
from model.frame import side_frame_at
from model.materials import Material, materials
from model.part import Cut, Face, Hole, Part, Place
from model.parts.marks import HardwareCount, Mark, hardware_counts, marks
from model.parts.pieces import Pieces
from model.rules import Dim

FINDINGS = (
    Finding(
        id="left.box_runs_free", group="fit", title="Box runs free", value=2.0, limit=2.5,
        margin=-0.5, verdict=Verdict.FAILS, reason="A pinched box binds.", source="a handbook",
        place="left",
    ),
    Finding(
        id="slat_bends", group="strength", title="Slat bends", value=31.25, limit=70.0, unit="MPa",
        margin=float("inf"), verdict=Verdict.HOLDS, reason="A slat carries a sleeper.",
    ),
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class SmallBed:
    """What the exports see of a bed."""

    parts: Mapping[str, tuple[Part, ...]]
    design: Design = field(default_factory=Design)
    findings: tuple[Finding, ...] = FINDINGS
    values: Mapping[str, Any] = field(default_factory=dict)

    @property
    def pieces(self) -> Pieces:
        return Pieces.of(self.parts)

    @property
    def marks(self) -> tuple[Mark, ...]:
        return marks(self.parts, self.pieces)

    @property
    def materials(self) -> Mapping[str, Material]:
        return materials(self.design.own)

    @property
    def hardware(self) -> tuple[HardwareCount, ...]:
        return hardware_counts(self.parts, self.pieces)

    @property
    def dimensions(self) -> Any:
        return SimpleNamespace(values=self.values)

    def __getitem__(self, name: str) -> Any:
        return self.values[name] if name in self.values else self.design.value(name)


def _rail(assembly: str, frame: Any) -> Part:
    """A rail with a stopped groove in its back: handed, so left and right are two marks."""
    groove = Cut("groove", Face.BACK, (10.0, 20.0, 0.0), (150.0, 26.0, 8.0))
    return Part(
        name="side rail", assembly=assembly, length=Dim(2000.0, "left.rail_length"),
        width=Dim(150.0, "rail_width"), thickness=Dim(25.0, "frame_thickness"), lies="uzv",
        at=(0.0, 0.0, 200.0), frame=frame, material="yellow_poplar", cuts=(groove,),
    )  # fmt: skip


def small_parts() -> dict[str, tuple[Part, ...]]:
    """Two rails, four laminated posts, one drawer of a box side and a slide."""
    left, right = side_frame_at(-800.0, 1), side_frame_at(800.0, -1)
    post = Part(
        name="post", assembly="headboard", length=Dim(600.0, "post_length"),
        width=Dim(70.0, "post_width"), thickness=Dim(60.0, "post_along"), lies="zuv",
        at=(-835.0, 0.0, 0.0), material="yellow_poplar", layers=3,
        layer_thickness=Dim(20.0, "frame_thickness"),
        places=(Place(), Place(u=1600.0)),
        holes=(Hole("bolt", Face.FACE, (300.0, 35.0, 60.0), (0.0, 0.0, -1.0), 8.0, 60.0),),
    )  # fmt: skip
    box_side = Part(
        name="box side", assembly="drawers", length=Dim(500.0, "left.box_depth"),
        width=Dim(120.0, "left.box_height"), thickness=Dim(12.0, "box_thickness"), lies="vzu",
        at=(600.0, 100.0, 60.0), frame=left, material="birch_ply_12", row="left",
        places=(Place(drawer=1), Place(u=400.0, drawer=1)),
    )  # fmt: skip
    slide = Part(
        name="slide", assembly="drawers", length=Dim(450.0, "left.slide_length"),
        width=Dim(45.0, "slide_height"), thickness=Dim(12.7, "slide_thickness"), lies="vzu",
        at=(587.3, 100.0, 90.0), frame=left, material="", hardware="slide-450", row="left",
        places=(Place(drawer=1),),
    )  # fmt: skip
    return {
        "head.posts": (post,),
        "left.side_rail": (_rail("left side", left),),
        "right.side_rail": (_rail("right side", right),),
        "left.box_side": (box_side,),
        "left.slide": (slide,),
    }


VALUES = {
    "deck_top": 360.0, "mattress_high": 250.0, "mattress_across": 1500.0,
    "mattress_along": 1950.0, "mattress_foot_y": 25.0, "left.travel": 450.0, "slat_spacer": 62.0,
}  # fmt: skip


@pytest.fixture
def small_bed() -> Any:
    return SmallBed(parts=small_parts(), values=VALUES)


@pytest.fixture
def bed_with() -> Callable[..., Any]:
    """The same bed with another design, or with parts of a rule replaced."""

    def changed(design: Design | None = None, **parts: tuple[Part, ...]) -> Any:
        named = {name.replace("_", ".", 1): made for name, made in parts.items()}
        whole = small_parts() | named
        return SmallBed(parts=whole, values=VALUES, design=design or Design())

    return changed


@pytest.fixture
def bed_named() -> Callable[[str], Any]:
    """The same bed under a name, and with parts of a name, that somebody else chose."""

    def named(text: str) -> Any:
        parts = {
            rule: tuple(replace(part, name=text) for part in made)
            for rule, made in small_parts().items()
        }
        return SmallBed(parts=parts, values=VALUES, design=Design(name=text))

    return named
