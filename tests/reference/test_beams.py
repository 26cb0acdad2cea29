"""Beams against the Wood Handbook and the closed forms of textbooks.

Wood Handbook 2021 (FPL-GTR-282): table 9-1 with eq 9-2 (sag of one span), eq 9-4 (shear sag), eq
9-13 and 9-14 (stresses). Continuous and overhanging beams: the elastic curve integrated by hand, as
in any table of beam formulas; some of its figures are printed in public tables too, two of which
have errors that are named here. Everything goes through the frame solver.

The slat of all numbers: yellow-poplar 19 x 89 mm lying flat, E 10 900 MPa (table 5-3).
"""

from __future__ import annotations

from math import sqrt

import numpy as np
import pytest

from model.mechanics.beam import shear_sag
from model.mechanics.section import section_modulus, shear_stress
from tests.model.mechanics.frames import Beam, Bent

L, WIDTH, HEIGHT, E = 720.0, 89.0, 19.0, 10900.0
EI = E * WIDTH * HEIGHT**3 / 12
P, W = 400.0, 0.6  # N; N/mm
G = 0.075 * E  # G_LR of yellow-poplar: table 5-1
RIGID = 1e9  # N/mm: supports sink by 1e-6 mm
# Clamps turn by 1e-5 of what the beam does; a place along the beam is read at a 720th of a span.
CLOSE, PLACE = 2e-5, 1e-3
UNDER = 1e-4  # a point load is spread over a fiftieth of a millimetre, which rounds its moment off


def simple() -> Beam:
    return Beam((0, L), {0: RIGID, 1: RIGID})


def clamped() -> Beam:
    return Beam((0, L), {0: RIGID, 1: RIGID}, clamped=(0, 1))


def cantilever() -> Beam:
    return Beam((0, L), {0: RIGID}, clamped=(0,))


def two_spans() -> Beam:
    return Beam((0, L, 2 * L), dict.fromkeys(range(3), RIGID))


def at(bent: Bent, values: np.ndarray, x: float) -> float:
    """A value at a place along the beam."""
    return float(values[np.argmin(np.abs(bent.x - x))])


def greatest(bent: Bent, values: np.ndarray, unit: float) -> tuple[float, float]:
    """The greatest value of a `unit`, and where, of a span."""
    i = int(np.argmax(values))
    return float(values[i] / unit), float(bent.x[i] / L)


def in_first_span(bent: Bent, values: np.ndarray) -> np.ndarray:
    """The values there, and 0 in all others: a symmetric beam has every greatest value twice."""
    return np.where(bent.x <= L, values, 0.0)


def close(*values: float, digits: float = CLOSE) -> list[object]:
    return [pytest.approx(value, rel=digits, abs=1e-6) for value in values]


# ------------------------------------------------------------ one span: table 9-1


def test_table_9_1_uniform_load_simple_supports() -> None:
    bent = simple().under((0, 0, 0, L, W * L))

    assert greatest(bent, bent.sag(), W * L**4 / EI) == (*close(5 / 384), pytest.approx(0.5))
    assert (bent.reactions() / (W * L)).tolist() == close(1 / 2, 1 / 2)
    assert greatest(bent, bent.moment(), W * L**2) == (*close(1 / 8), pytest.approx(0.5))


def test_table_9_1_load_at_midspan_simple_supports() -> None:
    bent = simple().under((0, 0, L / 2, L / 2, P))

    assert greatest(bent, bent.sag(), P * L**3 / EI) == (*close(1 / 48), pytest.approx(0.5))
    assert (bent.reactions() / P).tolist() == close(1 / 2, 1 / 2)
    assert greatest(bent, bent.moment(), P * L) == (*close(1 / 4, digits=UNDER), pytest.approx(0.5))


def test_table_9_1_two_loads_at_quarter_points_simple_supports() -> None:
    """The total load is W; the row of 1/96 is for simple supports too, at the loads: a digitised
    copy of the table heads it with clamped ends, where midspan would have 1/384.
    """
    loads = [(0, 0, a, a, P / 2) for a in (L / 4, 3 * L / 4)]

    bent, stiff = simple().under(*loads), clamped().under(*loads)

    unit = P * L**3 / EI
    assert greatest(bent, bent.sag(), unit) == (*close(11 / 768), pytest.approx(0.5))
    assert at(bent, bent.sag(), L / 4) / unit == close(1 / 96)[0]
    assert (bent.reactions() / P).tolist() == close(1 / 2, 1 / 2)
    assert bent.moment().max() / (P * L) == close(1 / 8)[0]
    assert stiff.sag().max() / unit == close(1 / 384)[0]


def test_table_9_1_uniform_load_clamped_ends() -> None:
    bent = clamped().under((0, 0, 0, L, W * L))

    assert greatest(bent, bent.sag(), W * L**4 / EI) == (*close(1 / 384), pytest.approx(0.5))
    assert (bent.reactions() / (W * L)).tolist() == close(1 / 2, 1 / 2)
    assert (bent.moment()[[0, -1]] / (W * L**2)).tolist() == close(-1 / 12, -1 / 12)


def test_table_9_1_load_at_midspan_clamped_ends() -> None:
    bent = clamped().under((0, 0, L / 2, L / 2, P))

    assert greatest(bent, bent.sag(), P * L**3 / EI) == (*close(1 / 192), pytest.approx(0.5))
    assert (bent.reactions() / P).tolist() == close(1 / 2, 1 / 2)
    assert (bent.moment()[[0, 360, -1]] / (P * L)).tolist() == close(
        -1 / 8, 1 / 8, -1 / 8, digits=1e-4
    )


def test_table_9_1_uniform_load_cantilever() -> None:
    bent = cantilever().under((0, 0, 0, L, W * L))

    assert greatest(bent, bent.sag(), W * L**4 / EI) == (*close(1 / 8), pytest.approx(1.0))
    assert (bent.reactions() / (W * L)).tolist() == close(1)
    assert bent.moment()[0] / (W * L**2) == close(-1 / 2)[0]


def test_table_9_1_end_load_cantilever() -> None:
    bent = cantilever().under((0, 0, L, L, P))

    assert greatest(bent, bent.sag(), P * L**3 / EI) == (*close(1 / 3), pytest.approx(1.0))
    assert (bent.reactions() / P).tolist() == close(1)
    assert bent.moment()[0] / (P * L) == close(-1)[0]


def test_two_loads_at_third_points() -> None:
    """23/648 of each load; textbook tables of beams."""
    bent = simple().under((0, 0, L / 3, L / 3, P), (0, 0, 2 * L / 3, 2 * L / 3, P))

    assert greatest(bent, bent.sag(), P * L**3 / EI) == (*close(23 / 648), pytest.approx(0.5))
    assert (bent.reactions() / P).tolist() == close(1, 1)
    assert bent.moment().max() / (P * L) == close(1 / 3)[0]


@pytest.mark.parametrize("share", [0.1, 0.25, 0.4])
def test_load_anywhere_sags_most_away_from_the_load_and_the_middle(share: float) -> None:
    """Under it a^2 b^2 / 3 L^4; greatest at sqrt((L^2 - a^2) / 3) from the far support."""
    a, b = share * L, (1 - share) * L

    bent = simple().under((0, 0, a, a, P))

    unit = P * L**3 / EI
    most = a * (L**2 - a**2) ** 1.5 / (9 * sqrt(3) * L**4)
    place = 1 - sqrt((L**2 - a**2) / 3) / L
    assert at(bent, bent.sag(), a) / unit == close(a**2 * b**2 / (3 * L**4))[0]
    assert greatest(bent, bent.sag(), unit) == (*close(most), pytest.approx(place, abs=PLACE))
    assert (bent.reactions() / P).tolist() == close(b / L, a / L)
    assert at(bent, bent.moment(), a) / (P * L) == close(a * b / L**2, digits=UNDER)[0]


# ------------------------------------------------------------ two and three spans


def test_two_spans_uniform_load_on_both() -> None:
    """Greatest sag 1/184.6; a public page prints 5/8 and 3/2 w L for the reactions, which add up to
    2.75 w L where 2 w L lie.
    """
    bent = two_spans().under((0, 0, 0, L, W * L), (0, 1, 0, L, W * L))

    assert (bent.reactions() / (W * L)).tolist() == close(3 / 8, 10 / 8, 3 / 8)
    assert at(bent, bent.moment(), L) / (W * L**2) == close(-1 / 8)[0]
    assert greatest(bent, in_first_span(bent, bent.moment()), W * L**2) == (
        *close(9 / 128), pytest.approx(3 / 8, abs=PLACE),
    )  # fmt: skip
    assert greatest(bent, in_first_span(bent, bent.sag()), W * L**4 / EI) == (
        *close(0.00541612), pytest.approx(0.4215, abs=PLACE),
    )  # fmt: skip
    assert bent.sag().max() == pytest.approx(W * L**4 / (185 * EI), rel=3e-3)  # as it is printed


def test_two_spans_uniform_load_on_one_lifts_the_far_end() -> None:
    """The far end pulls with 1/16 w L; a public page prints it as a push."""
    bent = two_spans().under((0, 0, 0, L, W * L))

    assert (bent.reactions() / (W * L)).tolist() == close(7 / 16, 5 / 8, -1 / 16)
    assert at(bent, bent.moment(), L) / (W * L**2) == close(-1 / 16)[0]
    assert greatest(bent, bent.moment(), W * L**2) == (
        *close(49 / 512), pytest.approx(7 / 16, abs=PLACE),
    )  # fmt: skip
    assert greatest(bent, bent.sag(), W * L**4 / EI) == (
        *close(0.00915056), pytest.approx(0.4724, abs=PLACE),
    )  # fmt: skip
    # Printed with four digits.
    assert -bent.sag().min() / (W * L**4 / EI) == pytest.approx(0.004009, abs=5e-7)


def test_two_spans_load_at_the_middle_of_one_lifts_the_far_end() -> None:
    bent = two_spans().under((0, 0, L / 2, L / 2, P))

    unit = P * L**3 / EI
    assert (bent.reactions() / P).tolist() == close(13 / 32, 11 / 16, -3 / 32)
    assert at(bent, bent.moment(), L) / (P * L) == close(-3 / 32)[0]
    assert bent.moment().max() / (P * L) == close(13 / 64, digits=UNDER)[0]
    assert greatest(bent, bent.sag(), unit) == (
        *close(0.01501201), pytest.approx(0.4804, abs=PLACE),
    )  # fmt: skip
    assert at(bent, bent.sag(), L / 2) / unit == close(23 / 1536)[0]
    assert -bent.sag().min() / unit == pytest.approx(0.006014, abs=5e-7)


def test_two_spans_load_at_the_middle_of_both() -> None:
    bent = two_spans().under((0, 0, L / 2, L / 2, P), (0, 1, L / 2, L / 2, P))

    unit = P * L**3 / EI
    assert (bent.reactions() / P).tolist() == close(5 / 16, 11 / 8, 5 / 16)
    assert at(bent, bent.moment(), L) / (P * L) == close(-3 / 16)[0]
    assert bent.moment().max() / (P * L) == close(5 / 32, digits=UNDER)[0]
    assert greatest(bent, in_first_span(bent, bent.sag()), unit) == (
        *close(1 / (48 * sqrt(5))), pytest.approx(1 / sqrt(5), abs=PLACE),
    )  # fmt: skip
    assert at(bent, bent.sag(), L / 2) / unit == close(7 / 768)[0]


@pytest.mark.parametrize("share", [0.15, 0.3, 0.5, 0.8])
def test_two_spans_load_anywhere_on_one(share: float) -> None:
    """The load at a from the outer end, b = L - a."""
    a, b = share * L, (1 - share) * L

    bent = two_spans().under((0, 0, a, a, P))

    end = b * (4 * L**2 - a * (L + a)) / (4 * L**3)
    centre = a * (2 * L**2 + b * (L + a)) / (2 * L**3)
    far = -a * b * (L + a) / (4 * L**3)
    assert (bent.reactions() / P).tolist() == close(end, centre, far)
    assert at(bent, bent.moment(), L) / (P * L) == close(-a * b * (L + a) / (4 * L**3))[0]
    assert at(bent, bent.moment(), a) / (P * L) == close(end * a / L, digits=UNDER)[0]


def test_two_spans_load_at_three_tenths_of_one_sags_beyond_the_load() -> None:
    """The end pushes with R = 0.63175 P and turns by (R - 0.7^3 P) L^2 / 6 EI, so that the beam is
    level where 0.184125 x^2 - 0.3 x + 0.093125 = 0, x in spans.
    """
    bent = two_spans().under((0, 0, 0.3 * L, 0.3 * L, P))

    # Four digits.
    assert greatest(bent, bent.sag(), P * L**3 / EI) == (
        pytest.approx(0.01270, abs=5e-6), pytest.approx(0.41729, abs=PLACE),
    )  # fmt: skip


def test_three_spans_uniform_load_on_all() -> None:
    beam = Beam((0, L, 2 * L, 3 * L), dict.fromkeys(range(4), RIGID))

    bent = beam.under(*((0, span, 0, L, W * L) for span in range(3)))

    assert (bent.reactions() / (W * L)).tolist() == close(0.4, 1.1, 1.1, 0.4)
    assert at(bent, bent.moment(), L) / (W * L**2) == close(-0.10)[0]
    assert greatest(bent, in_first_span(bent, bent.moment()), W * L**2) == (
        *close(0.08), pytest.approx(0.4, abs=PLACE),
    )  # fmt: skip
    assert greatest(bent, in_first_span(bent, bent.sag()), W * L**4 / EI) == (
        pytest.approx(0.00688, abs=5e-6), pytest.approx(0.446, abs=PLACE),
    )  # fmt: skip


def test_reactions_of_every_load_on_two_spans_add_up_to_the_load() -> None:
    """Whatever a table prints."""
    rows = [(0, 0, 0, L, W * L), (0, 1, 0, L, W * L), (0, 0, L / 2, L / 2, P), (0, 1, 90, 600, P)]

    for on in range(1, 16):
        loads = [row for i, row in enumerate(rows) if on & 1 << i]
        bent = two_spans().under(*loads)
        assert bent.reactions().sum() == pytest.approx(sum(row[4] for row in loads), rel=1e-8)


# ------------------------------------------------------------ overhang, elastic centre


@pytest.mark.parametrize("a", [60.0, 150.0, 400.0])
def test_overhang_load_at_the_tip(a: float) -> None:
    """Between the supports it lifts most at 0.577 L from the far end."""
    bent = overhanging(a).under((0, 1, a, a, P))

    assert (bent.reactions() / P).tolist() == close(-a / L, 1 + a / L)
    assert bent.sag()[-1] == close(P * a**2 * (L + a) / (3 * EI))[0]
    assert greatest(bent, -bent.sag(), P * a * L**2 / (9 * sqrt(3) * EI)) == (
        *close(1), pytest.approx(0.577, abs=PLACE),
    )  # fmt: skip


@pytest.mark.parametrize("a", [60.0, 150.0, 400.0])
def test_overhang_even_loads(a: float) -> None:
    """On the overhang, on the span, on all of it."""
    on_tip, on_span = (1, 0, a, W * a), (0, 0, L, W * L)

    bent = overhanging(a).under(
        (0, *on_tip), (1, *on_span), (2, *on_tip), (2, *on_span)
    )  # fmt: skip

    far = [bent.reactions(case)[0] / W for case in range(3)]
    assert far == close(-(a**2) / (2 * L), L / 2, (L**2 - a**2) / (2 * L))
    tip = [bent.sag(case)[-1] * 24 * EI / (W * a) for case in range(3)]
    # The third is a small difference of the other two.
    assert tip == [
        pytest.approx(value, rel=CLOSE, abs=CLOSE * L**3)
        for value in (a**2 * (4 * L + 3 * a), -(L**3), 4 * a**2 * L - L**3 + 3 * a**3)
    ]
    assert at(bent, bent.sag(1), L / 2) == close(5 * W * L**4 / (384 * EI))[0]


def overhanging(a: float) -> Beam:
    return Beam((0, L, L + a), {0: RIGID, 1: RIGID})


@pytest.mark.parametrize("k", [10.0, 100.0, 1000.0])
def test_centre_support_that_gives(k: float) -> None:
    """What the slat would sag without it, shared by the slat's and the support's softness."""
    whole = 2 * L

    bent = Beam((0, L, whole), {0: RIGID, 1: k, 2: RIGID}).under(
        (0, 0, 0, L, W * L), (0, 1, 0, L, W * L)
    )

    free = 5 * W * whole**4 / (384 * EI)
    centre = free / (whole**3 / (48 * EI) + 1 / k)
    assert bent.reactions().tolist() == close(W * L - centre / 2, centre, W * L - centre / 2)


# ------------------------------------------------------------ the slat in numbers


def one_span_centre() -> Bent:
    return simple().under((0, 0, L / 2, L / 2, P))


def one_span_even() -> Bent:
    return simple().under((0, 0, 0, L, W * L))


def test_slat_on_two_supports_load_at_midspan() -> None:
    """Sag and bending stress: table 9-1 with eq 9-2, eq 9-13; shear stress: eq 9-14."""
    bent = one_span_centre()

    assert bent.sag().max() == pytest.approx(5.6094, abs=0.0028)
    modulus = section_modulus(np.array(WIDTH), np.array(HEIGHT))
    assert float(modulus) == pytest.approx(5354.8, abs=0.05)
    assert bent.moment().max() / modulus == pytest.approx(13.446, abs=0.00672)
    shear = np.abs(bent.inner.shear_z[:, 0]).max()
    stress = shear_stress(shear, np.array(WIDTH), np.array(HEIGHT))
    assert float(stress) == pytest.approx(0.1774, abs=6e-5)


def test_slat_on_two_supports_even_load() -> None:
    """Table 9-1 with eq 9-2."""
    assert one_span_even().sag().max() == pytest.approx(3.7864, abs=0.00189)


@pytest.mark.parametrize(
    ("load", "share", "sag"), [(P, 1 / 4, 0.0625), (W * L, 1 / 8, 0.0338)], ids=["centre", "even"]
)
def test_slat_on_two_supports_shear_sag(load: float, share: float, sag: float) -> None:
    """Eq 9-2 and 9-4, ks of table 9-1."""
    assert shear_sag(load, L, share, WIDTH, HEIGHT, G) == pytest.approx(sag, abs=6e-5)


def test_slat_on_three_supports_even_load() -> None:
    """On both spans, and on one: w L^4 / 185 EI and 0.0092 w L^4 / EI are printed."""
    both = two_spans().under((0, 0, 0, L, W * L), (0, 1, 0, L, W * L))
    one = two_spans().under((0, 0, 0, L, W * L))

    assert both.sag().max() == pytest.approx(1.575, abs=0.000788)
    assert both.reactions()[1] == pytest.approx(540.0, abs=0.27)
    assert -both.moment().min() == pytest.approx(38880, abs=19.4)
    assert one.sag().max() == pytest.approx(2.6609, abs=0.00133)
    assert one.reactions()[2] == pytest.approx(-27.0, abs=0.0135)


def test_slat_on_three_supports_load_at_midspan() -> None:
    one = two_spans().under((0, 0, L / 2, L / 2, P))
    both = two_spans().under((0, 0, L / 2, L / 2, P), (0, 1, L / 2, L / 2, P))

    assert one.sag().max() == pytest.approx(4.042, abs=0.00202)
    assert one.moment().max() == pytest.approx(58500, abs=29.2)
    assert one.reactions()[2] == pytest.approx(-37.5, abs=0.0187)
    assert -both.moment().min() == pytest.approx(54000, abs=27)


def test_slat_that_overhangs_load_at_its_tip() -> None:
    bent = overhanging(150).under((0, 1, 150, 150, P))

    assert bent.sag()[-1] == pytest.approx(4.707, abs=0.00235)
    assert bent.reactions()[0] == pytest.approx(-83.33, abs=0.0417)


def test_slat_over_a_centre_beam_that_gives() -> None:
    """100 N/mm: the centre bears 495.8 N of the 540 N that a rigid beam would."""
    bent = Beam((0, L, 2 * L), {0: RIGID, 1: 100.0, 2: RIGID}).under(
        (0, 0, 0, L, W * L), (0, 1, 0, L, W * L)
    )

    assert bent.reactions()[1] == pytest.approx(495.81, abs=0.02)
