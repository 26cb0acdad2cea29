"""Is the stock what its label says? Measured thickness drives every derived size."""

from model.checks.record import Finding, advice, at_least, check
from model.units import Measured

LETTERS = "a magazine's letters: 3/4 in plywood measured 18 mm, and rabbets left too little; common practice: measure"


def _measured(value: float | None) -> Finding:
    return advice(at_least(0.0 if value is None else 1.0, 1.0, unit="measured"))


@check("fit", "Box sheet was measured", about="box_thickness", source=LETTERS)
def box_sheet_measured(has_drawers: bool, box_stock_measured: Measured) -> Finding | None:
    """Sheets are thinner than their name; every size of the box hangs on the real thickness."""
    return _measured(box_stock_measured) if has_drawers else None


@check("fit", "Bottom sheet was measured", about="bottom_thickness", source=LETTERS)
def bottom_sheet_measured(has_drawers: bool, bottom_stock_measured: Measured) -> Finding | None:
    """The groove is cut to the bottom: a sheet sold as 1/4 in is about 5 mm."""
    return _measured(bottom_stock_measured) if has_drawers else None


@check(
    "fit",
    "Mattress was measured",
    about="mattress_across",
    source="a furniture forum, 2013: box spring and mattress vary from any standard",
)
def mattress_was_measured(
    mattress_width_measured: Measured, mattress_length_measured: Measured
) -> Finding:
    """The label is a size class; the tape tells what must fit."""
    known = mattress_width_measured is not None and mattress_length_measured is not None
    return advice(at_least(1.0 if known else 0.0, 1.0, unit="measured"))
