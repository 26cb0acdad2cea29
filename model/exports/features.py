"""What joints cut into a part, as a list that a maker or a machine can go by.

All figures are mm in the part's own axes, as cut: length, width and thickness from a corner of the
stock box (see `model.parts.pieces.as_cut`).
"""

from __future__ import annotations

from typing import Any

from model.exports.plain import number, numbers
from model.part import Cut, Face, Hole, Part


def features(form: Part) -> list[dict[str, Any]]:
    """Every cut and hole of a part in the axes of its matrices, its taper and its eased edges."""
    found = [_cut(cut) for cut in form.cuts] + [_hole(hole) for hole in form.holes]
    found += [_taper(form)] if form.taper else []
    return found + ([_eased(form)] if form.eased else [])


def _cut(cut: Cut) -> dict[str, Any]:
    """A box of wood that is taken away: its lower corner and its extent."""
    extent = (high - low for low, high in zip(cut.low, cut.high, strict=True))
    length, width, thickness = numbers(extent)
    return {
        "kind": cut.kind,
        "face": str(cut.face),
        "position": numbers(cut.low),
        "size": {"length": length, "width": width, "thickness": thickness},
    }


def _hole(hole: Hole) -> dict[str, Any]:
    """A round hole: the centre of its mouth, the way it goes, its diameter and depth."""
    diameter, depth = numbers((hole.diameter, hole.depth))
    return {
        "kind": hole.kind,
        "face": str(hole.face),
        "position": numbers(hole.at),
        "size": {"diameter": diameter, "depth": depth},
        "toward": numbers(hole.toward),
    }


def _taper(form: Part) -> dict[str, Any]:
    """How much each side narrows, over what length, towards the near end."""
    depth, length = numbers((form.taper, form.taper_length))
    return {
        "kind": "taper",
        "face": str(Face.NEAR),
        "position": [0, 0, 0],
        "size": {"depth": depth, "length": length},
    }


def _eased(form: Part) -> dict[str, Any]:
    """The four long edges are rounded by hand or router, after the last cut."""
    return {
        "kind": "eased edge",
        "face": "all long edges",
        "position": [0, 0, 0],
        "size": {"radius": number(form.eased)},
    }
