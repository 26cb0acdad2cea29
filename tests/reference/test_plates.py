"""Plates on four edges against printed coefficients.

Sources: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8 (resting) and
table 35 (clamped), Poisson's ratio 0.3; Roark's Formulas for Stress and Strain, table of flat
plates, all edges simply supported: all from memory, and agreeing with each other. Drawer bottoms:
sags worked out from the printed coefficients for 718 Pa and 6 GPa.
"""

from __future__ import annotations

import math

import pytest

from model.mechanics.plate import Plate, bent, even_plate, sheet_plate

PLATE = even_plate(10_000, 10)
D = 10_000 * 10**3 / (12 * (1 - 0.3**2))
SHORT, LOAD = 1000.0, 1e-3
LAST_SAG, LAST_MOMENT = 0.6e-5, 0.6e-4  # the tables are printed to 1e-5 and 1e-4


@pytest.mark.parametrize(
    ("aspect", "sag", "short_way", "long_way"),
    [
        (1.0, 0.00406, 0.0479, 0.0479), (1.1, 0.00485, 0.0554, 0.0493),
        (1.2, 0.00564, 0.0627, 0.0501), (1.5, 0.00772, 0.0812, 0.0498),
        (2.0, 0.01013, 0.1017, 0.0464), (3.0, 0.01223, 0.1189, 0.0406),
        (5.0, 0.01297, 0.1246, 0.0375), (12.0, 0.01302, 0.1250, 0.0375),
    ],
)  # fmt: skip
def test_table_8_resting_edges(
    aspect: float, sag: float, short_way: float, long_way: float
) -> None:
    found = bent(PLATE, SHORT, aspect * SHORT, LOAD)

    # The printed sags were reckoned by hand and lie up to 0.5 % beside the series.
    assert found.sag * D / (LOAD * SHORT**4) == pytest.approx(sag, rel=5e-3)
    assert found.moment_x / (LOAD * SHORT**2) == pytest.approx(short_way, abs=2 * LAST_MOMENT)
    # Printed at the middle; in a long plate the greatest lies nearer to its ends, and is more.
    along = found.moment_y / (LOAD * SHORT**2)
    assert along > long_way - LAST_MOMENT
    if aspect <= 1.5:
        assert along == pytest.approx(long_way, abs=LAST_MOMENT)


@pytest.mark.parametrize(
    ("aspect", "sag", "edge", "long_edge"),
    [
        (1.0, 0.00126, 0.0513, 0.0513), (1.2, 0.00172, 0.0639, 0.0554),
        (1.5, 0.00220, 0.0757, 0.0570), (2.0, 0.00254, 0.0829, 0.0571),
    ],
)  # fmt: skip
def test_table_35_clamped_edges(aspect: float, sag: float, edge: float, long_edge: float) -> None:
    found = bent(PLATE, SHORT, aspect * SHORT, LOAD, "clamped")

    assert found.sag * D / (LOAD * SHORT**4) == pytest.approx(sag, abs=2 * LAST_SAG)
    assert found.moment_x / (LOAD * SHORT**2) == pytest.approx(edge, abs=2 * LAST_MOMENT)
    assert found.moment_y / (LOAD * SHORT**2) == pytest.approx(long_edge, abs=2 * LAST_MOMENT)


@pytest.mark.parametrize(
    ("aspect", "alpha", "beta"),
    [
        (1.0, 0.0444, 0.2874), (1.2, 0.0616, 0.3762), (1.4, 0.0770, 0.4530),
        (1.6, 0.0906, 0.5172), (1.8, 0.1017, 0.5688), (2.0, 0.1110, 0.6102),
        (3.0, 0.1335, 0.7134), (4.0, 0.1400, 0.7410), (5.0, 0.1417, 0.7476),
        (12.0, 0.1421, 0.7500),
    ],
)  # fmt: skip
def test_roark_coefficients_of_sag_and_stress(aspect: float, alpha: float, beta: float) -> None:
    """Sag alpha q b^4 / E t^3, stress beta q b^2 / t^2."""
    found = bent(PLATE, SHORT, aspect * SHORT, LOAD)

    assert found.sag * 10_000 * 10**3 / (LOAD * SHORT**4) == pytest.approx(alpha, rel=5e-3)
    assert found.moment_x * 6 / (LOAD * SHORT**2) == pytest.approx(beta, rel=2e-3)


@pytest.mark.parametrize(
    ("sides", "sags"),
    [
        ((450, 450), (1.5, 0.3, 0.1)), ((600, 500), (3.3, 0.6, 0.3)), ((750, 500), (4.5, 0.9, 0.4)),
        ((900, 500), (5.4, 1.0, 0.4)), ((900, 600), (9.3, 1.8, 0.8)),
    ],
)  # fmt: skip
def test_drawer_bottoms_under_718_pa(
    sides: tuple[float, float], sags: tuple[float, float, float]
) -> None:
    """Bottoms of 5.2, 9 and 12 mm, as stiff all ways."""
    for thickness, sag in zip((5.2, 9.0, 12.0), sags, strict=True):
        found = bent(even_plate(6000, thickness), *sides, 718e-6)
        assert found.sag == pytest.approx(sag, abs=0.06)  # printed to 0.1 mm


def test_a_long_narrow_plate_bends_like_a_strip() -> None:
    """5 q b^4 / 384 D and q b^2 / 8, however stiff it is the other way."""
    plywood = sheet_plate(9000, 3000, 6.5, math.sqrt(9000 * 3000) / 2, 0.0)

    found = bent(plywood, 300, 3600, LOAD)

    assert found.sag == pytest.approx(5 * LOAD * 300**4 / (384 * plywood.along_x), rel=1e-3)
    assert found.moment_x == pytest.approx(LOAD * 300**2 / 8, rel=1e-3)


def levy(plate: Plate, x: float, y: float, load: float) -> float:
    """Sag in the middle by Levy's single series: a second way to the same figure.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapters 5 and 11; for a plate
    with H^2 = D_x D_y, whose two roots are alike.
    """
    total = 0.0
    for m in range(1, 40, 2):
        wave = m * math.pi / x
        root = wave * (plate.along_x / plate.along_y) ** 0.25
        u = root * y / 2
        strip = 4 * load / (x * plate.along_x * wave**5)
        shape = 1 - (2 + u * math.tanh(u)) / (2 * math.cosh(u))
        total += strip * shape * math.sin(m * math.pi / 2)
    return total


@pytest.mark.parametrize("sides", [(500, 500), (500, 900), (900, 500)])
@pytest.mark.parametrize("stiff", [(6000, 6000), (12_000, 4000)])
def test_levys_series_gives_the_same_sag(
    sides: tuple[float, float], stiff: tuple[float, float]
) -> None:
    along_x, along_y = (moe * 6.5**3 / 12 for moe in stiff)
    plate = Plate(along_x=along_x, along_y=along_y, poisson=0.0, twist=math.sqrt(along_x * along_y))

    assert bent(plate, *sides, LOAD).sag == pytest.approx(levy(plate, *sides, LOAD), rel=1e-4)
