"""What joinery asks of the parts, counted from their cuts and holes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from model.part import Cut, Part
from model.parts.marks import Mark

_MM_PER_M = 1000.0
_RUN = {"groove", "dado", "rabbet"}
_TENONS = {"tenon cheek", "tenon shoulder", "tongue rabbet"}
_CORNERS = {"dovetail allowance"}
_OPENINGS = {"vent", "hand hole"}
_MORTISES = {"mortise", "plate recess", "hook pocket"}
KINDS = _RUN | _TENONS | _CORNERS | _OPENINGS | _MORTISES  # a kind of cut nobody has named: mortise
_WITH_ANOTHER = {"pocket pilot"}  # drilled at one go with its pocket


def work_on_parts(marks: Iterable[Mark]) -> Mapping[str, float]:
    """Quantities of the operations that joints make, by the operation's key."""
    found = dict.fromkeys(
        ("grooves", "tenons", "mortises", "corners", "vents", "holes", "eased_edges"), 0.0
    )
    for mark in marks:
        for key, one in _on(mark.part).items():
            found[key] += one * mark.quantity
    return found


def _on(part: Part) -> dict[str, float]:
    runs = [cut for cut in part.cuts if cut.kind in _RUN]
    openings = [cut for cut in part.cuts if cut.kind in _OPENINGS]
    return {
        "grooves": sum(_longest(part, cut) for cut in runs) / _MM_PER_M,
        "tenons": float(len(_ends(part, _TENONS))),
        "corners": float(len(_ends(part, _CORNERS))),
        "vents": float(len(openings)),
        "mortises": float(sum(cut.kind not in KINDS - _MORTISES for cut in part.cuts)),
        "holes": float(sum(hole.kind not in _WITH_ANOTHER for hole in part.holes)),
        "eased_edges": 4 * part.size[0] / _MM_PER_M if part.eased else 0.0,
    }


def _longest(part: Part, cut: Cut) -> float:
    """The run of a groove, as far as there is wood."""
    sides = zip(cut.low, cut.high, part.size, strict=True)
    return max(min(high, side) - max(low, 0.0) for low, high, side in sides)


def _ends(part: Part, kinds: set[str]) -> set[tuple[int, bool]]:
    """The ends or edges that cuts of some kinds shape: all cheeks of one tenon are one end."""
    found = set()
    for cut in part.cuts:
        if cut.kind in kinds:
            for axis in (0, 1):
                at_low, at_high = cut.low[axis] <= 1e-6, cut.high[axis] >= part.size[axis] - 1e-6
                if at_low != at_high:
                    found.add((axis, at_high))
                    break
    return found
