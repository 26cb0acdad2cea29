"""Thicker, thinner, of another wood: how stock is turned, by what can be bought and milled."""

from __future__ import annotations

from collections.abc import Mapping

from model.brief.declare import Choice
from model.brief.turn import ANOTHER_WOOD, Now, Run, Turn, Turns, runs_of, share_of, turn_to
from model.errors import CannotBuild
from model.materials import Material, lumber, rough_stock
from model.units import GRIDS, INCH, Mm, ShopGrid

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

SAME_THICKNESS: Mm = 1.0  # sheets this near in thickness are sold in place of each other
DRESSED = ("surfaced two sides, least", "surfaced four sides, retail", "dressed dry")
MILLED = {"inch": INCH / 8, "mm": 1.0}  # a planer is set to these: common practice, no source


def thicknesses(choice: Choice, now: Now) -> Turns:
    """Sizes that boards mill to; of a sheet, the thicknesses that it is sold in."""
    measured, thickness = f"{choice.name}_measured", now.value(choice.name)
    if measured in now.known and now.value(measured) is not None:
        return Turns()  # what was measured is in the shop: another label does not make it thicker
    made_of = _row(MATERIAL_OF[choice.name], now)
    is_used = now.used is None or made_of.key in now.used  # planks are no sheet, panels are
    if made_of.kind == "sheet" and is_used:
        return _sheets(choice, now)
    return runs_of(choice.name, thickness, _milled(choice, GRIDS[now.value("grid")]))


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
        return runs_of(choice.name, thickness, sorted(fitting))
    sides: dict[bool, list[Turn]] = {True: [], False: []}
    for row in sorted(sold, key=lambda row: abs(_nominal(row) - thickness)):
        changes = {sheet: row.key, choice.name: _nominal(row)}
        turn = Turn(choice=sheet, changes=changes, size=share_of(thickness, _nominal(row)))
        if row.key != chosen.key:
            sides[_nominal(row) > thickness].append(turn)
    as_sold = turn_to(choice.name, _nominal(chosen), share_of(thickness, _nominal(chosen)))
    return Turns(
        runs=tuple(tuple(run) for run in sides.values() if run),
        alone=(as_sold,) if as_sold.size else (),
    )


def other_materials(choice: Choice, now: Now) -> Run:
    """Other woods, or other sheets as thick as this one: the most alike in weight first. A frame,
    slats or bearers of sheet may also be made of wood.
    """
    chosen, found = _row(choice.name, now), []
    kinds = {chosen.kind} if choice.name in SHEET_OF.values() else {chosen.kind, "solid"}
    for each in _table(choice.name, now).values():
        if each.key != chosen.key and each.kind in kinds and _fits(each, choice.name, now):
            size = ANOTHER_WOOD + share_of(chosen.density_kg_m3, each.density_kg_m3)
            found.append(turn_to(choice.name, each.key, size))
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
