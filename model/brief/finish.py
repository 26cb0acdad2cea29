"""What the maker says of sanding and finish, and of what is bought more than the bed takes."""

from typing import Literal

from model.brief.declare import count, number, option
from model.units import Count, Percent

Finish = Literal["painted", "clear", "oil", "none"]
Surfaces = Literal["what shows", "what shows and drawer boxes", "all wood"]
Grit = Literal["120", "150", "180", "220"]


class Finishing:
    """Sanding and finish"""

    finish: Finish = option("clear", help="What the wood gets: paint, clear coats, oil or nothing.")
    finished: Surfaces = option("what shows", help="Which surfaces get it; they are sanded too.")
    primer_coats: Count = count(
        1, least=0, most=3, why_least="Paint goes on bare wood.", why_most="More hides no more.",
        help="Coats of stain-blocking primer below paint.",
    )  # fmt: skip
    sealer_coats: Count = count(
        2, least=0, most=4, why_least="Fibreboard drinks the primer.",
        why_most="More seals no better.",
        help="Coats of sealer on fibreboard, before anything else.",
    )  # fmt: skip
    finish_coats: Count = count(
        2, least=1, most=6, why_least="One coat is the least.",
        why_most="More is a lacquer shop's.",
        help="Coats of paint, clear finish or oil.",
    )  # fmt: skip
    finish_loss: Percent = number(
        10, least=0, most=70, why_least="Nothing is left in brush and can.",
        why_most="More goes past the work than on it.",
        help="What stays in brush, roller and can; sprayed 30 to 60 %.",
    )  # fmt: skip
    sanded_to: Grit = option("150", help="The last grit before the finish.")


class Spares:
    """What is bought to spare"""

    spare_screws: Percent = number(
        10, least=0, most=100, why_least="None may be lost or stripped.",
        why_most="Twice the screws is another bed.",
        help="Screws, dowels and pins beyond the count.",
    )  # fmt: skip
    glue_loss: Percent = number(
        30, least=0, most=200, why_least="Nothing is squeezed out.",
        why_most="More runs off than holds.",
        help="Glue that is squeezed out, or dries in the bottle.",
    )  # fmt: skip
