"""Blocks that hold the fixed fronts of a dummy side. Read for left and right."""

from __future__ import annotations

from model.dimensions.fasteners import Fastener
from model.frame import Frame
from model.joints.pilot import screwed
from model.joints.work import Work, gathered
from model.materials import Material
from model.part import Cut, Face, Hold, Made, Part
from model.parts.drawer_places import standing
from model.rules import rule
from model.units import Mm, Places, ShopGrid

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
def blocks_screwed(
    block_height: Mm,
    dummy_block_width: Mm,
    block_depth: Mm,
    block_lap: Mm,
    block_screw: Fastener,
    grid: ShopGrid,
) -> tuple[Work, ...]:
    """Two screws hold a front's end, each a quarter of the block from an end of it, in the middle
    of what stands in the opening: the near block's, then the far one's.
    """
    size = (float(block_height), float(dummy_block_width), float(block_depth))
    in_from = grid.near((dummy_block_width - block_lap) / 2)
    up = grid.near(block_height / 4)
    return tuple(
        gathered(
            screwed(
                size, Face.FACE, at=(float(x), float(y), size[2]), screw=block_screw.screw,
                length=block_screw.length, into=FRONTS,
            )
            for x in (up, block_height - up)
        )
        for y in (dummy_block_width - in_from, in_from)
    )  # fmt: skip


@rule
def fixed_front_blocks(
    block_places: Places,
    block_far_places: Places,
    box_front_plane: Mm,
    block_bottom: Mm,
    block_height: Mm,
    dummy_block_width: Mm,
    block_depth: Mm,
    blocks_cut: tuple[Cut, ...],
    blocks_screwed: tuple[Work, ...],
    frame: Frame,
    frame_wood: Material,
) -> Made:
    """Blocks in the opening are glued behind the stiles, and the fixed front is screwed to them."""
    made = []
    sides = (
        ("near", block_places, blocks_cut[:1], blocks_screwed[:1]),
        ("far", block_far_places, blocks_cut[1:], blocks_screwed[1:]),
    )
    for name, places, cuts, works in sides if block_places else ():
        work = gathered(works)
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
                holes=work.holes,
                screws=work.screws,
                held=(Hold("stiles", "glued", glued=True),),
            )
        )  # fmt: skip
    return tuple(made)
