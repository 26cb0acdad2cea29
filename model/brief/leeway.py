"""What may be turned so that a check holds, and in which steps.

What the client asked for is never turned, nor what was measured, nor who sleeps in the bed, what it
is loaded with and where it stands: a bed that holds because nobody sleeps in it is no remedy.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, NamedTuple

from model.brief import all_choices, deck, drawers, ends, heights, posts, shop, sides
from model.brief.declare import Choice, choices_of
from model.errors import CannotBuild
from model.materials import Material, OwnRows, lumber, rough_stock
from model.materials.own import NONE
from model.units import GRIDS, INCH, Mm, ShopGrid

# The topics of the workshop. A topic that is not listed is the client's, the house's or the room's.
WORKSHOP: tuple[type, ...] = (
    heights.Heights, sides.SideFrames, drawers.Slides, drawers.Boxes, drawers.Fronts, deck.Deck,
    deck.CleatScrews, deck.Beam, posts.Posts, ends.End, ends.Ends, shop.Shop,
)  # fmt: skip
# Of the topics above, what the client asked for, and how the maker measures and reads.
ASKED_FOR = {
    *("height_from", "wished_sleeping_height", "head.style", "foot.style"),
    *("front_style", "front_fit", "grid", "shown_unit"),
}
# Of the client's topics, what the workshop decides.
DECIDED = {
    *("side_fit", "end_fit", "left.depth", "right.depth", "foot.depth"),
    *("slide_length", "board_cut", "joint_play"),
}

# The material that each thickness is a thickness of. Where it is a sheet for one purpose, the sheet
# brings its thickness; a wood serves several, each with a thickness of its own.
SHEET_OF = {
    **{"box_stock": "box_sheet", "bottom_stock": "bottom_sheet", "deck_stock": "deck_sheet"},
    **{"front_stock": "front_material", "front_panel_stock": "front_panel_material"},
    "panel_stock": "panel_material",
}
MATERIAL_OF = SHEET_OF | {
    **dict.fromkeys(
        ("frame_stock", "cleat_stock", "head.cap_thickness", "foot.cap_thickness"), "frame_wood"
    ),
    **dict.fromkeys(("slat_stock", "beam_stock"), "slat_wood"),
    **dict.fromkeys(("bearer_stock", "divider_stock", "runner_stock"), "bearer_wood"),
}

STEPS_LEAST = 8  # a choice whose range is narrower than this many steps goes on finer ones
SAME_THICKNESS: Mm = 1.0  # sheets this near in thickness are sold in place of each other
DRESSED = ("surfaced two sides, least", "surfaced four sides, retail", "dressed dry")
MILLED = {"inch": INCH / 8, "mm": 1.0}  # a planer is set to these: common practice, no source
ANOTHER_KIND, ANOTHER_WOOD = 1.0, 2.0  # what these count beside a size's change, at most 1


class Now(NamedTuple):
    """What a design has: `value` gives each of its choices, `known` what they can be, `used` the
    keys of the materials that are in the bed; None where that is not known.
    """

    value: Callable[[str], Any]
    known: Mapping[str, Choice]
    used: Collection[str] | None


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One change: the choice that is turned, and what follows it (a sheet brings its thickness).

    `size` tells how small it is: up to 1 a share of the larger size or count; above 1 another kind,
    from 2 another wood.
    """

    choice: str
    changes: Mapping[str, Any]
    size: float


Run = tuple[Turn, ...]


@dataclass(frozen=True, kw_only=True)
class Turns:
    """All ways to turn one choice, the smallest first: `runs` go on in one direction, the others
    stand alone.
    """

    runs: tuple[Run, ...] = ()
    alone: Run = ()


@cache
def turnable() -> frozenset[str]:
    """The choices that may be turned so that a check holds."""
    listed = {c.name for topic in WORKSHOP for c in choices_of(topic) if not c.may_be_empty}
    return frozenset((listed - ASKED_FOR) | DECIDED)


def turns(
    name: str,
    value: Callable[[str], Any],
    own: OwnRows = NONE,
    used: Collection[str] | None = None,
) -> Turns:
    """The ways to turn a choice from what a design has; `value` gives the design's choices, `own`
    its own materials, `used` the keys of those that are in the bed.
    """
    if name not in turnable():
        return Turns()
    return _turns(name, Now(value, all_choices(own), used))


def _turns(name: str, now: Now) -> Turns:
    choice, value = now.known[name], now.value(name)
    if name in MATERIAL_OF:
        return _thicknesses(choice, now)
    if name == "slide_length":
        return _slide_lengths(now)
    if choice.kind == Material:
        return Turns(alone=_materials(choice, now))
    if choice.is_flag:
        return Turns(alone=(_turn(name, not value, ANOTHER_KIND + 0.5),))
    if choice.keys:
        return Turns(alone=_kinds(choice, value))
    if choice.is_count:
        assert choice.least is not None and choice.most is not None
        return _runs(name, value, range(int(choice.least), int(choice.most) + 1))
    return _runs(name, value, _sizes(choice, GRIDS[now.value("grid")]))


def _turn(name: str, value: Any, size: float) -> Turn:
    return Turn(choice=name, changes={name: value}, size=size)


def _share(now: float, then: float) -> float:
    return abs(then - now) / max(abs(then), abs(now))


def _runs(name: str, now: float, values: Iterable[float]) -> Turns:
    """Upwards and downwards from the present value, the nearest first."""
    up = [v for v in values if v > now]
    down = [v for v in values if v < now]
    return Turns(
        runs=tuple(
            tuple(_turn(name, v, _share(now, v)) for v in run) for run in (up, down[::-1]) if run
        )
    )


def _sizes(choice: Choice, grid: ShopGrid) -> tuple[float, ...]:
    """Every step over the range: of the shop grid, or of a finer one where the range is short."""
    if not choice.is_length or choice.least is None or choice.most is None:
        return ()
    span = choice.most - choice.least
    step = next((g for g in grid.finer() if span >= STEPS_LEAST * g.step), grid.finer()[-1])
    low, high = step.up(choice.least), step.down(choice.most)
    return tuple(step.near(low + i * step.step) for i in range(round((high - low) / step.step) + 1))


def _slide_lengths(now: Now) -> Turns:
    """The lengths that the slide is sold in; where none is asked for, the longest is taken."""
    asked, table = now.value("slide_length"), now.known["slide"].table
    assert table is not None
    sold = table()[now.value("slide")].lengths_mm
    return _runs("slide_length", asked, sold) if asked else Turns()


def _kinds(choice: Choice, now: str) -> Run:
    """The other keys, those listed next to the present one first."""
    at = choice.keys.index(now)
    far = {key: abs(i - at) / len(choice.keys) for i, key in enumerate(choice.keys) if i != at}
    return tuple(
        _turn(choice.name, k, ANOTHER_KIND + far[k]) for k in sorted(far, key=far.__getitem__)
    )


# ---------------------------------------------------------------- thicknesses and materials


def _thicknesses(choice: Choice, now: Now) -> Turns:
    """Sizes that boards mill to; of a sheet, the thicknesses that it is sold in."""
    measured, thickness = f"{choice.name}_measured", now.value(choice.name)
    if measured in now.known and now.value(measured) is not None:
        return Turns()  # what was measured is in the shop: another label does not make it thicker
    made_of = _row(MATERIAL_OF[choice.name], now)
    is_used = now.used is None or made_of.key in now.used  # planks are no sheet, panels are
    if made_of.kind == "sheet" and is_used:
        return _sheets(choice, now)
    return _runs(choice.name, thickness, _milled(choice, GRIDS[now.value("grid")]))


def _milled(choice: Choice, grid: ShopGrid) -> tuple[float, ...]:
    """Thicknesses that are sold dressed, and those that a planer is set to, within the range."""
    assert choice.least is not None and choice.most is not None
    step = MILLED[grid.unit]
    found = {round(i * step, 6) for i in range(1, int(choice.most / step) + 1)}
    if grid.unit == "inch":  # the tables are of sizes in inches
        sold = (row for row in lumber().values() if row.dimension == "thickness")
        found |= {row.actual_mm for row in sold if row.state in DRESSED}
    return tuple(s for s in sorted(found) if choice.least <= s <= choice.most and _can_be_had(s))


def _can_be_had(thickness: Mm) -> bool:
    try:
        rough_stock(thickness)
    except CannotBuild:
        return False
    return True


def _sheets(choice: Choice, now: Now) -> Turns:
    """The same sheet, as thick as it is sold; and the same product, thicker or thinner. Rails,
    slats and cleats of sheet may also be glued up from two layers.
    """
    assert choice.least is not None and choice.most is not None
    sheet, thickness = MATERIAL_OF[choice.name], now.value(choice.name)
    chosen = _row(sheet, now)
    alike = [row for row in _table(sheet, now).values() if _product(row) == _product(chosen)]
    sold = [row for row in alike if choice.least <= _nominal(row) <= choice.most]
    if choice.name not in SHEET_OF:
        layers = {n * _nominal(row) for row in alike for n in (1, 2)}
        fitting = (size for size in layers if choice.least <= size <= choice.most)
        return _runs(choice.name, thickness, sorted(fitting))
    sides: dict[bool, list[Turn]] = {True: [], False: []}
    for row in sorted(sold, key=lambda row: abs(_nominal(row) - thickness)):
        changes = {sheet: row.key, choice.name: _nominal(row)}
        turn = Turn(choice=sheet, changes=changes, size=_share(thickness, _nominal(row)))
        if row.key != chosen.key:
            sides[_nominal(row) > thickness].append(turn)
    as_sold = _turn(choice.name, _nominal(chosen), _share(thickness, _nominal(chosen)))
    return Turns(
        runs=tuple(tuple(run) for run in sides.values() if run),
        alone=(as_sold,) if as_sold.size else (),
    )


def _materials(choice: Choice, now: Now) -> Run:
    """Other woods, or other sheets as thick as this one: the most alike in weight first. A frame,
    slats or bearers of sheet may also be made of wood.
    """
    chosen, found = _row(choice.name, now), []
    kinds = {chosen.kind} if choice.name in SHEET_OF.values() else {chosen.kind, "solid"}
    for each in _table(choice.name, now).values():
        if each.key != chosen.key and each.kind in kinds and _fits(each, choice.name, now):
            size = ANOTHER_WOOD + _share(chosen.density_kg_m3, each.density_kg_m3)
            found.append(_turn(choice.name, each.key, size))
    return tuple(sorted(found, key=lambda turn: turn.size))


def _table(name: str, now: Now) -> Mapping[str, Material]:
    table = now.known[name].table
    assert table is not None
    return table()


def _row(name: str, now: Now) -> Material:
    """The material that is chosen."""
    return _table(name, now)[now.value(name)]


def _product(sheet: Material) -> str:
    """What it is called without its thickness: `Birch plywood, sanded`; "" for solid wood."""
    return "" if sheet.nominal_mm is None else sheet.name.rpartition(", ")[0]


def _nominal(sheet: Material) -> Mm:
    assert sheet.nominal_mm is not None
    return sheet.nominal_mm


def _fits(sheet: Material, name: str, now: Now) -> bool:
    """Whether a sheet comes in the thickness that is asked of it; any wood does."""
    if sheet.nominal_mm is None:
        return True
    asked = [now.value(stock) for stock, made_of in MATERIAL_OF.items() if made_of == name]
    return any(abs(sheet.nominal_mm - each) <= SAME_THICKNESS for each in asked)
