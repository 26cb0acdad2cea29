"""What the maker says of the house: how dry and how damp its air gets over the year."""

from typing import Literal

from model.brief.declare import number, option
from model.units import Celsius, Percent

BoardCut = Literal["flat-sawn", "quarter-sawn"]


class House:
    """House and wood's moisture"""

    driest_air: Percent = number(
        30, least=5, most=95, why_least="Drier air than any table covers.",
        why_most="Damper air than any table covers.",
        help="Relative humidity of the room in its driest weeks, by a hygrometer; "
        "heated rooms in winter 25 to 35 %.",
    )  # fmt: skip
    driest_air_warmth: Celsius = number(
        21, least=0, most=45, why_least="Colder is a shed.", why_most="Hotter is a kiln.",
        help="How warm the room is in its driest weeks.",
    )  # fmt: skip
    dampest_air: Percent = number(
        55, least=5, most=95, why_least="Drier air than any table covers.",
        why_most="Damper air than any table covers.",
        help="Relative humidity of the room in its dampest weeks; "
        "damp houses and seaside summers 70 % and more.",
    )  # fmt: skip
    dampest_air_warmth: Celsius = number(
        22, least=0, most=45, why_least="Colder is a shed.", why_most="Hotter is a kiln.",
        help="How warm the room is in its dampest weeks.",
    )  # fmt: skip
    bench_moisture: Percent = number(
        8, least=3, most=20, why_least="Drier than a kiln leaves it.",
        why_most="Wetter wood is not built with: let it dry.",
        help="Moisture of the wood when it is cut, by a meter; kiln-dried 6 to 9 %, "
        "air-dried 12 to 15 %.",
    )  # fmt: skip
    board_cut: BoardCut = option(
        "flat-sawn",
        help="Which boards you pick: flat-sawn move about twice as much across their width.",
    )
