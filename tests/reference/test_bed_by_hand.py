"""A slat, a rail, a bearer, a post and a fall reckoned by hand, against the solved frame.

Formulas: Wood Handbook 2021 (FPL-GTR-282), table 9-1 (one span) and equations 9-13 (6 M / b h^2)
and 9-2 (sag); beams over two spans and on a clamp: the elastic curve integrated, as in any table of
beam formulas. Stiffness: table 5-3, yellow-poplar 10 900 MPa; European beech 14 300 MPa. Gravity
9.80665 m/s2.

What a hand leaves out, and how much it is: screws under a slat hold its ends back a little (up to
6 %), rails and beam sink below it, what is beside it shares a hard pad. Each test says which.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from model.bed import solve
from model.structure.record import Carried
from tests.model.structure.frames_of_beds import Worked, design, usual, worked


@cache
def queen() -> Worked:
    """Storage queen with slats of 88.9 x 19.05 poplar on two cleats and a centre beam; its face
    frames of poplar too, on pocket screws and plates of 4 in.
    """
    slats = {"slat_stock": 19.05, "slat_width": 88.9, "beam": "bearers"}
    frames = {
        "frame_wood": "yellow_poplar", "frame_joint": "pocket screw",
        "connector": "hook_plate_100",
    }  # fmt: skip
    return worked(solve(design("painted_storage_queen", **slats, **frames)))


@cache
def loft(gives: float = 20.0) -> Worked:
    """Single with plain sides of 160 x 30 and slats of 89 x 20, all beech, one sleeper."""
    choices = {"slat_stock": 20.0, "frame_stock": 30.0, "rail_width": 160.0}
    return worked(solve(design("loft_single", mattress_gives=gives, **choices)))


def carried(here: Worked) -> Carried:
    found = here.bed.strength
    assert isinstance(found, Carried)
    return found


def case(found: Carried, start: str) -> int:
    """The first load case whose title begins so."""
    return next(i for i, each in enumerate(found.cases) if each.title.startswith(start))


def stress(here: Worked, piece: int, load: int, lasts: float) -> np.ndarray:
    """Bending stress at a piece's stations, MPa; `lasts`: for its time and kind of load."""
    loads = carried(here)
    return loads.curve(int(here.bones.piece[piece]), load).use * here.bones.bending[piece] * lasts


# 1.6 for ten minutes and 1.3 for a test load; 1.25 for seven days; 0.9 for good.
KNEELING, WEEK, FOR_GOOD = 1.6 * 1.3, 1.25, 0.9


def test_a_slat_of_the_queen_under_a_knee() -> None:
    """Two spans of L = 758.8 mm, 1400 N on 200 mm in the middle of one: w = 7 N/mm from
    a = 279.4 to b = 479.4 mm from the cleat.

    Over the beam: M = w / (4 L^2) [L^2 x^2 / 2 - x^4 / 4] from a to b
      = 7 / (4 x 575 800) x (4.369e10 - 1.168e10) = 97.3 N m (a load on a point: 3/32 P L = 99.6).
    Cleat: R = 700 - 97 300 / 758.8 = 571.8 N.
    Greatest moment where R = w (x - a), x = 361.1 mm: 571.8 x 361.1 - 7 x 81.7^2 / 2 = 183.1 N m.
    Mattress and slat weigh 0.030 N/mm: 3/8 q L x - q x^2 / 2 = 1.1 N m more.
    Section modulus 88.9 x 19.05^2 / 6 = 5377 mm3: 184.2e3 / 5377 = 34.3 MPa. The frame is read in
    the middle of the span, 18 mm beside that place: 571.8 x 379.4 - 7 x 100^2 / 2 + 1100 =
    183.0 N m, 34.0 MPa. Screws under the slat's ends take one to three in a hundred of it off; a
    beam that sinks puts some of that back.
    """
    here = queen()
    slat = int(here.bones.of_role("slat")[6])
    nodes = here.frame.node_at[here.frame.first_node[slat] : here.frame.first_node[slat + 1]]
    assert np.diff(nodes) == pytest.approx([758.8, 758.8], abs=0.05)
    loads = carried(here)
    knee = case(loads, "Kneeling on slat 7 from the foot, 379 mm left")

    found = stress(here, slat, knee, KNEELING)

    assert found.max() == pytest.approx(34.0, rel=0.03)
    at = loads.curve(int(here.bones.piece[slat]), knee).at
    assert at[found.argmax()] - nodes[0] == pytest.approx(379.4, abs=0.1)


def test_what_a_slat_of_the_queen_hands_to_cleats_and_beam_under_a_knee() -> None:
    """As above: cleat 571.8 N; far cleat -97 300 / 758.8 = -128.2 N, held down by its screw; beam
    1400 - 571.8 + 128.2 = 956.4 N. Mattress and slat, 0.030 N/mm x 758.8 = 22.8 N a span: 3/8 of
    it, 8.5 N, at each end, 28.5 N on the beam.
    """
    here = queen()
    loads = carried(here)
    slat = int(here.bones.of_role("slat")[6])
    knee = case(loads, "Kneeling on slat 7 from the foot, 379 mm left")
    mine = loads.joints.pieces[:, 0] == here.bones.piece[slat]
    order = np.argsort(loads.joints.at[mine, 0])

    near, beam, far = (loads.joints.force[knee] - loads.joints.force[0])[mine, 2][order]

    # Beam and rails sink by fractions of a millimetre: it is worth a few newtons.
    assert (near, beam, far) == pytest.approx((571.8, 956.4, -128.2), abs=5)
    assert near + beam + far == pytest.approx(1400, abs=1e-3)


def test_the_sag_of_a_slat_of_the_queen_under_both_sleepers() -> None:
    """Under the hips: 44 % of 110 kg, 474.6 N, on 400 x 600 mm. A slat takes 150.8 mm of it:
    179.0 N on 600 mm, 0.2983 N/mm from 77.8 to 677.8 mm from its cleat; and always 0.030 N/mm.

    Both spans alike: over the beam the slat stays level, as on a clamp. The curve R x^3 / 6 -
    w (x - a)^4 / 24 + w (x - b)^4 / 24 + C x is level and at rest at L = 758.8: R = 71.8 N,
    C = -2.827e6 N mm2. At x = 284.6 mm: (275.9e6 - 30.9e6 - 804.5e6) / E I = 559.5e6 / 558.3e6 =
    1.002 mm on supports that stand still (E I = 10 900 x 51 216).

    But the rails sink further than the beam: by D it bends the slat upwards, D (x / 2 L -
    x^3 / 2 L^3) from the straight line between its supports, 0.161 D here; D is read from the
    solved bed, 1.81 mm. That leaves 1.002 - 0.292 = 0.71 mm. Screws hold back one in a hundred.
    """
    here = queen()
    loads = carried(here)
    slat = int(here.bones.of_role("slat")[6])
    curve = loads.curve(int(here.bones.piece[slat]), case(loads, "Both sleepers lying"))
    station = int(np.argmin(np.abs(curve.at - curve.at[0] - 284.6)))
    assert curve.at[station] - curve.at[0] == pytest.approx(284.6, abs=0.1)
    beam = int(np.argmin(np.abs(curve.at - curve.at[0] - 758.8)))
    further = curve.moved[beam, 2] - curve.moved[0, 2]

    by_hand = 1.002 - 0.1611 * further

    assert further == pytest.approx(1.81, abs=0.3)
    assert curve.sag[station] == pytest.approx(by_hand, rel=0.03)


def test_a_plain_rail_of_the_loft_under_its_sleeper() -> None:
    """Half of 110 kg, 539.4 N, on a rail of L = 2025.5 mm, E I = 14 300 x 30 x 160^3 / 12 =
    1.464e11 N mm2: head 43.1 N at 1787.8, chest 178.0 N at 1412.8, hips 237.3 N at 962.8, legs
    80.9 N at 437.8 mm, each b from the nearer end.

    Simply held: P b (3 L^2 - 4 b^2) / 48 E I = 0.018 + 0.168 + 0.280 + 0.058 = 0.523 mm.
    Clamped: P b^2 (3 L - 4 b) / 48 E I = 0.002 + 0.034 + 0.070 + 0.010 = 0.115 mm.
    Two bolts, 80 mm apart, hold the ends by some of that: pulled by 436 N below and pressed by
    291 N above they give 40 x (436 + 291) = 29.1 N m at the foot, 27.7 N m at the head, which take
    off (29 100 + 27 700) / 2 x L^2 / 8 E I = 0.099 mm: 0.424 mm. Slats spread each part of the
    body, which takes a little more off.
    """
    here = loft()
    loads = carried(here)
    rail = int(here.bones.of_role("side rail")[0])
    piece = int(here.bones.piece[rail])
    lying = case(loads, "Sleeper lying")

    sag = float((loads.curve(piece, lying).sag - loads.curve(piece, 0).sag).max())

    assert 0.115 < sag < 0.523
    mine = (loads.joints.pieces[:, 0] == piece) & (loads.joints.pieces[:, 1] >= 0)
    force = (loads.joints.force[lying] - loads.joints.force[0])[mine]
    high, at_foot = loads.joints.at[mine, 2] - 260, loads.joints.at[mine, 1] < 1000
    ends = [abs((force[at_foot == end, 1] * high[at_foot == end]).sum()) for end in (True, False)]
    by_hand = 0.523 - sum(ends) / 2 * 2025.5**2 / (8 * 1.464e11)
    assert ends == pytest.approx([29.1e3, 27.7e3], rel=0.05)
    assert sag == pytest.approx(by_hand, rel=0.04)
    assert force[:, 2].sum() == pytest.approx(539.4, abs=0.1)


def test_a_bearer_under_a_full_drawer() -> None:
    """A drawer of 11.5 kg with 49.2 kg in it: 297.7 N on each of two bearers, along 742.9 of
    755.7 mm, 0.4007 N/mm; the bearer itself 4.2 N, 0.0056 N/mm. Stile and divider hold its ends.

    Stile: R = (297.7 x (755.7 - 742.9 / 2) + 4.2 x 755.7 / 2) / 755.7 = 153.5 N. Greatest moment
    where R = 0.4063 x, at 377.8 mm: 153.5 x 377.8 / 2 = 29.0 N m. Section modulus
    19.05 x 63.5^2 / 6 = 12 802 mm3: 2.26 MPa. Stile and divider lean apart by a
    hair, which pulls with 25 N on 1210 mm2: 0.02 MPa.
    Sag, as if all lay evenly: 5 x 301.9 x 755.7^3 / (384 x 10 900 x 406 470) = 0.383 mm; twisted
    by its roll, and with its load nearer the stile, a little more.
    """
    here = usual(left__drawers=2, right__side="plain", beam="none")
    loads, bearer = carried(here), int(here.bones.of_role("bearer")[0])
    assert here.bones.size[bearer] == pytest.approx((755.65, 63.5, 19.05))
    mine = loads.joints.pieces[:, 0] == here.bones.piece[bearer]

    stile, divider = loads.joints.force[0, mine, 2]

    assert stile + divider == pytest.approx(297.7 + 4.2, abs=0.3)
    assert stile == pytest.approx(153.5, abs=0.3)
    assert stress(here, bearer, 0, FOR_GOOD).max() == pytest.approx(2.28, rel=0.01)
    sag = loads.curve(int(here.bones.piece[bearer]), 0).sag.max()
    assert sag == pytest.approx(0.383, rel=0.03)


def test_a_post_of_the_loft_that_is_leaned_on() -> None:
    """One leans with 200 N, 100 N on each post, 782 mm above the floor: 482 mm above the upper
    bolt of the side rail, above which nothing keeps the post from bending back.

    100 x 482 = 48.2 N m; section modulus 65^3 / 6 = 45 771 mm3: 1.053 MPa. The bed at rest bends
    and presses the post with 0.05 MPa there.
    """
    here = loft()
    loads = carried(here)
    lean = case(loads, "Sleeper leaning")
    assert here.bed["lean_z"] == 782

    for post in here.bones.of_role("post").tolist():
        if here.bounds(post)[0][1] < 1000:
            continue
        curve = loads.curve(int(here.bones.piece[post]), lean)
        upper = int(np.flatnonzero(np.abs(curve.point[:, 2] - 300) < 0.1)[-1])
        bends = stress(here, post, lean, WEEK)[upper] - stress(here, post, 0, FOR_GOOD)[upper]
        assert bends == pytest.approx(1.053, rel=0.02)
        # halfway up it is half as much
        half = int(np.argmin(np.abs(curve.point[:, 2] - 485.2)))
        lever = 782 - curve.point[half, 2]
        assert stress(here, post, lean, WEEK)[half] == pytest.approx(100 * lever / 45771, abs=0.05)


def test_a_fall_onto_a_bare_slat_of_the_loft() -> None:
    """25 kg, 245.2 N, on 200 mm in the middle of L = 893.75 mm, E I = 14 300 x 59 333:
    W (8 L^3 - 4 L c^2 + c^3) / 384 E I = 4.20 mm if the slat took it all. The pad's edge lies
    6.5 mm on the next slat: 89 / 95.5 of it, 3.91 mm. Screws hold the ends back by 6 %, rails sink
    0.1 mm: 3.76 mm.

    The fall: 1 + sqrt(1 + 2 x 180 / 3.76) = 10.84 times 245.2 N = 2658 N.
    """
    here = loft(0.0)
    loads = carried(here)
    last = loads.cases[-1]
    assert last.title.startswith("Dropping onto slat 1 from the foot")

    told = float(last.reason.split("press with ")[1].split(" N")[0])

    assert told == pytest.approx(2658, rel=0.02)
    # what the hand knows for sure: no softer than rails and slat without their screws
    assert told > 245.2 * (1 + (1 + 360 / (3.91 + 0.1)) ** 0.5)
