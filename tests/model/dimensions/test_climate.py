"""From the air of the house to the moisture of its wood."""

from __future__ import annotations

import pytest

from model.bed import Design
from model.dimensions.climate import (
    moisture_in_damp_air,
    moisture_in_dry_air,
    thickness_way,
    width_way,
    wood_driest,
    wood_wettest,
)
from model.errors import BadInput


def test_a_heated_house_swings_from_about_six_to_ten_percent() -> None:
    """The usual band of heated rooms: common practice, no source. Eq 4-5 to a tenth."""
    design = Design()
    dry = moisture_in_dry_air(design.value("driest_air"), design.value("driest_air_warmth"))
    damp = moisture_in_damp_air(design.value("dampest_air"), design.value("dampest_air_warmth"))

    assert (dry, damp) == (pytest.approx(6.2), pytest.approx(10.0))


def test_wood_that_is_wetter_or_drier_on_the_bench_counts_too() -> None:
    assert wood_driest(6.2, 10.0, 5.0) == 5.0
    assert wood_wettest(6.2, 10.0, 14.0) == 14.0
    assert (wood_driest(6.2, 10.0, 8.0), wood_wettest(6.2, 10.0, 8.0)) == (6.2, 10.0)


def test_dry_and_damp_may_be_mixed_up() -> None:
    assert (wood_driest(10.0, 6.2, 8.0), wood_wettest(10.0, 6.2, 8.0)) == (6.2, 10.0)


def test_the_width_of_a_flat_sawn_board_moves_along_the_rings() -> None:
    assert (width_way("flat-sawn"), thickness_way("flat-sawn")) == ("tangential", "radial")
    assert (width_way("quarter-sawn"), thickness_way("quarter-sawn")) == ("radial", "tangential")


@pytest.mark.parametrize(("humidity", "end"), [(2.0, "least is 5 %"), (99.0, "most is 95 %")])
def test_air_that_no_table_covers_is_refused(humidity: float, end: str) -> None:
    with pytest.raises(BadInput, match=f"dampest_air.*{end}"):
        Design().with_choices({"dampest_air": humidity})
