"""`plan.pdf`: the plan set."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.exports.pdf import write_pages
from model.planset.book import PlanSet


def write(bed: Bed, path: Path) -> None:
    """Write all its pages."""
    plan = PlanSet(bed)
    write_pages(list(plan.pages()), path, plan.title)
