"""A small bed that holds: posts, tenoned rails, cleats, slats, a panel in grooves, drawers.

Made by hand, so that proofs are tested on known joints and not on the bed's own rules. x runs
-700 to 700, y 0 to 2000. Each side is laid out in its own frame; the right one is a mirror image.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from model.frame import BED, Frame, side_frame_at
from model.part import Cut, Face, Hold, Hole, Part, Place, Screw

Parts = dict[str, tuple[Part, ...]]

FRAMES = {"left": side_frame_at(-700.0, 1), "right": side_frame_at(700.0, -1)}
PITCH_ROOM = 1860.0
BOX_DEPTH = 560.0


def cut(low: tuple[float, float, float], high: tuple[float, float, float]) -> Cut:
    return Cut("cut", Face.FACE, low, high)


def part(name: str, size: tuple[float, float, float], **more: Any) -> Part:
    given: dict[str, Any] = {
        "assembly": "deck",
        "lies": "uvz",
        "at": (0.0, 0.0, 0.0),
        "material": "pine",
        **more,
    }
    return Part(name=name, length=size[0], width=size[1], thickness=size[2], **given)


def small_bed(drawers: int = 2, slats: int = 12) -> Parts:
    """A bed with as many drawers on each side, filed by rule."""
    bed: Parts = {}
    for scope, frame in FRAMES.items():
        bed |= {f"{scope}.{name}": made for name, made in _side(scope, frame, drawers).items()}
    bed["slats"] = (_slats(slats),)
    bed["panel"] = (
        part(
            "panel",
            (1276.0, 138.0, 12.0),
            assembly="headboard",
            lies="uzv",
            at=(-638.0, 1959.0, 421.0),
            held=(Hold("left_posts", "groove"), Hold("right_posts", "groove")),
        ),
    )
    return bed


def travel(drawers: int = 2) -> dict[str, tuple[tuple[float, float, float], float]]:
    ways = {"left": (-1.0, 0.0, 0.0), "right": (1.0, 0.0, 0.0)}
    return {f"{s}-{n}": (way, 500.0) for s, way in ways.items() for n in range(1, drawers + 1)}


def changed(bed: Parts, rule: str, index: int = 0, **changes: Any) -> Parts:
    """The same bed with one part changed."""
    made = list(bed[rule])
    made[index] = replace(made[index], **changes)
    return {**bed, rule: tuple(made)}


def _slats(count: int) -> Part:
    step = (1840.0 - 80.0) / (count - 1)
    return part(
        "slat",
        (1300.0, 80.0, 20.0),
        at=(-650.0, 80.0, 380.0),
        places=tuple(Place(v=k * step) for k in range(count)),
        held=(Hold("left_cleats", "rests"), Hold("right_cleats", "rests")),
        frame=BED,
    )


def _side(scope: str, frame: Frame, drawers: int) -> Parts:
    side = {"frame": frame, "assembly": f"{scope} side"}
    return {
        "posts": _posts(scope, frame),
        "rail": (_rail(side),),
        "dowels": (_dowels(side),),
        "cleats": (_cleat(side),),
        **_drawers(scope, frame, drawers),
    }


def _posts(scope: str, frame: Frame) -> tuple[Part, ...]:
    given: dict[str, Any] = {"lies": "zuv", "frame": frame, "held": (Hold("floor", "stands"),)}
    drill = Hole("dowel", Face.FACE, (350.0, 62.5, 70.0), (0.0, 0.0, -1.0), 8.0, 60.0)
    foot = part(
        "foot post",
        (600.0, 70.0, 70.0),
        assembly="footboard",
        cuts=(cut((300.0, 55.0, 20.0), (400.0, 70.0, 45.0)),),
        holes=(drill,),
        **given,
    )
    mortise = cut((300.0, 0.0, 20.0), (400.0, 15.0, 45.0))
    groove = cut((420.0, 29.0, 60.0), (560.0, 41.0, 70.0))
    head = part(
        "head post",
        (600.0, 70.0, 70.0),
        assembly="headboard",
        at=(1930.0, 0.0, 0.0),
        cuts=(mortise, groove),
        holes=(drill._replace(at=(350.0, 7.5, 70.0)),),
        **given,
    )
    return foot, head


def _rail(side: dict[str, Any]) -> Part:
    shoulders = tuple(
        cut((x, w, 0.0), (x + 15.0, w + 20.0, 25.0)) for x in (0.0, 1875.0) for w in (0.0, 120.0)
    )
    drills = tuple(
        Hole("dowel", Face.FACE, (x, 70.0, 25.0), (0.0, 0.0, -1.0), 8.0, 25.0)
        for x in (7.5, 1882.5)
    )
    return part(
        "rail",
        (1890.0, 140.0, 25.0),
        lies="uzv",
        at=(55.0, 20.0, 280.0),
        cuts=shoulders,
        holes=drills,
        held=(Hold("posts", "tenon"),),
        **side,
    )


def _dowels(side: dict[str, Any]) -> Part:
    return part(
        "dowel",
        (50.0, 8.0, 8.0),
        lies="vuz",
        at=(58.5, 10.0, 346.0),
        places=(Place(), Place(u=1875.0)),
        is_round=True,
        hardware="dowel",
        held=(Hold("posts", "dowel"), Hold("rail", "dowel")),
        **side,
    )


def _cleat(side: dict[str, Any]) -> Part:
    screws = tuple(
        Screw("wood screw", (x, 20.0, 25.0), (0.0, 0.0, -1.0), 45.0, 4.0, "rail")
        for x in (50.0, 900.0)
    )
    return part(
        "cleat",
        (1840.0, 40.0, 25.0),
        lies="uzv",
        at=(80.0, 45.0, 340.0),
        held=(Hold("rail", "screwed"),),
        screws=screws,
        **side,
    )


def _drawers(scope: str, frame: Frame, count: int) -> Parts:
    pitch = PITCH_ROOM / count
    width = pitch - 30.0
    first = 70.0 + 15.0
    rows = tuple(Place(u=k * pitch, drawer=k + 1) for k in range(count))
    box: dict[str, Any] = {"frame": frame, "assembly": "drawers", "places": rows, "row": scope}

    def side(name: str, u: float, inner: tuple[float, float]) -> Part:
        groove = cut((0.0, 10.0, inner[0]), (BOX_DEPTH, 16.0, inner[1]))
        return part(
            name,
            (BOX_DEPTH, 150.0, 12.0),
            lies="vzu",
            at=(u, 25.0, 20.0),
            cuts=(groove,),
            held=(Hold("bearers", "rests"),),
            **box,
        )

    def across(v: float, inner: tuple[float, float]) -> Part:
        groove = cut((0.0, 10.0, inner[0]), (width - 24.0, 16.0, inner[1]))
        return part(
            "box end",
            (width - 24.0, 150.0, 12.0),
            lies="uzv",
            at=(first + 12.0, v, 20.0),
            cuts=(groove,),
            held=(Hold("box_sides", "screwed"),),
            **box,
        )

    bearers = tuple(Place(u=k * pitch + d) for k in range(count) for d in (0.0, width - 40.0))
    return {
        "bearers": (
            part(
                "bearer",
                (600.0, 40.0, 20.0),
                lies="vuz",
                at=(first, 25.0, 0.0),
                places=bearers,
                frame=frame,
                assembly="under the bed",
                held=(Hold("floor", "rests"),),
            ),
        ),
        "box_sides": (
            side("box side", first, (6.0, 12.0)),
            side("box side", first + width - 12.0, (0.0, 6.0)),
        ),
        "box_ends": (across(25.0, (6.0, 12.0)), across(25.0 + BOX_DEPTH - 12.0, (0.0, 6.0))),
        "box_bottoms": (
            part(
                "box bottom",
                (BOX_DEPTH - 14.0, width - 14.0, 6.0),
                lies="vuz",
                at=(first + 7.0, 32.0, 30.0),
                held=(Hold("box_sides", "groove"), Hold("box_ends", "groove")),
                **box,
            ),
        ),
        **_fronts(pitch, box),
    }


def _fronts(pitch: float, box: dict[str, Any]) -> Parts:
    """Frame-and-panel fronts: grooved stiles and rails, tongues on the rails, a pull on bolts."""
    front = {**box, "assembly": "fronts"}
    width, u = pitch - 4.0, 72.0
    stile = part(
        "front stile",
        (230.0, 60.0, 18.0),
        lies="zuv",
        at=(u, 7.0, 20.0),
        cuts=(cut((0.0, 50.0, 6.0), (230.0, 60.0, 12.0)),),
        held=(Hold("box_ends", "screwed"),),
        **front,
    )
    far = replace(
        stile,
        at=(u + width - 60.0, 7.0, 20.0),
        cuts=(cut((0.0, 0.0, 6.0), (230.0, 10.0, 12.0)),),
    )
    length = width - 120.0 + 20.0
    tongues = tuple(
        cut((x, 0.0, t), (x + 10.0, 50.0, t + 6.0))
        for x in (0.0, length - 10.0)
        for t in (0.0, 12.0)
    )

    def rail(z: float, low: float) -> Part:
        return part(
            "front rail",
            (length, 50.0, 18.0),
            lies="uzv",
            at=(u + 50.0, 7.0, z),
            cuts=(*tongues, cut((0.0, low, 6.0), (length, low + 10.0, 12.0))),
            held=(Hold("stiles", "tongue"),),
            **front,
        )

    panel = part(
        "front panel",
        (length - 2.0, 130.0 + 18.0, 6.0),
        lies="uzv",
        at=(u + 51.0, 13.0, 61.0),
        held=(Hold("stiles", "groove"), Hold("front_rails", "groove")),
        **front,
    )
    pull = part(
        "pull",
        (100.0, 10.0, 30.0),
        lies="uzv",
        at=(u + width / 2 - 50.0, -23.0, 220.0),
        hardware="pull",
        held=(Hold("front_rails", "bolted"),),
        **front,
    )
    return {
        "stiles": (stile, far),
        "front_rails": (rail(20.0, 40.0), rail(200.0, 0.0)),
        "front_panels": (panel,),
        "pulls": (pull,),
    }
