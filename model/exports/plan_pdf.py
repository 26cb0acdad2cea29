"""`plan.pdf`: the plan set."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.exports.pdf import pdf_file
from model.planset.book import PlanSet


def write(bed: Bed, path: Path) -> None:
    """Write all its pages."""
    plan = bed.once(PlanSet)
    path.write_bytes(pdf_file(list(plan.pages()), plan.title, author=plan.author))
