"""The list of checks: verdict by sign and word, what was found, the limit, reason and source."""

from __future__ import annotations

import math

from app.style import verdict_icon
from app.tables.cells import natural, plain, quantity_text
from app.tables.rows import Column
from model.checks.record import Finding, Verdict

WORST_FIRST = {verdict: rank for rank, verdict in enumerate(Verdict)}
SAID = {"fails": "fails", "tight": "tight", "note": "note", "holds": "holds"}


def rank(finding: Finding) -> tuple[int, float]:
    """Worst first; within a verdict the least margin for its limit first, endless ones last."""
    is_limited = math.isfinite(finding.limit)
    share = finding.margin / (abs(finding.limit) or 1.0) if is_limited else math.inf
    return WORST_FIRST[finding.verdict], share


def title_text(finding: Finding, _unit: str = "") -> str:
    """The check, and the row or end that it was made for."""
    return f"{finding.title} ({finding.place})" if finding.place else finding.title


def _quantity(name: str) -> Column:
    return Column(
        plain(name.capitalize()),
        lambda f, unit: quantity_text(getattr(f, name), f.unit, unit),
        lambda f: getattr(f, name),
        is_number=True,
        about=lambda f: f.about if name == "value" else "",
    )


CHECK_COLUMNS = (
    Column(
        plain("Verdict"),
        lambda f, _: SAID[f.verdict],
        rank,
        icon=lambda f: verdict_icon(str(f.verdict)),
    ),
    Column(plain("Check"), title_text, lambda f: natural(title_text(f))),
    _quantity("value"),
    _quantity("limit"),
    _quantity("margin"),
    Column(plain("Group"), lambda f, _: f.group, lambda f: f.group),
    Column(plain("Reason"), lambda f, _: f.reason, lambda f: f.reason),
    Column(plain("Source"), lambda f, _: f.source, lambda f: f.source),
)
