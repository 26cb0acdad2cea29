"""Blocks that hold the fixed fronts of a dummy side. Read for left and right."""

from __future__ import annotations

from model.dimensions.fasteners import Fastener
from model.frame import Frame
from model.materials import Material
from model.part import Cut, Face, Hold, Made, Part, Screw
from model.parts.drawer_places import standing
from model.rules import rule
from model.units import Mm, Places

FRONTS = "front_slabs|front_stiles|front_rails"


@rule
def blocks_cut(
    block_height: Mm, block_lap: Mm, block_rabbet: Mm, dummy_block_width: Mm
) -> tuple[Cut, ...]:
    """A block is rabbeted where it laps behind its stile: the near one, then the far one."""
    if not block_rabbet:
        return ()
    high = (float(block_height), float(dummy_block_width), float(block_rabbet))
    near = Cut("rabbet", Face.LOWER, (0.0, 0.0, 0.0), (high[0], float(block_lap), high[2]))
    far = Cut("rabbet", Face.UPPER, (0.0, float(dummy_block_width - block_lap), 0.0), high)
    return (near, far)


@rule
def fixed_front_blocks(
    block_places: Places,
    block_far_places: Places,
    box_front_plane: Mm,
    block_bottom: Mm,
    block_height: Mm,
    dummy_block_width: Mm,
    block_depth: Mm,
    block_lap: Mm,
    blocks_cut: tuple[Cut, ...],
    block_screw: Fastener,
    frame: Frame,
    frame_wood: Material,
) -> Made:
    """Blocks in the opening are glued behind the stiles, and the fixed front is screwed to them."""
    made = []
    middle = (dummy_block_width - block_lap) / 2
    sides = (
        ("near", block_places, blocks_cut[:1], block_lap + middle),
        ("far", block_far_places, blocks_cut[1:], middle),
    )
    for name, places, cuts, across in sides if block_places else ():
        made.append(
            Part(
                name=f"front block, {name}",
                assembly="fronts",
                length=block_height,
                width=dummy_block_width,
                thickness=block_depth,
                lies="zuv",
                at=(places[0], box_front_plane, block_bottom),
                places=standing(places),
                frame=frame,
                material=frame_wood.key,
                cuts=cuts,
                screws=tuple(
                    Screw(
                        f"wood screw {block_screw.screw.key}",
                        (block_height * share, across, float(block_depth)), (0.0, 0.0, -1.0),
                        block_screw.length, block_screw.screw.shank_mm, FRONTS,
                    )
                    for share in (0.25, 0.75)
                ),
                held=(Hold("stiles", "glued", glued=True),),
            )
        )  # fmt: skip
    return tuple(made)
