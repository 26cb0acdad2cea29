"""The scale of the strength view, measured: one hue, each step darker, for every kind of eye.

Luminance and L* as CIE 15 and IEC 61966-2-1 (sRGB) define them; contrast as WCAG 2.2 defines it.
Colour-blind eyes as in Machado, Oliveira and Fernandes, "A Physiologically-based Model for
Simulation of Color Vision Deficiency", IEEE TVCG 15 (2009), table of matrices, severity 1.0.
"""

import numpy as np
import numpy.typing as npt
import pytest

from app.view.palette import Backdrop, Rgb
from app.view.use_scale import PAST, STEPS, STRIPE, UNKNOWN, step_of

Array = npt.NDArray[np.float64]
COLOURS = (*(step.colour for step in STEPS), PAST)
EYES = {
    "usual": np.eye(3),
    "without red cones": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216],
                          [-0.003882, -0.048116, 1.051998]],
    "without green cones": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413],
                            [-0.011820, 0.042940, 0.968881]],
    "without blue cones": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602],
                           [0.004733, 0.691367, 0.303900]],
}  # fmt: skip
TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
WHITE = np.array([0.95047, 1.0, 1.08883])
APART = 10.0  # of L*: told apart at a glance, side by side


def linear(colour: Rgb) -> Array:
    c = np.array(colour)
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)


def lab(light: Array) -> Array:
    """L*, a*, b* of linear light."""
    t = TO_XYZ @ light / WHITE
    x, y, z = np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)
    return np.array([116 * y - 16, 500 * (x - y), 200 * (y - z)])


def contrast(one: Rgb, other: Rgb) -> float:
    dark, light = sorted(float(TO_XYZ[1] @ linear(c)) for c in (one, other))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("eyes", EYES)
def test_every_step_is_darker_than_the_last_for_every_eye(eyes: str) -> None:
    seen = [np.clip(np.array(EYES[eyes]) @ linear(colour), 0, 1) for colour in COLOURS]

    lightness = [float(lab(light)[0]) for light in seen]

    assert min(-np.diff(lightness)) > APART


def test_the_lamp_never_makes_one_step_pass_for_the_next() -> None:
    """Sides turned away are drawn at 0.91 of their colour."""
    for lighter, darker in zip(COLOURS, COLOURS[1:], strict=False):
        dimmed = tuple(0.91 * part for part in lighter)
        assert lab(linear(dimmed))[0] > lab(linear(darker))[0] + APART / 2  # type: ignore[arg-type]


def test_the_scale_has_one_hue() -> None:
    hues = [np.degrees(np.arctan2(b, a)) for _, a, b in (lab(linear(c)) for c in COLOURS)]

    assert max(hues) - min(hues) < 6  # degrees: what rounding to 8 bits does to pale tones


def test_stripes_stand_out_from_what_is_between_them() -> None:
    assert contrast(PAST, STRIPE) > 7  # WCAG: enhanced contrast of text


def test_the_limit_itself_is_told_from_what_is_past_it() -> None:
    assert contrast(STEPS[-1].colour, STRIPE) > 3  # WCAG: parts of graphics


def test_what_is_not_reckoned_has_no_hue_of_its_own() -> None:
    _, a, b = lab(linear(UNKNOWN))

    assert np.hypot(a, b) < 3
    assert contrast(UNKNOWN, Backdrop().foot) < 1.4  # it keeps back


def test_a_share_at_the_end_of_a_step_still_belongs_to_it() -> None:
    shares = np.array([0.0, 0.25, 0.2501, 0.5, 0.75, 0.76, 1.0, 1.001, 7.0])

    assert step_of(shares).tolist() == [0, 0, 1, 1, 2, 3, 3, 4, 4]
