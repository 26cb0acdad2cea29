"""Sanding and finish: areas, coats, litres, discs.

Paint arithmetic as on a can, from memory: a US gallon covers 400 square feet in one coat, so that
two coats on 100 square feet take half a gallon: two quarts, or 1.89 litres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest

from model.cost.coats import abrasive_needs, coating_needs, coats, grits
from model.cost.costing import taken
from model.cost.faces import fixed, shown
from model.cost.surfaces import Surfaces, is_finished, surfaces
from model.shop.order.build import work_order
from tests.model.cost.beds import bed_of

SQUARE_FOOT = 0.09290304  # m2
QUEEN = "painted_storage_queen"
PAINTED = {
    "finish": "painted", "primer_coats": 1, "sealer_coats": 2, "finish_coats": 2,
    "finish_loss": 0.0, "sanded_to": "150", "shown_unit": "inch",
}  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """What of a bed these functions read: its choices."""

    choices: dict[str, Any]

    def __getitem__(self, name: str) -> Any:
        return self.choices[name]


def asked(**changes: Any) -> Any:
    return Asked(PAINTED | changes)


def used(bed: Any, areas: Surfaces) -> dict[str, float]:
    return {need.key: need.quantity for need in coating_needs(bed, coats(bed, areas))}


def test_two_coats_on_100_square_feet_take_half_a_gallon() -> None:
    inch, metric = (asked(finish="clear", shown_unit=unit) for unit in ("inch", "mm"))

    quarts, litres = (used(bed, Surfaces(solid=100 * SQUARE_FOOT)) for bed in (inch, metric))

    assert quarts == {"finish/clear": pytest.approx(2.0, abs=0.02)}
    assert litres == {"finish/clear": pytest.approx(1.89, abs=0.02)}  # 3.785 / 2


def test_an_inch_shop_reads_quarts_and_square_feet() -> None:
    areas, bed = Surfaces(solid=100 * SQUARE_FOOT), asked(finish="clear")

    (need,) = coating_needs(bed, coats(bed, areas))
    (disc, *_) = abrasive_needs(grits(bed, areas, (), areas), "inch")

    assert (need.unit, need.size) == ("US quart", "2 coats on 100 square feet")
    assert need.note.startswith("100 square feet a US quart")  # 400 a gallon
    assert disc.size == "100 square feet"
    assert " m2" not in need.note + need.size + disc.note + disc.size


def test_paint_is_primed_and_fibreboard_sealed_twice_before() -> None:
    areas = Surfaces(solid=4.0, fibreboard=2.0)

    on = [(coat.coating.key, coat.coats, coat.area) for coat in coats(asked(), areas)]

    assert on == [("sealer", 2, 2.0), ("primer", 1, 6.0), ("paint", 2, 6.0)]


def test_oil_needs_neither_primer_nor_sealer_and_no_finish_needs_nothing() -> None:
    areas = Surfaces(solid=4.0, fibreboard=2.0)

    assert [coat.coating.key for coat in coats(asked(finish="oil"), areas)] == ["oil"]
    assert coats(asked(finish="none"), areas) == ()


def test_what_sprays_past_is_bought_too() -> None:
    areas = Surfaces(solid=9.8)  # a litre a coat

    brushed, sprayed = (
        used(asked(finish_loss=loss, shown_unit="mm"), areas) for loss in (0.0, 50.0)
    )

    assert sprayed["finish/paint"] == pytest.approx(2 * brushed["finish/paint"]) == 4.0


def test_cans_are_quarts_or_litres() -> None:
    areas = Surfaces(solid=9.8)

    sold = [
        (need.pack, need.unit)
        for bed in (asked(), asked(shown_unit="mm"))
        for need in coating_needs(bed, coats(bed, areas))[:1]
    ]

    assert sold == [(1, "US quart"), (1, "litre")]


def test_grits_end_where_the_maker_stops_and_sheets_begin_at_120() -> None:
    areas, bed = Surfaces(solid=5.0, plywood=3.0), asked(finish="none", sanded_to="150")

    sanded = {grit.abrasive.grit: grit.area for grit in grits(bed, areas, (), areas)}

    assert sanded == {80: 5.0, 120: 8.0, 150: 8.0}


def test_coats_are_sanded_between_and_not_after() -> None:
    """Primer and two coats of paint on 6 m2: sanded after the first two, 12 m2."""
    areas, bed = Surfaces(solid=6.0), asked()

    (between,) = [grit for grit in grits(bed, areas, coats(bed, areas), areas) if grit.is_between]

    assert between.area == pytest.approx(12.0)
    (need,) = [n for n in abrasive_needs((between,))]
    assert (need.quantity, need.unit) == (6, "sheet")  # 2 m2 each


def test_only_what_shows_is_finished_unless_more_is_asked() -> None:
    bed = bed_of(QUEEN)
    met = fixed(bed)

    least, more, most = (
        surfaces(bed_of(QUEEN, finished=word), met)
        for word in ("what shows", "what shows and drawer boxes", "all wood")
    )

    assert least.plywood == 0  # its boxes are of plywood
    assert more.solid == least.solid
    assert more.plywood > 10  # four boxes: sides, backs and bottoms, inside and out
    assert most.plywood == more.plywood
    assert most.solid > least.solid + 14 * 0.3  # slats


def test_discs_are_bought_for_all_that_the_work_order_sands() -> None:
    """The work order sands every part of solid wood, slats too, whatever is finished."""
    bed = bed_of("guest_room_double", finished="what shows")
    order = work_order(bed, ())
    (solid,) = [batch for batch in order.batches if batch.key == "sand solid"]
    marks = {line.mark for line in solid.lines}
    met = fixed(bed)
    area = shown(bed, met)
    wood = sum(float(area[p]) for m in bed.marks if m.mark in marks for p in m.pieces) / 1e6

    first = next(work for work in taken(bed, ()).work if work.key.startswith("sanding/"))

    assert first.quantity == pytest.approx(wood, abs=0.01)
    assert wood > surfaces(bed, met).solid + 14 * 2 * 1.422 * 0.089  # both faces of the slats


def test_fibreboard_is_told_from_plywood_and_wood() -> None:
    bed = bed_of(QUEEN)
    found = surfaces(bed, fixed(bed))
    panels = [m for m in bed.marks if m.material.startswith("mdf")]

    faces = sum(2 * m.length * m.width * m.quantity for m in panels) / 1e6

    # Both faces of all panels, a little less where grooves hold their edges.
    assert 0.85 * faces < found.fibreboard < faces


def test_what_is_behind_rails_and_fronts_does_not_show() -> None:
    bed = bed_of("guest_room_double")
    chosen = {
        mark.name: is_finished(mark.part, "what shows") for mark in bed.marks
    }  # fmt: skip

    hidden = {name for name, is_shown in chosen.items() if not is_shown}

    assert {"cleat", "front block, near", "front block, far", "slat", "slide bearer"} <= hidden
    assert not {"post", "top rail", "end stile", "plank", "front"} & hidden
