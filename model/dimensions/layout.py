"""A face frame along its run: how its length becomes openings and stiles. Read for left, right and
foot.
"""

from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Measured, Mm, Places, ShopGrid, Spans

LEAST_END_STILE = 20.0  # mm: a narrower one splits; common practice, no source
LEAST_OPENING = 120.0  # mm: a hand with something in it; common practice, no source


@rule
def row_run(run_to: Mm, row_from: Mm) -> Mm:
    """What the row of drawers has of the frame's length."""
    return run_to - row_from


@rule
def clear_length(row_run: Mm, end_stile_least: Mm, mid_stile: Mm, bays: Count) -> Mm:
    """What the stiles leave of the run is shared by the openings."""
    return row_run - 2 * end_stile_least - max(bays - 1, 0) * mid_stile


@rule
def opening_width(
    clear_length: Mm,
    bays: Count,
    drawers: Count,
    grid: ShopGrid,
    opening_width_measured: Measured = None,
) -> Mm:
    """Openings are alike, so one spacer and box size serve the row; boxes follow a measured one."""
    if bays and opening_width_measured is not None:
        return opening_width_measured
    width = grid.down(clear_length / bays) if bays else 0.0
    if bays and width < LEAST_OPENING:
        raise CannotBuild(
            "drawers",
            f"The openings would be {width:g} mm wide: less than a hand needs "
            f"({LEAST_OPENING:g} mm).",
        )
    return width


@rule
def mid_stiles_width(bays: Count, mid_stile: Mm) -> Mm:
    """All stiles between openings together."""
    return max(bays - 1, 0) * mid_stile


@rule
def end_stiles_width(row_run: Mm, bays: Count, opening_width: Mm, mid_stiles_width: Mm) -> Mm:
    """The two end stiles share what rounding the openings left over."""
    left = row_run - bays * opening_width - mid_stiles_width
    if bays and left < 2 * LEAST_END_STILE:
        raise CannotBuild(
            "opening_width_measured", "Openings this wide leave no end stiles beside them."
        )
    return left


@rule
def first_end_stile(end_stiles_width: Mm, grid: ShopGrid) -> Mm:
    """The end stile nearest the foot, or at the left of the foot row, takes half."""
    return grid.down(end_stiles_width / 2)


@rule
def last_end_stile(end_stiles_width: Mm, first_end_stile: Mm) -> Mm:
    """An odd grid step goes to the end stile at the head, or at the right of the foot row."""
    return end_stiles_width - first_end_stile


@rule
def opening_pitch(opening_width: Mm, mid_stile: Mm) -> Mm:
    """From one opening to the next."""
    return opening_width + mid_stile


@rule
def first_opening(row_from: Mm, first_end_stile: Mm) -> Mm:
    """The first opening begins behind its end stile."""
    return row_from + first_end_stile


@rule
def opening_places(first_opening: Mm, opening_pitch: Mm, bays: Count) -> Places:
    """Where each opening begins along the run."""
    return tuple(first_opening + i * opening_pitch for i in range(bays))


@rule
def last_stile_from(run_to: Mm, last_end_stile: Mm) -> Mm:
    """The last end stile ends at its post."""
    return run_to - last_end_stile


@rule
def stile_spans(
    bays: Count,
    run_from: Mm,
    blind_bay: Mm,
    end_stile_least: Mm,
    opening_places: Places,
    opening_width: Mm,
    row_from: Mm,
    run_to: Mm,
) -> Spans:
    """Every stile from its first to its last edge: one before each opening, one behind the last."""
    if not bays:
        return ()
    edges = [row_from, *(x for u in opening_places for x in (u, u + opening_width)), run_to]
    corner = ((run_from, run_from + end_stile_least),) if blind_bay else ()
    return corner + tuple(zip(edges[::2], edges[1::2], strict=True))
