"""What holds for a whole price list: what can be typed can be kept with the design, and no more."""

from __future__ import annotations

import pytest

from model.cost.general_prices import with_general
from model.errors import BadInput
from model.stock.price_record import LONGEST, MOST, prices_of, record_of
from model.stock.prices import NO_PRICES

# As a price table has them: shares by the hundred.
TYPED = {
    name: most if name in ("decimals", "valid_days") else most * 100 for name, most in MOST.items()
}


@pytest.mark.parametrize("name", MOST)
def test_the_most_that_can_be_typed_can_be_kept(name: str) -> None:
    typed = with_general(NO_PRICES, name, f"{TYPED[name]:g}", "line 2")

    assert getattr(typed, name) == MOST[name]
    assert prices_of(record_of(typed)) == typed


@pytest.mark.parametrize("name", MOST)
def test_more_than_can_be_kept_is_refused_when_it_is_typed(name: str) -> None:
    with pytest.raises(BadInput, match=f"it takes .* up to {TYPED[name]:g}"):
        with_general(NO_PRICES, name, f"{TYPED[name] + 1:g}", "line 2")


@pytest.mark.parametrize("name", LONGEST)
def test_the_longest_text_that_can_be_typed_can_be_kept(name: str) -> None:
    typed = with_general(NO_PRICES, name, "x" * LONGEST[name], "line 2")

    assert prices_of(record_of(typed)) == typed
    with pytest.raises(BadInput, match="longer than"):
        with_general(NO_PRICES, name, "x" * (LONGEST[name] + 1), "line 2")
