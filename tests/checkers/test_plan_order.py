"""The checker of the order of sawing finds what is out of order."""

from __future__ import annotations

import pytest

from model.cutting.order import Batch, batches
from tests.checkers.plan_order import order_faults
from tests.checkers.test_plans import SOUND

ORDER = batches(SOUND)
FIRST, LAST = ORDER[0], ORDER[-1]
ONCE_MORE = FIRST._replace(steps=FIRST.steps * 2)
OTHER = FIRST.setting._replace(distance=123.0)
SPOILT: dict[str, tuple[tuple[Batch, ...], str]] = {
    "forgotten": (ORDER[:-1], "nobody makes the cut"),
    "twice": ((ONCE_MORE, *ORDER[1:]), "made twice"),
    "before its wood": ((LAST, *ORDER[:-1]), "before the wood is there"),
    "numbers": ((LAST, *ORDER[:-1]), "the steps are numbered"),
    "setting": ((FIRST._replace(setting=OTHER), *ORDER[1:]), "is no rip at 123.0"),
}


def test_a_sound_order_has_no_faults() -> None:
    assert order_faults(SOUND, ORDER) == []


@pytest.mark.parametrize("name", SPOILT)
def test_what_spoils_an_order_is_found(name: str) -> None:
    order, sentence = SPOILT[name]

    assert sentence in "\n".join(order_faults(SOUND, order))
