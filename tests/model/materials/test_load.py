"""Loads that standards test beds with: each is a force or a fall, and says who asks for it."""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.materials.load import PublishedLoad, published_load, published_loads


def test_a_beds_base_bears_1400_newtons_on_a_pad_of_200_mm() -> None:
    """EN 1725:1998, as told by a bedding trade body; the pad: EN 747-2."""
    load = published_load("base")

    assert (load.force_n, load.across_mm, load.time) == (1400, 200, "ten minutes")


def test_two_people_on_the_edge_weigh_245_kg() -> None:
    """EN 1725:1998: 1200 N twice; 2400 N / 9.80665."""
    load = published_load("edge")

    assert 2 * load.force_n / 9.80665 == pytest.approx(245, abs=0.5)
    assert load.time == "seven days"


def test_a_fall_onto_the_bed_has_44_joules() -> None:
    """EN 1725:1998: 25 kg dropped 180 mm."""
    load = published_load("impact")

    assert load.mass_kg * 9.80665 * load.drop_mm / 1000 == pytest.approx(44, abs=0.2)
    assert (load.force_n, load.time) == (0, "impact")


@pytest.mark.parametrize("load", published_loads().values(), ids=lambda load: load.key)
def test_every_load_is_a_force_or_a_fall_with_its_source(load: PublishedLoad) -> None:
    assert (load.force_n > 0) != (load.mass_kg > 0 and load.drop_mm > 0)
    assert load.across_mm > 0
    assert "EN 1725:1998" in load.source


def test_a_load_that_nobody_publishes_is_refused() -> None:
    with pytest.raises(BadInput) as caught:
        published_load("kick")

    assert "kick" in caught.value.sentence
