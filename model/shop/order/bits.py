"""Which drill bit makes a hole, of the sizes that are sold in the maker's unit.

A hole that a screw or bolt passes gets the next size up, a pilot hole the nearest; what is fitted
snugly, such as a dowel, is drilled as it is sold, in mm or in inches.
Source of the sizes sold: from memory. Twist drills come by tenths of a millimetre (sets by halves)
and by 1/64 in, the wide bits of counterbores by 1 mm and 1/16 in.
"""

from __future__ import annotations

from model.units import INCH, Mm, ShopGrid, show_length

_HALF, _TENTH, _WHOLE = (ShopGrid(step, "mm") for step in (0.5, 0.1, 1.0))
_64TH, _16TH = (ShopGrid(INCH / parts, "inch") for parts in (64, 16))
_PASSED = {"mm": _HALF, "inch": _64TH}
_WIDE = {"mm": _WHOLE, "inch": _16TH}
_BITING = {"mm": _TENTH, "inch": _64TH}
_SNUG = ("dowel hole", "nut hole")
_GRIDS = {"counterbore": _WIDE, "shank hole": _PASSED, "bolt hole": _PASSED, "pull hole": _PASSED}
_SLACK: Mm = 0.05  # tables of screws are rounded: 4.8 mm is 3/16 in
_WIDE_SLACK: Mm = 0.2  # heads and washers have more room than that: 16 mm is 5/8 in


def bit(kind: str, diameter: Mm, unit: str) -> str:
    """`4.5 mm (reckoned 4.37 mm)`, `11/64"`: the bit for a hole of a kind; what is reckoned is told
    where it is another size.
    """
    if kind in _SNUG:
        return _as_sold(diameter, unit)
    sold = _sold(kind, diameter, unit)
    told, reckoned = show_length(sold, unit), show_length(diameter, unit)
    if abs(sold - diameter) <= _SLACK or reckoned.removeprefix("~") == told:
        return told
    return f"{told} (reckoned {reckoned})"


def _sold(kind: str, diameter: Mm, unit: str) -> Mm:
    if kind == "pilot hole":
        return _BITING[unit].near(diameter)
    if kind not in _GRIDS:
        return diameter
    slack = _WIDE_SLACK if kind == "counterbore" else _SLACK
    return _GRIDS[kind][unit].up(diameter - slack)


def _as_sold(diameter: Mm, unit: str) -> str:
    """A dowel of 10 mm is drilled with a bit of 10 mm in any shop."""
    is_metric = abs(_HALF.near(diameter) - diameter) < _SLACK / 10
    return show_length(diameter, "mm" if is_metric else unit)
