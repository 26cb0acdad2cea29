"""The joints of the frame: what they hold, where, and how they may turn."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.parts.pieces import Bools, Floats, Ints

FLOOR = -1
TIGHT = 1e5  # N/mm: wood pressed on wood, a hundred times as stiff as any slat of a bed
FIRM = 1e9  # N mm: glued or held by several screws, it does not turn
# One screw, or wood lying on wood, hardly hinders a roll: a few N at the edge of a slat.
ROLL = 1e5  # N mm
# Two pocket screws 25 mm apart, at the slip modulus of one screw in light wood.
STIFF = 1e6  # N mm
# Two glued dowels 30 mm apart, each a bar of 25 mm in wood that gives in shear (2e4 N/mm), or the
# cheeks of a tenon 25 mm long: as stiff. A stub tenon gives more, and is asked for less than here.
GLUED = 1e7  # N mm
USUAL_STILE = 50.8  # mm: in a stile twice as wide they stand twice as far apart

SLIDES = 20.0  # N/mm: a leg, or what merely lies on a piece, slides before it holds sideways
SCREW = 1500.0  # N/mm: how a screw of 4 mm gives sideways in light wood, by its slip modulus

KINDS = ("rests", "hinged", "rigid", "stile", "knock-down", "floor", "friction")
REST, HINGE, RIGID, STILE, KNOCK_DOWN, STANDS, FRICTION = range(len(KINDS))
# Against turning about the length, width and thickness axis of the piece that is held.
TURNS = np.zeros((len(KINDS), 3))
TURNS[[REST, HINGE]] = ROLL, 0, 0
TURNS[RIGID] = FIRM, FIRM, FIRM
TURNS[STILE] = STIFF, STIFF, STIFF
# Level ways. Held tight there, at its underside, a slat would bear as an arch, and panels with the
# beam that they lie on as one thick beam.
LEVEL = np.full(len(KINDS), TIGHT)
LEVEL[[REST, HINGE]] = SLIDES, SCREW


@dataclass(frozen=True, kw_only=True, eq=False)
class Contacts:
    """Joints (j) between pieces of the frame: `one` bears on `other` (FLOOR for the floor).

    `at` (j, 3) mm; `kind` indexes KINDS; `stiffness` (j, 6) N/mm and N mm on the bed's axes;
    `pushes` (j, 3): direction in which `one` may lift off, 0 for a joint that holds both ways;
    `area` (j,) mm2 of wood that meets, across the way of the push.
    """

    one: Ints
    other: Ints
    at: Floats
    kind: Ints
    stiffness: Floats
    pushes: Floats
    area: Floats

    def only(self, kept: Bools) -> Contacts:
        """Some of these joints."""
        return Contacts(**{name: getattr(self, name)[kept] for name in Contacts.__annotations__})


def joined(*parts: Contacts) -> Contacts:
    """All joints of several records in one."""
    names = Contacts.__annotations__
    return Contacts(**{n: np.concatenate([getattr(p, n) for p in parts]) for n in names})
