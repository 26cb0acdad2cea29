"""What wooden runners are made of: runner, kicker and its post. Skids are runners under slides.

Read for left, right and foot.
"""

from __future__ import annotations

from model.dimensions.fasteners import Fastener
from model.frame import Frame
from model.materials import Material
from model.part import Face, Hold, Made, Part
from model.parts.bearer_screwing import screwed_sideways
from model.parts.drawer_places import standing
from model.parts.slides import BEARERS
from model.rules import rule
from model.units import Mm, Places


@rule
def runners(
    runner_places: Places,
    runner_far_places: Places,
    bearer_plane: Mm,
    runner_bottom: Mm,
    runner_length: Mm,
    runner_width: Mm,
    runner_stock: Mm,
    has_skids: bool,
    runner_screw: Fastener,
    runner_screw_places: Places,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """A runner under each box side is glued and screwed to its bearer."""
    made = []
    size = (float(runner_length), float(runner_width), float(runner_stock))
    joint = "glued and screwed" if runner_screw_places else "glued"
    sides = ((runner_places, Face.UPPER), (runner_far_places, Face.LOWER))
    for places, face in sides if runner_places else ():
        work = screwed_sideways(size, face, runner_screw_places, runner_screw)
        made.append(
            Part(
                name="skid" if has_skids else "runner",
                assembly="under the bed",
                length=runner_length,
                width=runner_width,
                thickness=runner_stock,
                lies="vuz",
                at=(places[0], bearer_plane, runner_bottom),
                places=standing(places),
                frame=frame,
                material=bearer_wood.key,
                holes=work.holes,
                screws=work.screws,
                held=(Hold(BEARERS, joint, glued=True),),
            )
        )
    return tuple(made)


@rule
def kickers(
    kicker_places: Places,
    kicker_far_places: Places,
    bearer_plane: Mm,
    kicker_bottom: Mm,
    runner_length: Mm,
    runner_width: Mm,
    kicker_height: Mm,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """A kicker above each box side keeps the open drawer from tipping."""
    if not kicker_places:
        return ()
    return (
        Part(
            name="kicker",
            assembly="under the bed",
            length=runner_length,
            width=runner_width,
            thickness=kicker_height,
            lies="vuz",
            at=(kicker_places[0], bearer_plane, kicker_bottom),
            places=standing(kicker_places, kicker_far_places),
            frame=frame,
            material=bearer_wood.key,
            held=(Hold("kicker_posts", "glued and screwed", glued=True),),
        ),
    )


@rule
def kicker_posts(
    kicker_post_places: Places,
    kicker_post_far_places: Places,
    kicker_post_planes: Places,
    bearer_top: Mm,
    kicker_post_height: Mm,
    bearer_height: Mm,
    bearer_stock: Mm,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """Two posts on the bearer hold each kicker by its edge."""
    if not kicker_post_places:
        return ()
    return (
        Part(
            name="kicker post",
            assembly="under the bed",
            length=kicker_post_height,
            width=bearer_height,
            thickness=bearer_stock,
            lies="zvu",
            at=(kicker_post_places[0], kicker_post_planes[0], bearer_top),
            places=standing(kicker_post_places, kicker_post_far_places, planes=kicker_post_planes),
            frame=frame,
            material=bearer_wood.key,
            held=(Hold(BEARERS, "screwed", knock_down=True),),
        ),
    )
