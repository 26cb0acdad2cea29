"""The ink of a long view: edges, holes, and the signs of datums and of sections."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.drawings.letters import words_width
from model.drawings.paper import Item, Pen, Point, Stroke, Text
from model.drawings.part_sheet.block import datum
from model.drawings.part_sheet.edges import Edges, Line
from model.drawings.part_sheet.holes import hole_ink
from model.drawings.part_sheet.record import HAIR
from model.drawings.part_sheet.shown import Shown
from model.units import Mm

SPECK: Mm = 2.0  # on paper: a dash is 3 mm long, a shorter hidden line would be a mere speck
_CUT_MARK: tuple[Mm, Mm] = (0.8, 2.6)  # from the outline, of the sign where a section is cut
_LETTER: Mm = 1.9  # height of its capital
_PAST: Mm = 2.0  # of a centre line beyond the outline


def edge_ink(shown: Shown, found: Edges) -> Iterator[Item]:
    """Edges, holes, and the centre line of a round bar."""
    for line in found.hidden:
        if (line[2] - line[0] + line[3] - line[1]) * shown.scale > SPECK:
            yield _stroke(shown, line, "hidden")
    for line in found.seen:
        yield _stroke(shown, line, "wide")
    yield from hole_ink(shown.part, shown.look, shown.scale)
    if shown.part.is_round:
        wide, high = shown.size
        yield Stroke(((-_PAST, high / 2), (wide + _PAST, high / 2)), "centre")


def datum_signs(shown: Shown) -> Iterator[Item]:
    """Triangles on the near end, and on the lower edge where heights are measured from it."""
    if not shown.part.cuts and not shown.part.holes:
        return
    wide, high = shown.size
    near, way = (wide, 1.0) if shown.look.is_turned else (0.0, -1.0)
    yield datum((near, high / 2), (way, 0.0))
    if shown.is_wide:
        y, out = (0.0, -1.0) if shown.look.up_sign > 0 else (high, 1.0)
        yield datum((near - way * min(5.0, wide / 4), y), (0.0, out))


def section_signs(shown: Shown, taken: Sequence[Mm]) -> Iterator[Item]:
    """Where sections are cut: a stroke outside the outline with its letter, clear of the leading
    lines that start at the places `taken`.
    """
    near, far = _CUT_MARK
    if shown.detail:
        wide, middle = shown.size[0], shown.size[1] / 2
        yield Stroke(((wide + near, middle), (wide + far, middle)), "wide")
        yield Text((wide + far + 1.4, middle), shown.detail, _LETTER, bold=True)
    cuts = [(letter, shown.paper(x, 0.0)[0]) for letter, x in shown.cuts]
    lines = [*taken, *(at for _, at in cuts)]
    for letter, at in cuts:
        half = words_width(letter, _LETTER, True) / 2
        yield Stroke(((at, -near), (at, -far)), "wide")
        spot = _clear_spot(at, half + 0.4, lines)
        lines += [spot - half, spot, spot + half]
        yield Text((spot, -far), letter, _LETTER, bold=True)


def _clear_spot(at: Mm, half: Mm, lines: Sequence[Mm]) -> Mm:
    """The place nearest to `at` that is clear of lines so far on both sides."""
    spots = (at + way * 0.2 * k for k in range(60) for way in (1, -1))
    return next((s for s in spots if all(abs(s - line) >= half for line in lines)), at)


# ---------------------------------------------------------------- tapers


def _stroke(shown: Shown, line: Line, pen: Pen) -> Stroke:
    points: list[Point] = [(line[0], line[1]), (line[2], line[3])]
    if shown.part.taper:
        points = _turned(shown, _tapered(shown, _turned(shown, points)))
    return Stroke(tuple((x * shown.scale, y * shown.scale) for x, y in points), pen)


def _turned(shown: Shown, points: list[Point]) -> list[Point]:
    """Along the part from the near end, wherever that lies; and back again."""
    long = shown.part.size[0]
    return [(long - x, y) for x, y in reversed(points)] if shown.look.is_turned else points


def _tapered(shown: Shown, points: list[Point]) -> list[Point]:
    """Lines bend where a taper begins."""
    (x0, y0), (x1, _) = points
    bend = shown.part.taper_length
    if x0 < bend - HAIR and x1 > bend + HAIR:
        points.insert(1, (bend, y0))
    return [_drawn_in(shown, point) for point in points]


def _drawn_in(shown: Shown, point: Point) -> Point:
    x, y = point
    half = shown.look.height(shown.part.size) / 2
    share = max(0.0, 1 - x / shown.part.taper_length) * shown.part.taper / half
    return (x, half + (y - half) * (1 - share))
