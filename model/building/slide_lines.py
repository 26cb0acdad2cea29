"""Where the screws of bought slides go: on one line of a part, through the holes of the slide."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from model.building.said import Shop
from model.cost.sizes import at_least

_NONE = "through its own holes, three to a member, near its ends and its middle"


def slide_lines(
    shop: Shop, bought: Sequence[int], host_of: Callable[[int], int | None]
) -> Iterator[str]:
    """On which line of its part the screws of each kind of slide lie, and how far they keep from an
    end where brackets have theirs. Holes differ from slide to slide; the line does not.
    """
    told: dict[tuple[str, str], list[int]] = {}
    for piece in bought:
        host = host_of(piece)
        if shop.words.name(piece).startswith("slide") and host is not None:
            edge = shop.where.sides(host)[2][0]
            middle = (shop.where.low(piece, 2) + shop.where.high(piece, 2)) / 2
            up = shop.words.size(middle - shop.where.low(host, 2))
            line = f"{up} from the {edge} of {{}}{_behind_bracket(shop, piece, host)}"
            told.setdefault((shop.words.name(piece), line), []).append(host)
    for (name, line), hosts in told.items():
        yield (
            f"The screws of the {name} lie on a line {line.format(shop.words.marks(hosts))}. Drive "
            f"them {_NONE}: where these are differs from slide to slide."
        )


def _behind_bracket(shop: Shop, piece: int, host: int) -> str:
    bed, joined = shop.bed, shop.joined
    row = joined.pieces.made_by(piece)[0].partition(".")[0]
    if joined.rule(host) != "bearers" or not bed["bracket_drop"]:
        return ""
    clear = float(bed[f"{row}.slide_screw_behind"] - bed[f"{row}.bearer_end_gap"])
    return f", none nearer than {at_least(clear, shop.words.unit)} to an end, where brackets are"
