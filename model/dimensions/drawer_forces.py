"""What a full drawer asks of its box: loads, spans and how far the bottom sags.

Read for left, right and foot.
"""

from model.dimensions.drawer_load import GRAVITY
from model.materials import Material, StockGrade
from model.materials.panel import panel_plate
from model.mechanics.plate import Bent, bent
from model.rules import rule
from model.units import Count, Kg, KgPerM3, Mm, Mm3, Newton, Pascal, Places, Share

CREEP = 2.0  # sag of a sheet that is always loaded, as a multiple; NDS 2018, 3.5.2, from memory
PA_PER_MPA = 1e6


@rule
def drawer_clothes(
    drawer_fill: KgPerM3,
    drawer_inside_width: Mm,
    drawer_inside_depth: Mm,
    drawer_inside_height: Mm,
) -> Kg:
    """What lies in a full drawer from day to day fills it to the top of its sides.

    Source: 16 CFR 1261: 8.5 lb/ft3 of clothes
    """
    return drawer_fill * drawer_inside_width * drawer_inside_depth * drawer_inside_height / 1e9


@rule
def bottom_own_load(bottom_sheet: Material, bottom_thickness: Mm) -> Pascal:
    """The bottom bends under its own weight too."""
    return bottom_sheet.density_kg_m3 * GRAVITY * bottom_thickness / 1000


@rule
def bottom_lasting_load(
    drawer_fill: KgPerM3, drawer_inside_height: Mm, bottom_own_load: Pascal
) -> Pascal:
    """What lies on the bottom from day to day: the drawer filled to the top of its sides."""
    return drawer_fill * GRAVITY * drawer_inside_height / 1000 + bottom_own_load


@rule
def bottom_test_load(drawer_floor_load: Pascal, bottom_own_load: Pascal) -> Pascal:
    """What drawers are tested with, and the bottom's own weight.

    Source: ANSI/KCMA A161.1: 15 lb/ft2 (718 Pa) on the bottom
    """
    return drawer_floor_load + bottom_own_load


@rule
def bottom_held(bottom_groove_depth: Mm, bottom_across_room: Mm) -> Mm:
    """How deep the bottom sits in its grooves, when it lies in their middle."""
    return bottom_groove_depth - bottom_across_room


@rule
def bottom_field_across(drawer_inside_width: Mm, has_centre_runner: bool, bottom_held: Mm) -> Mm:
    """Between the middles of the bottom's bearings; a centre runner's shoe halves it."""
    return (drawer_inside_width + bottom_held) / (2 if has_centre_runner else 1)


@rule
def bottom_field_along(drawer_inside_depth: Mm, bottom_held: Mm) -> Mm:
    """Between the middles of the bearings in box front and back."""
    return drawer_inside_depth + bottom_held


@rule
def bottom_field_short(bottom_field_across: Mm, bottom_field_along: Mm) -> Mm:
    """The short way is the one that carries most."""
    return min(bottom_field_across, bottom_field_along)


@rule
def bottom_bends(
    bottom_sheet: Material,
    stock_grade: StockGrade,
    bottom_thickness: Mm,
    bottom_field_across: Mm,
    bottom_field_along: Mm,
    drawer_count: Count,
) -> Bent:
    """The bottom is a plate that rests on four edges; this is how it bends under 1 Pa.

    Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, Navier's series
    """
    if not drawer_count:
        return Bent(0.0, 0.0, 0.0)
    plate = panel_plate(bottom_sheet, float(bottom_thickness), stock_grade.key)
    return bent(plate, float(bottom_field_across), float(bottom_field_along), 1 / PA_PER_MPA)


@rule
def bottom_sag(bottom_bends: Bent, bottom_test_load: Pascal, bottom_lasting_load: Pascal) -> Mm:
    """The bottom sags under its test load, or sags on under what lies in it for years.

    Source: ANSI/KCMA A161.1; creep, twice the first sag: NDS 2018, 3.5.2, from memory
    """
    return bottom_bends.sag * max(bottom_test_load, CREEP * bottom_lasting_load)


@rule
def bottom_sag_room(bottom_up: Mm, box_bottom_room: Mm) -> Mm:
    """A bottom sags free until it meets what the box runs over."""
    return bottom_up + box_bottom_room


@rule
def jerk_force(drawer_contents: Kg, drawer_jerk: Share) -> Newton:
    """What lies in a drawer runs on as the drawer is stopped, and pushes at its front or back.

    Source: an assumption: no publication gives it
    """
    return drawer_contents * GRAVITY * drawer_jerk


@rule
def box_overhang(
    is_side_mount: bool,
    has_skids: bool,
    slide_screw_spots: Places,
    box_depth: Mm,
    travel: Mm,
    drawer_count: Count,
) -> Mm:
    """How far a box side reaches past what carries it: past its slide's last screw behind, or
    out of its runner when it is open.
    """
    if not drawer_count or has_skids:
        return 0.0
    return max(0.0, box_depth - slide_screw_spots[-1]) if is_side_mount else travel


@rule
def box_side_modulus(box_thickness: Mm, bottom_groove_depth: Mm, box_height: Mm) -> Mm3:
    """A box side on edge bends as a beam as thick as its groove leaves it."""
    return (box_thickness - bottom_groove_depth) * box_height**2 / 6
