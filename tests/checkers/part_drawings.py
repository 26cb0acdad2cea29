"""Whether the printed drawing of a part tells how to cut it: every size, every place, sums.

Words are read back as a maker reads them; nothing of how the drawing was made is used.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from model.drawings.paper import Measure, Text
from model.part import Cut, Hole, Part
from model.read_length import parse_length

STEP = {"mm": 0.051, "inch": 25.4 / 128 + 0.001}  # half of the step that sizes are told by
END_WORK = {"tenon cheek", "tenon shoulder", "tongue rabbet"}
_NUMBER = r"(~?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?))"


def lengths_in(words: str, unit: str) -> list[float]:
    """All lengths in a line of words, mm; counts and angles among them do no harm."""
    sign = r'( mm|")' if unit == "inch" else "()"
    found = re.findall(_NUMBER + sign, words)
    return [parse_length(size.lstrip("~") + mark, unit) for size, mark in found]


def untold_cuts(part: Part, items: Sequence[object], unit: str) -> Iterator[str]:
    """Cuts whose kind, depth or extents no words tell."""
    texts = [item.words for item in items if isinstance(item, Text)]
    spans = [size for m in _measures(items) for size in lengths_in(m.words, unit)]
    for cut in part.cuts:
        sizes = _sizes(cut, part)
        if cut.kind in END_WORK:
            missing = [size for size in sizes if not _is_in(size, spans, unit)]
        else:
            told = [words for words in texts if words.find(cut.kind) >= 0]
            near = [lengths_in(_with_next(words, texts), unit) for words in told]
            missing = [] if any(_all_in(sizes, some, unit) for some in near) else sizes
        if missing:
            yield f"{cut.kind} in the {cut.face}: {missing} not told"


def untold_holes(part: Part, items: Sequence[object], unit: str) -> Iterator[str]:
    """Holes whose kind, diameter (of the bit) or depth no words tell."""
    texts = [item.words for item in items if isinstance(item, Text)]
    for hole in part.holes:
        told = [_with_next(words, texts) for words in texts if hole.kind in words]
        through = [w for w in told if "through" in w or "out of the end" in w]
        deep = [w for w in told if _is_in(hole.depth, lengths_in(w, unit), unit)]
        bits = [size for w in told for size in lengths_in(w, unit)]
        # The next bit that is sold: by 0.5 mm or 1/64 in, wide ones by 1 mm or 1/16 in.
        wider = 25.4 / 16 if hole.kind == "counterbore" else 0.51
        has_bit = any(-0.21 <= size - hole.diameter <= wider for size in bits)
        if not has_bit or not (through or deep):
            yield f"{hole.kind} in the {hole.face}: ⌀ {hole.diameter}, {hole.depth} deep not told"


def untold_whole_sizes(part: Part, items: Sequence[object], unit: str) -> Iterator[str]:
    spans = [size for m in _measures(items) for size in lengths_in(m.words, unit)]
    for name, size in zip(("length", "width", "thickness"), part.size, strict=True):
        if not _is_in(size, spans, unit):
            yield f"{name} {size} not told"


def sums_that_fail(items: Sequence[object], unit: str) -> Iterator[str]:
    """Chains whose printed spans do not add up to the printed whole over the same ground."""
    measures = list(_measures(items))
    for whole in measures:
        for row in _rows(measures, whole):
            if _reaches(row, whole) and len(row) > 1:
                parts = sum(first_length(m.words, unit) for m in row)
                if abs(parts - first_length(whole.words, unit)) > 1e-6:
                    yield f"{' + '.join(m.words for m in row)} is not {whole.words}"


def first_length(words: str, unit: str) -> float:
    """What a dimension says: of `13 × 150 = 1950` the sum, of `695 [27 3/8"]` the first."""
    plain = words.partition(" [")[0]
    plain = plain.partition(" = ")[2] or plain
    return parse_length(plain.partition(", each")[0], unit)


def untold_places(part: Part, items: Sequence[object], scale: float) -> Iterator[str]:
    """Near walls of cuts and middles of holes along the part to which no dimension leads."""
    level = [m for m in _measures(items) if not m.upright]
    whole = next(m for m in level if abs(m.size - part.size[0]) < 1e-6)
    zero = whole.start[0]
    stops = {round((at - zero) / scale, 2) for m in level for at in (m.start[0], m.end[0])}
    stops |= {round(place, 2) for m in level for place in _between(m, zero, scale)}
    if any(isinstance(item, Text) and "near end at the right" in item.words for item in items):
        stops = {round(part.size[0] - stop, 2) for stop in stops}
    for name, x in _places_along(part):
        if not any(abs(stop - x) < 0.02 for stop in stops):
            yield f"{name} at {x:.2f} not reached"


def untold_heights(part: Part, items: Sequence[object]) -> Iterator[str]:
    """Near walls of cuts and middles of holes, as far from the lower edge as no dimension tells."""
    told = _sums_along(m for m in _measures(items) if m.upright)
    for cut in part.cuts:
        inside = cut.low[1] > 0.01 and cut.high[1] < part.size[1] - 0.01
        if inside and cut.face.axis != 1 and not any(abs(cut.low[1] - at) < 0.02 for at in told):
            yield f"{cut.kind} {cut.low[1]:.2f} above the lower edge"
    for hole in part.holes:
        if hole.face.axis != 1 and not any(abs(hole.at[1] - at) < 0.02 for at in told):
            yield f"{hole.kind} {hole.at[1]:.2f} above the lower edge"


def untold_depths(part: Part, items: Sequence[object]) -> Iterator[str]:
    """Walls of cuts and middles of holes, as far from the face as no dimension tells."""
    told = _sums_along(m for m in _measures(items) if not m.upright)
    thick = part.size[2]
    for cut in part.cuts:
        inside = cut.low[2] > 0.01 and cut.high[2] < thick - 0.01
        if inside and cut.face.axis != 2 and not _has(thick - cut.high[2], told):
            yield f"{cut.kind} {thick - cut.high[2]:.2f} from the face"
    for hole in part.holes:
        if hole.face.axis != 2 and not _has(thick - hole.at[2], told):
            yield f"{hole.kind} {thick - hole.at[2]:.2f} from the face"


def _has(place: float, told: Iterable[float]) -> bool:
    return any(abs(place - at) < 0.02 for at in told)


def _sums_along(measures: Iterable[Measure]) -> list[float]:
    """What dimensions on one line say, one by one and added up from the first on."""
    lines: dict[tuple[bool, float], list[Measure]] = {}
    for each in measures:
        lines.setdefault((each.upright, each.line), []).append(each)
    found: list[float] = []
    for chained in (each for row in lines.values() for each in _chains(row)):
        for ordered in (chained, chained[::-1]):  # a view from behind counts downwards
            total = 0.0
            for each in ordered:
                found += [total + at for at in _steps(each)]
                total += each.size
                found += [each.size, total]
    return found


def _chains(row: list[Measure]) -> Iterator[list[Measure]]:
    """Dimensions on one line as chains that touch end to end."""
    axis = 1 if row[0].upright else 0
    waiting = sorted(row, key=lambda m: m.start[axis])
    while waiting:
        chain = [waiting.pop(0)]
        while waiting and abs(waiting[0].start[axis] - chain[-1].end[axis]) < 1e-6:
            chain.append(waiting.pop(0))
        yield chain


def _steps(measure: Measure) -> Iterator[float]:
    """How far the steps of `13 × 150 = 1950` lie from its begin."""
    found = re.match(r"(\d+) (?:×|equal)", measure.words)
    if found:
        count = int(found[1])
        yield from (measure.size * k / count for k in range(count))


def _between(measure: Measure, zero: float, scale: float) -> Iterator[float]:
    """The places that `13 × 150 = 1950` steps over."""
    found = re.match(r"(\d+) (?:×|equal)", measure.words)
    if found:
        low, high = ((at - zero) / scale for at in (measure.start[0], measure.end[0]))
        count = int(found[1])
        yield from (low + (high - low) * k / count for k in range(count + 1))


def _places_along(part: Part) -> Iterator[tuple[str, float]]:
    for cut in part.cuts:
        inside = cut.low[0] > 0.01 and cut.high[0] < part.size[0] - 0.01
        if inside and cut.face.axis != 0:
            yield cut.kind, cut.low[0]
    for hole in part.holes:
        follows = hole.kind in ("pocket pilot",) or _is_below_another(hole, part.holes)
        if hole.face.axis != 0 and not follows:
            yield hole.kind, hole.at[0]


def _is_below_another(hole: Hole, holes: Iterable[Hole]) -> bool:
    """Whether a hole goes on where a wider one on its axis ends."""
    return any(
        other is not hole
        and all(
            abs(a + other.depth * way - b) < 0.01
            for a, way, b in zip(other.at, other.toward, hole.at, strict=True)
        )
        for other in holes
    )


def _measures(items: Iterable[object]) -> Iterator[Measure]:
    return (item for item in items if isinstance(item, Measure))


def _sizes(cut: Cut, part: Part) -> list[float]:
    """How far it runs on each axis, as far as that is not from side to side."""
    lows = [max(low, 0.0) for low in cut.low]
    highs = [min(high, size) for high, size in zip(cut.high, part.size, strict=True)]
    return [
        high - low
        for axis, (low, high) in enumerate(zip(lows, highs, strict=True))
        if high - low < part.size[axis] - 0.01
    ]


def _with_next(words: str, texts: Sequence[str]) -> str:
    """A note and the line below it, on which it may go on."""
    at = texts.index(words)
    return " ".join(texts[max(at - 1, 0) : at + 2]) if words.endswith(",") or at else words


def _is_in(size: float, told: Iterable[float], unit: str) -> bool:
    return any(abs(size - each) <= STEP[unit] for each in told)


def _all_in(sizes: Iterable[float], told: Sequence[float], unit: str) -> bool:
    return all(_is_in(size, told, unit) for size in sizes)


def _rows(measures: Sequence[Measure], whole: Measure) -> Iterator[list[Measure]]:
    """The other lines that run the same way, their dimensions in order along them."""
    axis = 1 if whole.upright else 0
    beside = [m for m in measures if m.upright == whole.upright and m.line != whole.line]
    for line in sorted({m.line for m in beside}):
        yield sorted((m for m in beside if m.line == line), key=lambda m: m.start[axis])


def _reaches(row: Sequence[Measure], whole: Measure) -> bool:
    """Whether a row runs without a gap from end to end of another dimension."""
    axis = 1 if whole.upright else 0
    ends = [(m.start[axis], m.end[axis]) for m in row]
    touch = all(abs(a[1] - b[0]) < 1e-6 for a, b in pairwise(ends))
    return (
        touch
        and abs(ends[0][0] - whole.start[axis]) < 1e-6
        and abs(ends[-1][1] - whole.end[axis]) < 1e-6
    )
