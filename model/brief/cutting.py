"""What the maker says of milling, sawing, and what boards and sheets are bought."""

from typing import Literal

from model.brief.declare import count, flag, length, number, option, row_of
from model.materials.lumber_grade import LumberGrade, lumber_grades
from model.units import Count, Kg, Mm, Share

BoardsFrom = Literal["board foot", "rack", "sold sizes"]
PlanPrefers = Literal["few settings", "large offcut"]
SheetsFrom = Literal["first size", "all sizes"]


class Milling:
    """Rough sizes"""

    rough_length_more: Mm = length(
        25.4, least=0, most=100, label="More length", why_least="Ends are left as they are sawn.",
        why_most="More is another part.",
        help="Rough length over finished: snipe and a square first cut; 25 to 38 mm is common.",
    )  # fmt: skip
    rough_width_more: Mm = length(
        12.7, least=0, most=50, label="More width", why_least="Edges are left as they are sawn.",
        why_most="More is another part.",
        help="Rough width over finished: two jointed edges and one rip; 13 mm is common.",
    )  # fmt: skip
    board_end_trim: Mm = length(
        25.4, least=0, most=300, why_least="Board ends are clean.", why_most="More is a bad span.",
        help="What is cut off each end of a rough board: checks, paint and snipe.",
    )  # fmt: skip
    widest_board: Mm = length(
        228.6, least=75, most=900, why_least="Narrower boards are strips.",
        why_most="No yard has wider boards.",
        help="A part whose rough width is more than this is glued up from strips.",
    )  # fmt: skip
    widest_strip: Mm = length(
        152.4, least=40, most=300, why_least="Narrower strips are all joints.",
        why_most="Wider strips cup.",
        help="No strip of a glued-up part is wider than this when it is jointed.",
    )  # fmt: skip
    shortest_milled: Mm = length(
        300, least=0, most=900, why_least="Your planer takes any length.",
        why_most="Most parts are shorter.",
        help=(
            "Shorter pieces are milled as one long piece and cut apart after. The makers of your "
            "jointer and planer say how short is safe: follow the longer of theirs."
        ),
    )  # fmt: skip
    match_fronts: bool = flag(
        True, help="Fronts of one row are cut end to end from one board, so that the grain runs on."
    )


class Sawing:
    """Sawing"""

    kerf: Mm = length(
        3.175, least=0.5, most=8, why_least="No blade is thinner.", why_most="No blade is thicker.",
        help="What the blade takes: make a cut in scrap and measure the groove.",
    )  # fmt: skip
    sheet_trim_long: Mm = length(
        6.35, least=0, most=50, label="Trim of a sheet's long edge", why_least="Edges are clean.",
        why_most="More is a bad sheet.",
        help="Cut off one long edge of a sheet first, to have a straight and clean one.",
    )  # fmt: skip
    sheet_trim_short: Mm = length(
        6.35, least=0, most=50, label="Trim of a sheet's short edge", why_least="Edges are clean.",
        why_most="More is a bad sheet.",
        help="Cut off one short edge of a sheet first, to have one that is square to the long.",
    )  # fmt: skip
    first_cut_share: Share = number(
        0.5, least=0.1, most=1, why_least="No cut leaves less of a sheet.",
        why_most="The saw takes a whole sheet.",
        help="Largest share of a sheet that a first cut should leave in one piece.",
    )  # fmt: skip
    first_cut_kg: Kg = number(
        20, least=5, most=80, label="Heaviest piece after a first cut",
        why_least="Every sheet is heavier.", why_most="Heavier than the heaviest sheet.",
        help="What you can handle on your own. Support long sheets, and get help with heavy ones.",
    )  # fmt: skip
    least_offcut: Mm = length(
        150, least=20, most=1200, why_least="Narrower is kindling.", why_most="Wider is a sheet.",
        label="Least offcut of a sheet",
        help="An offcut of a sheet is worth keeping when its shorter side is at least this.",
    )  # fmt: skip
    least_board_offcut: Mm = length(
        65, least=20, most=600, why_least="Narrower is kindling.", why_most="Wider is a board.",
        label="Least offcut of a board",
        help="What is left of a board is worth keeping when its shorter side is at least this.",
    )  # fmt: skip
    plan_prefers: PlanPrefers = option(
        "few settings",
        label="Of plans that cost the same",
        help="Take the one with fewer settings of fence and stop, or with the larger offcut.",
    )
    strips_only: bool = flag(
        False, help="Only rip sheets into strips and crosscut these: easy to follow, more waste."
    )


class Buying:
    """Boards and sheets"""

    boards_from: BoardsFrom = option(
        "board foot",
        help=(
            "Random widths bought by the board foot; the rack that you typed in; or the sizes that "
            "your yard sells. What rack or list lacks is reckoned by the board foot."
        ),
    )
    lumber_grade: LumberGrade = row_of(
        lumber_grades, "fas", help="How much of a board bought by the board foot is clear."
    )
    yard_shortest: Mm = length(
        1828.8, least=600, most=3000, label="Shortest board of a yard",
        why_least="Shorter boards are offcuts.", why_most="Hardly any yard sorts out so much.",
        help="Where boards are drawn at random: how short the shortest are.",
    )  # fmt: skip
    yard_longest: Mm = length(
        3657.6, least=1200, most=6100, label="Longest board of a yard",
        why_least="Every yard has longer ones.", why_most="No truck brings longer ones.",
        help="Where boards are drawn at random: how long the longest are.",
    )  # fmt: skip
    yard_narrowest: Mm = length(
        101.6, least=50, most=250, label="Narrowest board of a yard",
        why_least="Narrower is a strip.", why_most="Hardly any yard sorts out so much.",
        help="Where boards are drawn at random: how narrow the narrowest are.",
    )  # fmt: skip
    yard_usual_width: Mm = length(
        165.1, least=60, most=400, label="Usual width of a yard's boards",
        why_least="Every yard has wider ones.", why_most="No yard has mostly wide boards.",
        help="Where boards are drawn at random: the width that most of them come near.",
    )  # fmt: skip
    yard_widest: Mm = length(
        254, least=100, most=600, label="Widest board of a yard",
        why_least="Every yard has wider ones.", why_most="Hardly any tree gives wider ones.",
        help="Where boards are drawn at random: how wide the widest are.",
    )  # fmt: skip
    racks_tried: Count = count(
        20, least=5, most=500, why_least="Fewer tell nothing.", why_most="More take an hour.",
        help="How many racks are drawn at random to tell how much lumber to ask for.",
    )  # fmt: skip
    sheets_from: SheetsFrom = option(
        "first size",
        label="Sheets are bought in",
        help="The first size that the table of sheets has for a material, or any that it has.",
    )
