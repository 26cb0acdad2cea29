"""Every choice of finish and spares moves something on the buying list."""

from __future__ import annotations

from typing import Any

import pytest

from model.brief import finish
from model.brief.declare import choices_of
from model.cost.costing import Taken, taken
from tests.model.cost.beds import bed_of, plans_of

QUEEN = "painted_storage_queen"
# A painted bed, so that primer and sealer are on it; of each choice another value.
PAINTED: dict[str, Any] = {"finish": "painted", "finish_coats": 2, "primer_coats": 1}
OTHER: dict[str, Any] = {
    "finish": "oil", "finished": "all wood", "primer_coats": 2, "sealer_coats": 1,
    "finish_coats": 3, "finish_loss": 40.0, "sanded_to": "220", "spare_screws": 50.0,
    "glue_loss": 100.0,
}  # fmt: skip
CHOICES = [c.name for topic in (finish.Finishing, finish.Spares) for c in choices_of(topic)]


def took(**changes: Any) -> Taken:
    return taken(bed_of(QUEEN, **(PAINTED | changes)), plans_of(QUEEN))


@pytest.mark.parametrize("name", CHOICES)
def test_every_choice_of_finish_and_spares_moves_the_buying_list(name: str) -> None:
    assert took(**{name: OTHER[name]}).needs != took().needs


@pytest.mark.parametrize("name", ["finish", "finished", "finish_coats", "sanded_to"])
def test_what_is_finished_and_how_often_moves_the_work(name: str) -> None:
    assert took(**{name: OTHER[name]}).work != took().work
