"""Do the corners of a drawer box hold, and its sides? Asked of every row."""

from dataclasses import replace

from model.checks.record import Finding, at_most, check
from model.checks.strength.box_corner import Corner, pocket_screws
from model.checks.strength.drawer_weights import drawer_weight
from model.dimensions.drawer_load import GRAVITY
from model.materials import Allowed, Material, StockGrade
from model.materials.row_allowable import allowed_of
from model.parts.box_corners import BoxMake
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Count, Kg, Mm, Mm3, Newton


@check(
    "strength",
    "Corners of the box hold when it is pulled or pushed hard",
    source=(
        "the force: an assumption, yours to change (drawer jerk); screws: NDS 2018, 12.3.1; glue "
        "as strong as the wood beside it, end grain not at all: Wood Handbook 2021, chapter 10, "
        "from memory"
    ),
    remedies=("box_joint", "box_stock", "box_sheet"),
)
def corners_hold(
    drawer_count: Count,
    box_make: BoxMake,
    box_sheet: Material,
    stock_grade: StockGrade,
    box_height: Mm,
    jerk_force: Newton,
    screw_points: tuple[ScrewPoint, ...],
    row_name: str,
) -> Finding | None:
    """As a full drawer is stopped, all that lies in it pushes at its front, or at its back."""
    if not drawer_count:
        return None
    sheet = allowed_of(box_sheet, stock_grade.key)
    front = _front_corner(box_make, sheet, box_height, screw_points, row_name)
    back = _back_corner(box_make, sheet, box_height, screw_points, row_name)
    end, (holds, by) = min((("front", front.holds()), ("back", back.holds())), key=_holds)
    return replace(
        at_most(jerk_force / 2, holds, tight=holds / 10, unit="N"),
        reason=(
            f"As a full drawer is stopped, what lies in it pushes at its {end} with "
            f"{jerk_force:.0f} N; each corner bears half of that by {by}"
            + (
                ", but glued end grain counts for nothing: pin or dovetail it."
                if not holds
                else "."
            )
        ),
    )


def _holds(corner: tuple[str, tuple[Newton, str]]) -> Newton:
    return corner[1][0]


def _front_corner(
    make: BoxMake, sheet: Allowed, height: Mm, points: tuple[ScrewPoint, ...], row: str
) -> Corner:
    """The front's end stands in a rabbet where the back stands in a dado."""
    groove = make.groove[1] - make.groove[0]
    return Corner(
        joint="rabbet" if make.joint == "dado" else make.joint, sheet=sheet,
        thickness=make.thickness, height=height - groove, cheeks=max(len(make.fingers) - 1, 0),
        screws=pocket_screws(points, f"{row}.box_fronts"),
    )  # fmt: skip


def _back_corner(
    make: BoxMake, sheet: Allowed, height: Mm, points: tuple[ScrewPoint, ...], row: str
) -> Corner:
    groove = make.groove[1] - make.groove[0] if make.bottom_fit == "groove" else make.back_up
    above = sum(1 for low, high in make.fingers if high > make.back_up)
    return Corner(
        joint=make.joint, sheet=sheet, thickness=make.thickness, height=height - groove,
        behind=make.set_in, cheeks=max(above - 1, 0),
        screws=pocket_screws(points, f"{row}.box_backs"),
    )  # fmt: skip


@check(
    "strength",
    "Box sides reach past what carries them",
    source="beam with an overhang; edgewise a sheet bears half of its bending strength: assumed",
    remedies=("box_stock", "rear_support", "depth"),
)
def sides_reach(
    drawer_count: Count,
    box_overhang: Mm,
    box_depth: Mm,
    box_side_modulus: Mm3,
    drawer_contents: Kg,
    pieces: Pieces,
    masses: Floats,
    row_name: str,
    box_sheet: Material,
    stock_grade: StockGrade,
) -> Finding | None:
    """Where a box is longer than its slide, or stands out of its runner, its sides are beams."""
    if not drawer_count or not box_overhang:
        return None
    weight = (drawer_weight(pieces, masses, row_name) + drawer_contents) * GRAVITY
    along = weight / 2 / box_depth  # N for each mm of one side
    sheet = allowed_of(box_sheet, stock_grade.key)
    edgewise = sheet.bending_mpa if sheet.product == "solid" else sheet.along_mpa
    limit = edgewise * sheet.lasting("permanent")
    stress = along * box_overhang**2 / 2 / box_side_modulus
    return at_most(stress, limit, tight=limit / 10, unit="MPa")
