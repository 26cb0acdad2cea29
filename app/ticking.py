"""`bedwright tick`: what is cut, bought or done, kept in the design; what a change left of it."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from model.errors import BadInput

if TYPE_CHECKING:
    from model.bed import Bed, Design
    from model.shop.order.record import Batch, Line, WorkOrder
    from model.shop.plans import CutPlan

COLUMNS = 92
ALL = "all"  # of the better plans


def add(commands: Any, run: Any) -> None:
    """The command's own options; `run` is called with them."""
    tick = commands.add_parser(
        "tick",
        help="tick what is cut, bought or done; or tell how far the work is",
        description="Tick lines of the work order by the number of their setting, and their mark "
        "or cut: 84, 84:H3, 12:cut 7. The design file keeps them. Without any, tell how far the "
        "work is and which cut pieces no longer fit.",
        epilog="The first ticked cut of a material keeps its cutting plan.",
    )
    tick.set_defaults(command=run)
    tick.add_argument("design", metavar="DESIGN", type=Path)
    tick.add_argument("lines", metavar="SETTING[:LINE]", nargs="*", help="such as 84, or 84:H3")
    tick.add_argument("--undo", action="store_true", help="take the ticks away")
    tick.add_argument(
        "--bought", metavar="KEY", action="append", default=[],
        help="a row of the buying list, by its key in shopping.csv; may be given more than once",
    )  # fmt: skip
    tick.add_argument(
        "--recut", metavar="PIECE", action="append", default=[],
        help="take an offer for a piece that no longer fits, such as H3-1",
    )  # fmt: skip
    tick.add_argument(
        "--better-plan", metavar="KEY", action="append", default=[],
        help="take a better cutting plan than the kept one, by its key in cutting.json, or all; "
        "`plan` tells which there are",
    )  # fmt: skip
    tick.add_argument(
        "--keep-plans", action="store_true", help="keep the cutting plans as they now are"
    )


def is_asked(arguments: argparse.Namespace) -> bool:
    """Whether anything is to be ticked, and not only told."""
    asked = (arguments.lines, arguments.bought, arguments.recut, arguments.keep_plans)
    return any((*asked, arguments.better_plan))


def ticked(bed: Bed, arguments: argparse.Namespace) -> Design:
    """The design with all that was asked for ticked, or unticked."""
    from dataclasses import replace

    from model.shop.order.build import work_order
    from model.shop.plans import plans
    from model.shop.tracking import accepted, bought_ticked

    for name in arguments.recut:
        bed = replace(bed, design=_recut(bed, name))
    if arguments.better_plan:
        bed = replace(bed, design=_with_better(bed, arguments.better_plan))
    found = plans(bed)
    order = work_order(bed, found)
    if arguments.keep_plans:
        for each in found:
            if not each.is_stored:
                bed = replace(bed, design=accepted(bed, each))
    for text in arguments.lines:
        batch, lines = _asked(order, text)
        bed = _tick(bed, order, found, batch, lines, not arguments.undo)
    design = bed.design
    for key in arguments.bought:
        _look_up(bed, found, key)
        design = bought_ticked(design, key, not arguments.undo)
    return design


def _recut(bed: Bed, name: str) -> Design:
    from model.shop.tracking import outdated, recut

    offers = {f"{each.part.mark}-{each.part.piece}": each for each in outdated(bed).recuts}
    if name not in offers:
        known = ", ".join(offers) or "none"
        raise BadInput("--recut", f"There is no offer to recut {name}. Offers: {known}.")
    return recut(bed, offers[name])


def _with_better(bed: Bed, keys: Sequence[str]) -> Design:
    """The design with better plans in place of the kept ones: those of these keys, or all."""
    from dataclasses import replace

    from model.shop.better_plans import better_plans
    from model.shop.tracking import accepted

    offers = {each.cut.key: each.cut for each in better_plans(bed)}
    for key in keys:
        if key not in (*offers, ALL):
            known = ", ".join(offers) or "none"
            raise BadInput("--better-plan", f"No better plan is found for {key}. Offers: {known}.")
    for key, cut in offers.items():
        if ALL in keys or key in keys:
            bed = replace(bed, design=accepted(bed, cut))
    return bed.design


def _look_up(bed: Bed, found: Sequence[CutPlan], key: str) -> None:
    from model.cost.costing import costing
    from model.designs import nearest

    known = {buy.key for buy in costing(bed, found).buys} | bed.design.progress.bought
    if key not in known:
        raise BadInput("--bought", f"The buying list has no {key}{nearest(key, sorted(known))}")


def _asked(order: WorkOrder, text: str) -> tuple[Batch, list[Line]]:
    """The setting and its lines that somebody means by `84`, `84:H3` or `12:cut 7`."""
    number, _, name = text.partition(":")
    if not number.isdigit() or not 1 <= int(number) <= len(order.batches):
        raise BadInput(
            "SETTING",
            f"There is no setting {number} in the work order; they are numbered from 1 to "
            f"{len(order.batches)}.",
        )
    batch, name = order.batches[int(number) - 1], name.strip()
    lines = [n for n in batch.lines if not name or name in (n.mark, n.name, n.name.split(",")[0])]
    if not lines:
        known = ", ".join(n.mark or n.name.split(",")[0] for n in batch.lines[:8])
        raise BadInput("SETTING", f"Setting {number} has no line {name}; it has {known}.")
    return batch, lines


def _tick(
    bed: Bed,
    order: WorkOrder,
    found: Iterable[CutPlan],
    batch: Batch,
    lines: Sequence[Line],
    is_done: bool,
) -> Bed:
    from dataclasses import replace

    from model.shop.tracking import all_ticked, step_ticked
    from model.shop.tracking_cuts import task_of

    keys = [line.key for line in lines]
    if batch.way == "saw":
        plan = next(each for each in found if each.key == task_of(keys[0]))
        return replace(bed, design=all_ticked(bed, plan, keys, is_done))
    for key in keys:
        bed = replace(bed, design=step_ticked(bed, order, key, is_done))
    return bed


# ---------------------------------------------------------------- how far the work is


def told(bed: Bed, columns: int = COLUMNS) -> Iterator[str]:
    """How much is done, and what a change of the design has left of the pieces that are cut."""
    from model.exports.work_order_text import wrap
    from model.shop.order.build import work_order
    from model.shop.plans import plans
    from model.shop.tracking import outdated
    from model.shop.tracking_rest import going

    now = going(bed)
    progress = now.progress
    order = work_order(bed, plans(bed))
    done = progress.cuts_done | progress.steps_done
    left = [batch for batch in order.batches if any(n.key not in done for n in batch.lines)]
    yield (
        f"{len(order.keys & done)} of {len(order.keys)} lines are done; {len(progress.parts)} "
        "pieces are on record."
    )
    if bought := len(progress.bought):
        yield f"{bought} {'row' if bought == 1 else 'rows'} of the buying list ticked as bought."
    if left:
        number = order.batches.index(left[0]) + 1
        yield from wrap(f"Next: {number}, {left[0].operation} ({left[0].machine}).", columns)
    if now.set_aside:
        names = "; ".join(dict.fromkeys(now.set_aside))
        said = f"Kept plans that are followed no more, for other pieces, stock or kerf: {names}."
        yield from wrap(said, columns, initial_indent="  - ", subsequent_indent="    ")
    held = outdated(bed)
    for each in (*held.unfit, *held.recuts):
        yield from wrap(each.sentence, columns, initial_indent="  - ", subsequent_indent="    ")
    if progress.parts and not held.is_clean and held.anew:
        anew = ", ".join(f"{each.quantity} x {each.mark}" for each in held.anew)
        yield from wrap(f"Still to be cut: {anew}.", columns)
