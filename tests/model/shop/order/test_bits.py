"""Which bits a maker in mm, and one in inches, takes for the holes of screws, dowels and bolts.

Wanted sizes: a No. 8 screw's shank hole is 11/64 in (a boat-builders' chart); drills as they are
sold by tenths and halves of a millimetre, and by 64ths of an inch: from memory.
"""

from __future__ import annotations

import pytest

from model.materials import screws
from model.shop.order.bits import bit


@pytest.mark.parametrize(
    ("kind", "diameter", "metric", "inch"),
    [
        ("shank hole", 4.37, "4.5 mm (reckoned 4.37 mm)", '11/64"'),
        ("shank hole", 7.37, "7.5 mm (reckoned 7.37 mm)", '19/64"'),
        ("pull hole", 4.8, "5 mm (reckoned 4.8 mm)", '3/16"'),
        ("pull hole", 4.5, "4.5 mm", '3/16" (reckoned ~11/64")'),
        ("bolt hole", 7.0, "7 mm", '9/32"'),
        ("counterbore", 9.53, "10 mm (reckoned 9.53 mm)", '3/8"'),
        ("counterbore", 16.0, "16 mm", '5/8"'),
        ("pilot hole", 2.78, "2.8 mm", '7/64"'),
        ("pilot hole", 3.18, "3.2 mm", '1/8"'),
        ("dowel hole", 10.0, "10 mm", "10 mm"),
        ("nut hole", 10.0, "10 mm", "10 mm"),
        ("dowel hole", 9.525, "~9.5 mm", '3/8"'),
        ("vent", 24.0, "24 mm", '~15/16"'),
    ],
)
def test_the_bit_is_one_that_is_sold(kind: str, diameter: float, metric: str, inch: str) -> None:
    assert bit(kind, diameter, "mm") == metric
    assert bit(kind, diameter, "inch") == inch


@pytest.mark.parametrize(("unit", "tight"), [("mm", 0.0), ("inch", 0.07)])
def test_no_screw_binds_in_the_hole_that_it_passes(unit: str, tight: float) -> None:
    """In inches no tighter than the chart's 3/16 in for the 0.190 in of a No. 10."""
    for screw in screws().values():
        told = bit("shank hole", screw.shank_hole_mm, unit).partition(" (")[0]

        assert size_of(told) > screw.shank_mm - tight
        assert size_of(told) < screw.head_mm, "the head would go through"


def size_of(told: str) -> float:
    if told.endswith("mm"):
        return float(told.removesuffix(" mm"))
    above, _, below = told.removesuffix('"').partition("/")
    return float(above) / float(below or 1) * 25.4
