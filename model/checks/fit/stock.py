"""Is the stock what its label says? Measured thickness drives every derived size."""

from model.brief.deck import DeckKind
from model.checks.record import HAIR, Finding, Verdict, check
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
    margin = OTHER_SHEET - min(abs(used - usual), abs(used - sheet.nominal_mm))
    is_other = margin < -HAIR
    if measured is None:
        verdict = Verdict.FAILS if is_other else Verdict.NOTE
    else:
        verdict = Verdict.NOTE if is_other else Verdict.HOLDS
    return Finding(value=used, limit=usual, margin=margin, verdict=verdict)


@check(
    "fit",
    "Thickness of the box sheet",
    about="box_thickness",
    source=LETTERS,
    remedies=("box_stock", "box_sheet"),
)
def box_sheet_thickness(
    has_drawers: bool, box_thickness: Mm, box_stock_measured: Measured, box_sheet: Material
) -> Finding | None:
    """Sheets are thinner than their name: measure the one you bought, every box size hangs on
    it.
    """
    return sheet_thickness(box_thickness, box_stock_measured, box_sheet) if has_drawers else None


@check(
    "fit",
    "Thickness of the bottom sheet",
    about="bottom_thickness",
    source=LETTERS,
    remedies=("bottom_stock", "bottom_sheet"),
)
def bottom_sheet_thickness(
    has_drawers: bool,
    bottom_thickness: Mm,
    bottom_stock_measured: Measured,
    bottom_sheet: Material,
) -> Finding | None:
    """The groove is cut to the bottom, and sheets are thinner than their name: measure yours."""
    if not has_drawers:
        return None
    return sheet_thickness(bottom_thickness, bottom_stock_measured, bottom_sheet)


@check(
    "fit",
    "Thickness of the front sheet",
    about="front_thickness",
    source=LETTERS,
    remedies=("front_stock", "front_material"),
)
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


@check(
    "fit",
    "Thickness of the deck sheet",
    about="deck_sheet_thickness",
    source=LETTERS,
    remedies=("deck_stock", "deck_sheet"),
)
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
def mattress_size(mattress_piece_width: Mm, mattress_width_measured: Measured) -> Finding:
    """The label is a size class: measure the mattress before the first cut."""
    size = mattress_piece_width
    verdict = Verdict.NOTE if mattress_width_measured is None else Verdict.HOLDS
    return Finding(value=size, limit=size, margin=0.0, verdict=verdict)
