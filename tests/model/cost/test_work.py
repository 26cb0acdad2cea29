"""Work is counted from plans and parts, each kind in its own unit; rates are the maker's."""

from __future__ import annotations

from decimal import Decimal

import pytest

from model.cost.hours import hours, timed
from model.cost.work import Work
from model.cost.work_on_parts import work_on_parts
from model.part import Cut, Face, Part
from model.parts.marks import marks
from model.shop.cut_list import cut_list
from model.stock.prices import Prices, RateRow
from tests.model.cost.beds import DEMOS, bed_of, plans_of, taken_of

QUEEN = "painted_storage_queen"


def counted(name: str) -> dict[str, float]:
    return {each.key: each.quantity for each in taken_of(name).work}


def test_work_on_the_queen_by_hand() -> None:
    """Two ends of 2 posts, 2 rails and a stile each; two framed sides; four framed drawers."""
    found = counted(QUEEN)

    assert found["drawers"] == found["fronts"] == found["slides"] == 4
    assert found["pulls"] == 8
    # Both ends of 4 end rails and of 2 panel stiles, and of 8 rails of framed fronts.
    assert found["tenons"] == 2 * 4 + 2 * 2 + 2 * 8
    # 4 rails into posts at both ends, stiles into rails; a recess for each of 8 halves of the
    # plates, and a pocket for the hooks behind the 4 in the posts.
    assert found["mortises"] == 4 * 2 + 2 * 2 + 8 + 4
    # Headboard and footboard, two sides with their cleats, four fronts.
    assert found["frames"] == 2 + 2 + 4
    assert found["glue_up"] == 4  # posts of two layers
    assert found["deck"] == 14
    assert found["assembly"] == 1


def test_tenons_are_ends_and_not_cheeks() -> None:
    """Nine open slats with a tenon at both ends, each of two cheeks and two shoulders."""
    assert counted("loft_single")["tenons"] == 9 * 2


@pytest.mark.parametrize("name", DEMOS)
def test_what_is_sawn_is_in_the_plans(name: str) -> None:
    found, plans = counted(name), plans_of(name)

    cuts = sum(
        region.cut is not None for each in plans for layout in each.plan.layouts
        for region in layout.tree.all()
    )  # fmt: skip

    assert found.get("cut_sheets", 0) + found["cut_boards"] == cuts
    assert 0 < found["settings"] <= cuts


def test_boards_are_milled_once_along_each_piece() -> None:
    rough = [each for each in cut_list(bed_of(QUEEN)) if each.source is not None]

    metres = sum(each.rough.length * each.quantity for each in rough) / 1000

    assert counted(QUEEN)["mill"] == pytest.approx(metres / 0.3048, abs=0.005)  # feet


HOLES = Work(key="holes", name="Drill holes", quantity=90, unit="hole")
COATS = Work(key="coats/paint", name="Paint", quantity=19.46, unit="m2")


def test_hours_are_quantity_by_rate_by_what_an_hour_costs() -> None:
    prices = Prices(rates=(RateRow(key="holes", minutes=0.5),), hour=48.0)

    drilled, painted = timed([HOLES, COATS], prices)

    assert drilled.minutes == 45
    assert drilled.cost == Decimal("36.00")  # three quarters of 48
    assert (painted.rate, painted.minutes, painted.cost) == (None, None, None)
    assert hours([drilled, painted]) == Decimal("0.8")


def test_a_rate_is_kept_by_metric_measures_and_told_by_the_shops_own() -> None:
    """A square foot is 0.09290304 m2 by definition: 10 minutes a m2 are 0.929 a square foot."""
    prices = Prices(rates=(RateRow(key="sanding/80", minutes=10.0),), hour=60.0)
    metric = Work(key="sanding/80", name="Sand", quantity=9.290304, unit="m2")
    inch = Work(key="sanding/80", name="Sand", quantity=100, unit="square foot", holds=0.09290304)

    one, other = timed([metric, inch], prices)

    assert (one.rate, other.rate) == (10.0, 0.9290304)
    assert one.minutes == other.minutes
    assert one.cost == other.cost == Decimal("92.90")


def test_without_what_an_hour_costs_there_are_hours_and_no_cost() -> None:
    (drilled,) = timed([HOLES], Prices(rates=(RateRow(key="holes", minutes=2.0),)))

    assert drilled.minutes == 180
    assert drilled.cost is None


def test_a_tongue_along_an_edge_is_one_and_not_two() -> None:
    """A plank: rabbets from both faces leave a tongue along each of its edges."""
    faces = ((Face.BACK, 0.0, 4.0), (Face.FACE, 8.0, 12.0))
    plank = Part(
        name="plank", assembly="headboard", length=600.0, width=90.0, thickness=12.0, lies="zuv",
        at=(0.0, 0.0, 0.0), material="red_maple",
        cuts=(
            *(Cut("tongue rabbet", f, (0.0, edge, low), (600.0, edge + 6.0, high))
              for f, low, high in faces for edge in (0.0, 84.0)),
            Cut("groove", Face.BACK, (-5.0, 40.0, 0.0), (700.0, 46.0, 4.0)),
        ),
    )  # fmt: skip

    (mark,) = marks({"head.planks": (plank,)})
    found = work_on_parts([mark])

    assert (found["tenons"], found["mortises"]) == (2, 0)
    assert found["grooves"] == pytest.approx(0.6)  # metres, as far as there is wood
