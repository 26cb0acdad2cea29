"""A joint drawn large into its cell of the page: caption, marks, dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.record import Box
from model.drawings.dimensioning.notes import Note, notes_above
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run
from model.drawings.dimensioning.told import Told
from model.drawings.letters import text_box
from model.drawings.moved import around, moved, together
from model.drawings.paper import Item, Text
from model.drawings.scales import scale_words, scales
from model.drawings.views.on_paper import on_paper
from model.planset.details.fasteners import drawn
from model.planset.details.kinds import joined
from model.planset.details.shots import Shot, Shown, shown
from model.planset.details.sizes import chains, inside
from model.planset.elevations import told_by
from model.planset.letters import BODY, SMALL, leading, wrapped
from model.planset.page import Link
from model.planset.plate import SIDES, Chain
from model.planset.setting import Setting
from model.units import Mm, Share

FIRST: Mm = 6.0  # from the view to its first dimension
LINES = 3  # of a caption, below its title
BELOW: Mm = 2.0  # between a caption and what it is of


def picture(setting: Setting, shot: Shot, cell: Box) -> tuple[list[Item], list[Link]]:
    """A joint at the largest scale that its cell has room for."""
    told = told_by(setting)
    seen = shown(joined(setting), shot)
    wide = cell.x1 - cell.x0
    of_marks = wrapped(pairs_words(shot.kind.pairs), wide, SMALL)[:LINES]
    head = leading(BODY) + len(of_marks) * leading(SMALL) + BELOW
    found = list(chains(seen.view, *_rows_of(seen, shot), seen.bars, seen.pieces))
    for scale in scales(told.unit):
        items, box = _plate(setting, seen, found, told, scale, wide)
        if box.x1 - box.x0 <= wide and box.y1 - box.y0 <= cell.y1 - cell.y0 - head:
            break
    x = (cell.x0 + cell.x1 - box.x0 - box.x1) / 2
    y = cell.y1 - head - box.y1
    placed = [moved(item, x, y) for item in items]
    caption = list(_caption(_title(setting, shot), shot, of_marks, scale, cell))
    return [*caption, *placed], list(_links(placed, setting))


def pairs_words(pairs: Sequence[tuple[str, str]]) -> str:
    """`F3, H3 in F1, F2, H1, H2`: marks that meet the same ones together."""
    by_ones: dict[tuple[str, ...], list[str]] = {}
    ones: dict[str, list[str]] = {}
    for one, other in pairs:
        ones.setdefault(one, []).append(other)
    for one, others in ones.items():
        by_ones.setdefault(tuple(others), []).append(one)
    return "; ".join(f"{', '.join(a)} to {', '.join(b)}" for b, a in by_ones.items())


def _title(setting: Setting, shot: Shot) -> str:
    """`Mortise and tenon: end rail to post`."""
    one, other = (joined(setting).part(each).name for each in (shot.kind.one, shot.kind.other))
    return f"{shot.kind.title}: {one} to {other}"


def _rows_of(seen: Shown, shot: Shot) -> tuple[list[int], list[int]]:
    main = [seen.pieces.index(each) for each in (shot.kind.one, shot.kind.other)]
    return main, [row for row in range(len(seen.pieces)) if row not in main]


def _caption(title: str, shot: Shot, of_marks: Sequence[str], scale: Share, cell: Box) -> Iterator[Text]:
    y = cell.y1 - leading(BODY) / 2
    yield Text((cell.x0, y), title, BODY, "left", bold=True)
    words = f"{shot.words}  {scale_words(scale)}"
    yield Text((cell.x1, y), words, SMALL, "right")
    y -= (leading(BODY) + leading(SMALL)) / 2
    for line in of_marks:
        yield Text((cell.x0, y), line, SMALL, "left")
        y -= leading(SMALL)


# ---------------------------------------------------------------- the drawing


def _plate(
    setting: Setting, seen: Shown, found: Sequence[Chain], told: Told, scale: Share, wide: Mm
) -> tuple[list[Item], Box]:
    """Everything at a scale, the view's (0, 0) at the paper's, and the room it takes."""
    view = Box(*(side * scale for side in seen.view.box))
    items = list(on_paper(seen.view, scale, (0.0, 0.0)))
    for bar in seen.bars:
        if bar.is_screw:
            items += drawn(bar, seen.view.gaze, scale, view)
    boxes = [view]
    words: list[Box] = []
    for side in SIDES:
        runs = [_run(chain, told, scale) for chain in found if chain.side == side]
        if runs:
            laid = rows(view, side, runs, FIRST, words)
            items += laid.items
            words += laid.words
            boxes.append(laid.box)
    box = together(boxes)
    spare = max(0.0, wide - (box.x1 - box.x0)) / 2
    notes = notes_above(list(_notes(setting, seen, told, scale)), view,
                        box.x0 - spare, box.x1 + spare,
                        [word for word in words if word.y1 > view.y1])  # fmt: skip
    items += notes.items
    return items, together([box, around(notes.items) or box])


def _run(chain: Chain, told: Told, scale: Share) -> Run:
    points = tuple((x * scale, y * scale) for x, y in chain.points)
    return Run(points, chain.sizes(), told.row(chain.sizes()), chain.level)


def _notes(setting: Setting, seen: Shown, told: Told, scale: Share) -> Iterator[Note]:
    """The name of each piece that is cut, and of what holds them together."""
    all_of = joined(setting)
    done: set[str] = set()
    for section in sorted(seen.view.sections, key=lambda each: -_area(each.outline)):
        piece = seen.pieces[section.piece]
        mark = all_of.mark_of.get(piece, "")
        words = f"{mark} {all_of.part(piece).name}".strip()
        if words not in done:
            done.add(words)
            x, y = inside(section)
            yield Note((x * scale, y * scale), words, mark)
    for bar in seen.bars:
        if bar.is_screw:
            words = f"{bar.kind} × {told.size(bar.length)}"
            x, y = seen.view.gaze.flat((bar.start + 0.3 * (bar.end - bar.start))).tolist()
            box = seen.view.box
            if words not in done and box.x0 < x < box.x1 and box.y0 < y < box.y1:
                done.add(words)
                yield Note((x * scale, y * scale), words)


def _area(loop: object) -> float:
    x, y = loop.T  # type: ignore[attr-defined]
    return float((x.max() - x.min()) * (y.max() - y.min()))


def _links(items: Sequence[Item], setting: Setting) -> Iterator[Link]:
    """From the marks on a drawing to their pages."""
    marks = {mark.mark for mark in setting.bed.marks}
    for item in items:
        if isinstance(item, Text) and item.about in marks:
            yield Link(text_box(item), f"part/{item.about}")
