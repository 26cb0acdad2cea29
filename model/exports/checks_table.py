"""The checks as rows: one list for JSON, CSV and the screen, so that all three say the same."""

from __future__ import annotations

from typing import Any

from model.bed import Bed
from model.checks.record import Finding, Verdict
from model.exports.plain import number

COLUMNS = (
    "id", "group", "title", "value", "limit", "unit", "margin", "verdict", "reason", "source",
)  # fmt: skip


def row(finding: Finding) -> dict[str, Any]:
    """One check as the plan package has it; a figure that is endless or missing is None."""
    return {
        "id": finding.id,
        "group": finding.group,
        "title": finding.title,
        "value": number(finding.value),
        "limit": number(finding.limit),
        "unit": finding.unit,
        "margin": number(finding.margin),
        "verdict": str(finding.verdict),
        "reason": finding.reason,
        "source": finding.source,
    }


def rows(bed: Bed) -> list[dict[str, Any]]:
    """Every check of a bed, worst first."""
    return [row(finding) for finding in bed.findings]


def counts(bed: Bed) -> dict[str, int]:
    """How many checks got each verdict, worst first."""
    found = [finding.verdict for finding in bed.findings]
    return {str(verdict): found.count(verdict) for verdict in Verdict}
