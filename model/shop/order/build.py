"""The work order of a bed: everything that is done at the machines, in the order of the trade."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from model.bed import Bed
from model.brief.words import in_unit
from model.checks.safety.cautions import cautions
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_list
from model.shop.idle_stock import idle_stock
from model.shop.order import say
from model.shop.order.aids import measure_text, measured, spacers
from model.shop.order.finish import finishing
from model.shop.order.horns import horned
from model.shop.order.jobs import figure
from model.shop.order.joinery import joinery, while_long
from model.shop.order.keys import key_of, line_of
from model.shop.order.milling import Milling
from model.shop.order.record import Batch, WorkOrder
from model.shop.order.sawing import sawing, stock_name
from model.shop.order.who import identities
from model.shop.planed_down import planed_down
from model.shop.plans import CutPlan

AT_THE_MACHINES = ("whose_word", "machines", "dust", "lifting", "old_wood")


def work_order(bed: Bed, plans: Sequence[CutPlan]) -> WorkOrder:
    """All batches, boards first, then sheets, joints, and what is done last.

    `plans` are the cutting plans that are followed, one for each material and thickness.
    """
    unit: str = bed.design.value("shown_unit")
    who, pieces = identities(bed.marks), cut_list(bed)
    boards = [plan for plan in plans if plan.plan.task.kind != "sheets"]
    sheets = [plan for plan in plans if plan.plan.task.kind == "sheets"]
    milling, long = Milling(bed, pieces, who, long_pieces(boards)), horned(bed)
    batches = (
        *_sawn(boards, unit),
        *milling.milled(),
        *milling.glued(),
        *milling.widened(),
        *while_long(bed, who),
        *milling.lengths(long),
        *_sawn(sheets, unit),
        *_sheet_layers(bed, pieces, who, unit),
        *joinery(bed, who, milling.late_lengths(long)),
        *finishing(bed, who),
    )
    return WorkOrder(
        name=bed.design.name,
        unit=unit,
        batches=batches,
        aids=(*_measures(bed, unit), *_spacers(bed, unit)),
        missing=_missing(plans, unit),
        notes=(*_notes(planed_down(bed.design, pieces, plans), unit), *idle_stock(bed)),
        cautions=_cautions(bed),
    )


def _missing(plans: Iterable[CutPlan], unit: str) -> tuple[str, ...]:
    return tuple(
        f"{each.quantity} x {each.mark}: {in_unit(each.sentence, unit)}"
        for plan in plans
        for each in plan.plan.left_out
    )


def _cautions(bed: Bed) -> tuple[str, ...]:
    """Those of the bed's cautions that hold at the machines."""
    return tuple(
        f"{each.title}. {each.text}"
        for each in cautions(bed.pieces, bed.materials)
        if each.key in AT_THE_MACHINES
    )


def long_pieces(plans: Iterable[CutPlan]) -> Mapping[str, str]:
    """For pieces that are milled as one long piece, the names of these."""
    found: dict[str, list[str]] = {}
    for plan in plans:
        for piece in plan.plan.task.pieces:
            if piece.stays_whole and piece.row not in found.setdefault(piece.mark, []):
                found[piece.mark].append(piece.row)
    return {mark: say.listed(rows) for mark, rows in found.items()}


def _sawn(plans: Iterable[CutPlan], unit: str) -> list[Batch]:
    return [batch for plan in plans for batch in sawing(plan, unit)]


def _notes(plans: Iterable[CutPlan], unit: str) -> tuple[str, ...]:
    """What the plans tell of their boards and sheets; what is true of several is told once."""
    said: dict[str, list[str]] = {}
    for plan in plans:
        for note in plan.notes:
            said.setdefault(in_unit(note, unit), []).append(stock_name(plan, unit))
    return tuple(f"{'; '.join(dict.fromkeys(of))}: {note}" for note, of in said.items())


def _spacers(bed: Bed, unit: str) -> tuple[str, ...]:
    return tuple(
        f"{each.quantity} x {each.name}, {say.size(each.size, unit)}: {each.use}"
        for each in spacers(bed)
    )


def _measures(bed: Bed, unit: str) -> tuple[str, ...]:
    return tuple(
        f"Measure again before the first cut: {measure_text(each, unit)}; sizes hang on it."
        for each in measured(bed)
    )


def _sheet_layers(
    bed: Bed, pieces: Iterable[CutPiece], who: Mapping[str, str], unit: str
) -> tuple[Batch, ...]:
    """Panels of several sheets: nothing is trimmed after, so the edges must lie flush."""
    marks = {mark.mark: mark for mark in bed.marks}
    return tuple(
        _glued_sheets(piece, marks[piece.mark], who, unit)
        for piece in pieces
        if piece.source is None and piece.is_glued
    )


def _glued_sheets(piece: CutPiece, mark: Mark, who: Mapping[str, str], unit: str) -> Batch:
    thick = figure("thickness", float(mark.thickness))
    key = key_of(f"glue sheets {mark.name}", (thick,))
    return Batch(
        key=key,
        stage="sheets",
        machine="clamps and cauls, or a flat bench and weights",
        operation="Glue up layers of sheets",
        way="glue",
        distances=(thick,),
        setting=f"{say.size(thick.size, unit)} thick when glued, edges flush",
        before=("Pin the corners so that the layers cannot slide.",),
        lines=(line_of(key, mark, who, f"each of {piece.layers} layers, {piece.name}"),),
    )
