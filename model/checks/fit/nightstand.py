"""Do open drawers clear the nightstand? Asked of left and right."""

from model.checks.record import Finding, at_least, check
from model.units import Count, Mm


@check(
    "fit",
    "Open drawer beside the nightstand",
    about="nightstand_clearance",
    source="articles on storage beds: a drawer that met the furniture after 4 in",
    remedies=("end_stile_least", "depth", "slide", "pull"),
)
def drawer_clears_nightstand(
    drawer_count: Count,
    nightstand_width: Mm,
    nightstand_gap: Mm,
    nightstand_clearance: Mm,
    travel: Mm,
    pull_reach: Mm,
) -> Finding | None:
    """The drawer nearest the head opens beside the nightstand, or in front of it only as far as
    the gap.
    """
    if not drawer_count or not nightstand_width:
        return None
    if nightstand_clearance >= 0:
        return at_least(nightstand_clearance, 0.0, tight=5)
    return at_least(nightstand_gap - pull_reach, travel)
