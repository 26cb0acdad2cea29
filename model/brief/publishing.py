"""How the plan set is laid out: its paper, its sizes and how its views stand to each other."""

from typing import Literal

from model.brief.declare import option

PaperSize = Literal["Letter", "A4"]
SizesIn = Literal["as shown", "mm and inches"]
ViewsStand = Literal["third angle", "first angle"]


class Publishing:
    """Plan set"""

    paper: PaperSize = option("Letter", help="The paper that the plan set is laid out for.")
    sizes_in: SizesIn = option(
        "as shown",
        help="Sizes in the plan set: as everywhere, or in both units for readers elsewhere.",
    )
    views_stand: ViewsStand = option(
        "third angle",
        help=(
            "Third angle: the view from the left stands at the left, as in America. First angle: "
            "it stands at the right, as in Europe (ISO 5456-2, from memory)."
        ),
    )
