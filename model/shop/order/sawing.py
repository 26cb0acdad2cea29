"""The cuts of the cutting plans as batches, each setting made once over all boards or sheets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from model.cutting import order
from model.cutting.record import Layout, Region
from model.shop.order import feeding, say
from model.shop.order.jobs import figure
from model.shop.order.record import Batch, Line, Stage
from model.shop.plans import CutPlan
from model.shop.tracking_cuts import cut_key, ready
from model.units import Mm, tape_grid

_SAME: Mm = 1e-6
HALF = 0.5  # of a sheet: a larger one goes over the saw with a helper, or is cut on the floor

_ROUGH_RIP = (
    "Never rip a bowed or rough-edged board against a fence: bandsaw, or joint a face and an edge "
    "first.",
)


def sawing(plan: CutPlan, unit: str) -> tuple[Batch, ...]:
    """All cuts of one plan; what is used as it is bought comes first."""
    layouts = {layout.number: layout for layout in plan.plan.layouts}
    made = [*_as_it_is(plan, layouts.values(), unit)]
    for k, batch in enumerate(order.batches(plan.plan), 1):
        made.append(_batch(plan, batch, layouts, k, unit))
    return tuple(made)


def stock_word(plan: CutPlan) -> str:
    """What is cut up: a sheet or a board."""
    return "sheet" if plan.plan.task.kind == "sheets" else "board"


def _ready(part: Region) -> tuple[str, ...]:
    """The names of the pieces in a region that is cut no further before milling."""
    return tuple(placed.name for placed in ready(part))


def _stage(plan: CutPlan) -> Stage:
    return "sheets" if plan.plan.task.kind == "sheets" else "mill"


def _batch(
    plan: CutPlan, batch: order.Batch, layouts: dict[int, Layout], k: int, unit: str
) -> Batch:
    way, distance, is_trim = batch.setting
    is_sheet = plan.plan.task.kind == "sheets"
    machine = _machine(batch, layouts, is_sheet)
    title = "Trim" if is_trim else "Rip" if way == "rip" else "Crosscut"
    return Batch(
        key=f"saw {plan.key} {k} {way} {distance:g}",
        stage=_stage(plan),
        machine=machine,
        operation=f"{title}, {stock_name(plan, unit)}",
        way="saw",
        lines=tuple(_line(plan, step, layouts, unit) for step in batch.steps),
        distances=(figure(way, distance),),
        setting=_setting(plan, batch, unit),
        cautions=_cautions(batch, machine, is_sheet, unit),
    )


def _size(plan: CutPlan, mm: Mm, unit: str) -> str:
    return say.size(mm, unit) if stock_word(plan) == "sheet" else say.rough(mm, unit)


def _setting(plan: CutPlan, batch: order.Batch, unit: str) -> str:
    """A trim is marked out by what goes; other cuts are made by fence or stop."""
    way, distance, is_trim = batch.setting
    if is_trim:
        off = say.size(_taken(plan, batch, unit), unit)
        return f"Take {off} off the {'edge' if way == 'rip' else 'end'}, the kerf with it"
    size = _size(plan, distance, unit)
    return f"{'Fence' if way == 'rip' else 'Stop'} at {size}"


def _taken(plan: CutPlan, batch: order.Batch, unit: str) -> Mm:
    """What a trim takes off. Of a board it is what the told sizes before and after differ by, so
    that they add up; its own rounded size where the boards of a batch round differently.
    """
    way, distance, _ = batch.setting
    if stock_word(plan) == "sheet":
        return distance
    near, axis = tape_grid(unit).near, "width" if way == "rip" else "length"
    told = {
        near(getattr(step.region, axis))
        - max(near(getattr(part, axis)) for part in step.region.parts)
        for step in batch.steps
        if not all(part.use == "waste" for part in step.region.parts)
    }
    apart = max(told, default=0.0) - min(told, default=0.0)
    return min(told) if told and apart < _SAME else near(distance)


def stock_name(plan: CutPlan, unit: str) -> str:
    """`Red maple, 1 1/4"`; a sheet's name has its thickness mostly. Boards that are used as wide
    as they are sold have their width too: `European beech, 30 mm x 160 mm`.
    """
    thick = say.size(plan.thickness, unit)
    name = plan.material_name
    if plan.sold_width is not None:
        return f"{name}, {thick} x {say.size(plan.sold_width, unit)}"
    bare = thick.removeprefix("~").removesuffix('"')
    is_told = name.removesuffix(" in").endswith(f" {bare}")
    return name if is_told else f"{name}, {thick}"


def _machine(batch: order.Batch, layouts: dict[int, Layout], is_sheet: bool) -> str:
    if not is_sheet:
        return (
            "bandsaw, or table saw" if batch.setting.way == "rip" else "crosscut or hand-held saw"
        )
    if any(_is_large(step, layouts) for step in batch.steps):
        return "guided saw, or table saw with a helper"
    sides = [(step.region.length, step.region.width) for step in batch.steps]
    if batch.setting.way == "rip":
        guided = all(feeding.fence_guides(along, batch.setting.distance) for along, _ in sides)
        return "table saw, rip fence" if guided else "guided saw"
    if all(feeding.sled_steadies(along, width) for along, width in sides):
        return "table saw, crosscut sled with a stop"
    return "guided saw"


def _is_large(step: order.Step, layouts: dict[int, Layout]) -> bool:
    layout = layouts[step.layout]
    return step.region.area > HALF * layout.stock.length * layout.stock.width


def _cautions(batch: order.Batch, machine: str, is_sheet: bool, unit: str) -> tuple[str, ...]:
    way, distance, is_trim = batch.setting
    if way == "rip" and is_sheet:
        return () if is_trim else feeding.narrow_rip(distance, unit)
    if way == "rip":
        return _ROUGH_RIP
    short = () if is_trim else feeding.short_crosscut(distance, unit)
    if "guided" in machine:
        return short
    widest = max(step.region.width for step in batch.steps)
    return (*short, *feeding.wide_crosscut(widest, unit))


def _line(plan: CutPlan, step: order.Step, layouts: dict[int, Layout], unit: str) -> Line:
    region = step.region
    return Line(
        key=cut_key(plan.key, step.layout, step.number),
        name=f"cut {step.number}, {stock_word(plan)} {step.layout}",
        detail=f"{_from(plan, region, layouts[step.layout], unit)}: {_leaves(plan, region, unit)}",
        frees=tuple(name for part in region.parts for name in _ready(part)),
    )


def _from(plan: CutPlan, region: Region, layout: Layout, unit: str) -> str:
    stock = layout.stock
    if region is layout.tree:
        own = " on hand" if stock.on_hand else ""
        if stock_word(plan) == "sheet":  # as it is bought and drawn
            sides = f"{say.size(region.length, unit)} x {say.size(region.width, unit)}"
        else:
            sides = _sides(plan, region, unit)
        if stock.is_assumed:  # its number in the pile drawn is none that anybody sees
            return f"whole{own} {sides}"
        return f"whole{own} ({stock.key}) {sides}"
    return f"from {_sides(plan, region, unit)}"


def _sides(plan: CutPlan, region: Region, unit: str) -> str:
    told = say.rest if stock_word(plan) == "sheet" else say.rough
    return f"{told(region.length, unit)} x {told(region.width, unit)}"


def _leaves(plan: CutPlan, region: Region, unit: str) -> str:
    told = [_told(plan, part, unit) for part in region.parts]
    over = "" if len(told) > 1 or stock_word(plan) == "sheet" else f"; {_over(region, unit)}"
    return f"leaves {' and '.join(told)}{over}"


def _over(region: Region, unit: str) -> str:
    """A rough size is a least size: nobody has to shave a hair off a rough board."""
    (part,) = region.parts
    more = region.length + region.width - part.length - part.width
    return f"only {say.rough_or_less(more, unit)} over, which may stay on"


def _told(plan: CutPlan, part: Region, unit: str) -> str:
    names = _ready(part)
    if names:
        return say.listed(names) + (" in one strip" if len(names) > 1 else "")
    if part.use == "offcut":
        return f"an offcut {_sides(plan, part, unit)} to keep"
    if part.use == "waste":
        return "waste"
    return f"{_sides(plan, part, unit)} to go on with"


def _as_it_is(plan: CutPlan, layouts: Iterable[Layout], unit: str) -> Iterator[Batch]:
    """Stock that is a piece already."""
    whole = [each for each in layouts if _ready(each.tree)]
    if whole:
        yield Batch(
            key=f"saw {plan.key} 0 as it is",
            stage=_stage(plan),
            machine="bench",
            operation=f"Use as it is, {stock_name(plan, unit)}",
            way="saw",
            lines=tuple(
                Line(
                    key=cut_key(plan.key, each.number, 0),
                    name=f"{stock_word(plan)} {each.number}",
                    detail=f"{say.listed(_ready(each.tree))} as it is",
                    frees=_ready(each.tree),
                )
                for each in whole
            ),
            setting="No cut",
        )
