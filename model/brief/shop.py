"""What the maker says of the shop: its grid, its unit, its woods."""

from typing import Literal

from model.brief.declare import length, material_of, measured, option, row_of
from model.materials import Material, StockGrade, stock_grades
from model.units import GRIDS, Measured, Mm, ShopGrid

ShownUnit = Literal["mm", "inch"]


class Shop:
    """Shop and stock"""

    grid: ShopGrid = row_of(lambda: GRIDS, "1/16 in", help="The step that sizes are cut to.")
    shown_unit: ShownUnit = option("inch", help="How lengths are shown and read.")
    frame_wood: Material = material_of("red_maple", help="Posts, rails, stiles and cleats.")
    stock_grade: StockGrade = row_of(
        stock_grades, "clear", help="How sound the boards are that you pick, for all solid parts."
    )
    frame_stock: Mm = length(
        25.4, least=15, most=60, slider=True, why_least="Thinner stock takes no bed connector.",
        why_most="Thicker stock is a beam.",
        help="Finished thickness of rails, stiles and face frames.",
    )  # fmt: skip
    frame_stock_measured: Measured = measured("the frame stock", least=12, most=65)
    eased_edge: Mm = length(
        1.5875, least=0, most=6, why_least="Edges are left sharp.", why_most="More is a moulding.",
        help="Radius to which the edges that hands meet are eased.",
    )  # fmt: skip
