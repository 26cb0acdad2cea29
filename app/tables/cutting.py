"""Tables of the cutting plans: one row for each material and thickness, one for each setting."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from app.style import verdict_icon
from app.tables.cells import UNIT_SIGN, natural, plain, size_text, sized
from app.tables.rows import Column
from model.drawings.cut_steps import SawnPlan
from model.drawings.plan_words import (
    bound_words,
    counted,
    kept_share,
    proof_words,
    settings_count,
    used_share,
)

if TYPE_CHECKING:
    from model.shop.order.record import Batch


class SettingRow(NamedTuple):
    """One setting: its place in the order, on which boards it is used, and how far it is cut."""

    place: int
    batch: Batch
    boards: str
    done: int

    @property
    def cuts_words(self) -> str:
        """How many cuts, and how many of them are made."""
        many = len(self.batch.lines)
        return f"{self.done} of {many}" if self.done else f"{many}"


def material_words(plan: SawnPlan, unit: str) -> str:
    """The material and how thick its boards are; a sheet's name tells its thickness."""
    begun = ", begun before" if plan.is_begun else ""
    if plan.cut.plan.task.kind == "sheets":
        return f"{plan.cut.material_name}{begun}"
    return f"{plan.cut.material_name}, {thick_text(plan, unit)} {UNIT_SIGN[unit]}{begun}"


def thick_text(plan: SawnPlan, unit: str) -> str:
    """How thick the stock is; and how wide, where it is used at its width."""
    thick, task = size_text(plan.cut.thickness, unit), plan.cut.plan.task
    return f"{thick} × {size_text(task.stock[0].width, unit)}" if task.kind == "lengths" else thick


def setting_words(batch: Batch) -> str:
    """`Rip: fence at 120 mm`; of a trim the setting says it all."""
    way, setting = batch.operation.partition(",")[0], batch.setting
    if way == "Trim":
        return setting
    return f"{way}: {setting[:1].lower()}{setting[1:]}"


def setting_tip(batch: Batch) -> str:
    """Which machine, what comes first, what can hurt."""
    return "\n".join((batch.machine, *batch.before, *batch.aids, *batch.cautions))


def _sign(sawn: SawnPlan) -> str:
    if sawn.cut.plan.left_out:
        return "fails"
    return "holds" if sawn.cut.plan.is_proven or sawn.is_begun else "note"


PLAN_COLUMNS = (
    Column(
        plain("Material"), lambda p, _: p.cut.material_name,
        lambda p: natural(f"{p.cut.material_name} {p.key}"),
        icon=lambda p: verdict_icon(_sign(p)), tip=material_words,
    ),
    Column(
        sized("Thick"), thick_text,
        lambda p: p.cut.thickness, True,
    ),
    Column(
        plain("To cut up"), lambda p, _: counted(len(p.layouts), p.stock_word),
        lambda p: len(p.layouts),
    ),
    Column(
        plain("Proof"), lambda p, _: proof_words(p), lambda p: p.cut.plan.gap,
        tip=lambda p, unit: "" if p.is_begun else bound_words(p.cut.plan, p.stock_word, unit),
    ),
    Column(
        plain("Used"), lambda p, _: f"{used_share(p.cut.plan):.0%}",
        lambda p: used_share(p.cut.plan), True, tip=lambda p, _: "Becomes pieces",
    ),
    Column(
        plain("Kept"), lambda p, _: f"{kept_share(p.cut.plan):.0%}",
        lambda p: kept_share(p.cut.plan), True,
        tip=lambda p, _: "Is left in offcuts that are worth keeping",
    ),
    Column(plain("Settings"), lambda p, _: f"{settings_count(p)}", settings_count, True),
)  # fmt: skip

SETTING_COLUMNS = (
    Column(
        plain("Setting"), lambda r, _: setting_words(r.batch), lambda r: r.place,
        tip=lambda r, _: setting_tip(r.batch),
    ),
    Column(plain("Cuts"), lambda r, _: r.cuts_words, lambda r: len(r.batch.lines), True),
    Column(plain("On"), lambda r, _: r.boards, lambda r: natural(r.boards)),
)  # fmt: skip
