"""Joints by how they go together at the bench: what each name of a hold means for the hands."""

from __future__ import annotations

# Members of a frame that are glued end to edge, in one glue-up.
FRAMED = frozenset(
    {
        *("mortise and tenon", "stub tenon", "stub tenon in groove", "dowel", "pocket screw"),
        *("rabbet", "dado", "dovetails", "pocket screws"),
    }
)
# Held by a groove on all sides, and never glued.
FLOATING = frozenset({"groove", "floats in grooves", "groove, or screwed up into the back"})
# Laid on a face, and screwed, nailed or glued there.
FACED = frozenset(
    {
        *("glued and screwed", "screwed and glued", "glued on top", "glued", "screwed"),
        *("screwed through the bottom", "screwed from behind", "nailed", "bolted"),
        *("rests, screwed", "brackets or screws", "screwed on the bed"),
    }
)
# Comes together on the floor, by its own weight, a bolt or a hook.
LOOSE = frozenset(
    {
        *("stands", "rests", "carried", "runs", "runs beside", "slides on"),
        *("bed-rail connector", "hooked in", "bolt hole", "nut hole", "thread"),
    }
)
KNOWN = FRAMED | FLOATING | FACED | LOOSE

# By these a thing is fixed to another on the bench, where that is the only thing it is fixed to.
FIXING = frozenset({"screwed", "nailed"})
# What bears on other units by these is put in where the bed stands.
BEARING = frozenset(
    {"brackets or screws", "rests, screwed", "rests", "bed-rail connector", "pocket screws"}
)
# A fixed front and its pull are fixed too; those of a drawer wait until the drawer hangs.
FIXING_OF_FRONTS = frozenset({"screwed from behind", "bolted"})
