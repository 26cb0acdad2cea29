"""Is the stock what its label says? Measured thickness drives every derived size."""

from model.brief.deck import DeckKind
from model.checks.record import Finding, Verdict, check
from model.materials import Material
from model.units import Measured, Mm

LETTERS = (
    "a magazine's letters: 3/4 in plywood measured 18 mm, and rabbets left too little; "
    "what to do about it: common practice, no source"
)
OTHER_SHEET = 1.0  # mm: a thickness this far from the sheet's name is another sheet's


def sheet_thickness(used: float, measured: float | None, sheet: Material) -> Finding | None:
    """The thickness that all sizes are reckoned with, against the one such sheets mostly have."""
    if sheet.nominal_mm is None:
        return None
    usual = sheet.actual_mm or sheet.nominal_mm
    off = abs(used - usual)
    verdict = Verdict.HOLDS if measured is not None else Verdict.NOTE
    if measured is None and abs(used - sheet.nominal_mm) > OTHER_SHEET:
        verdict = Verdict.FAILS
    return Finding(value=used, limit=usual, margin=OTHER_SHEET - off, verdict=verdict)


@check("fit", "Thickness of the box sheet", about="box_thickness", source=LETTERS)
def box_sheet_thickness(
    has_drawers: bool, box_thickness: Mm, box_stock_measured: Measured, box_sheet: Material
) -> Finding | None:
    """Sheets are thinner than their name: measure the one you bought, every box size hangs on
    it.
    """
    return sheet_thickness(box_thickness, box_stock_measured, box_sheet) if has_drawers else None


@check("fit", "Thickness of the bottom sheet", about="bottom_thickness", source=LETTERS)
def bottom_sheet_thickness(
    has_drawers: bool,
    bottom_thickness: Mm,
    bottom_stock_measured: Measured,
    bottom_sheet: Material,
) -> Finding | None:
    """The groove is cut to the bottom, and a sheet sold as 1/4 in is about 5 mm: measure it."""
    if not has_drawers:
        return None
    return sheet_thickness(bottom_thickness, bottom_stock_measured, bottom_sheet)


@check("fit", "Thickness of the front sheet", about="front_thickness", source=LETTERS)
def front_sheet_thickness(
    has_drawers: bool,
    front_thickness: Mm,
    front_stock_measured: Measured,
    front_material: Material,
) -> Finding | None:
    """Pull bolts and inset fronts are sized by the front's thickness: measure it."""
    if not has_drawers:
        return None
    return sheet_thickness(front_thickness, front_stock_measured, front_material)


@check("fit", "Thickness of the deck sheet", about="deck_sheet_thickness", source=LETTERS)
def deck_sheet_as_sold(
    deck: DeckKind, deck_sheet_thickness: Mm, deck_stock_measured: Measured, deck_sheet: Material
) -> Finding | None:
    """The cleats are set by the deck's thickness: measure the sheet."""
    if deck != "panels":
        return None
    return sheet_thickness(deck_sheet_thickness, deck_stock_measured, deck_sheet)


@check(
    "fit",
    "Size of the mattress",
    about="mattress_across",
    source="a furniture forum, 2013: box spring and mattress vary from any standard",
)
def mattress_size(
    mattress_piece_width: Mm, mattress_width: Mm, mattress_width_measured: Measured
) -> Finding:
    """The label is a size class: measure the mattress before the first cut."""
    off = abs(mattress_piece_width - mattress_width)
    verdict = Verdict.NOTE if mattress_width_measured is None else Verdict.HOLDS
    return Finding(value=mattress_piece_width, limit=mattress_width, margin=-off, verdict=verdict)
