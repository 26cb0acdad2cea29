"""Ultimate and design values are never mixed."""

from __future__ import annotations

import inspect
from types import ModuleType
from typing import get_type_hints

import pytest

from model.errors import BadInput
from model.mechanics.fasteners import bolts, glue, lateral, withdrawal
from model.mechanics.fasteners.strengths import Design, Ultimate, Yield, above_zero, wood_gravity
from model.mechanics.fasteners.withdrawal import design_screw_withdrawal, ultimate_screw_withdrawal

KINDS = {"ultimate": Ultimate, "yield": Yield, "limit": Yield, "design": Design}
MODULES = (bolts, glue, lateral, withdrawal)


def strengths(module: ModuleType) -> list[tuple[str, object]]:
    """Every function of a module that gives a strength, and the kind it gives."""
    return [
        (name, get_type_hints(each)["return"])
        for name, each in vars(module).items()
        if inspect.isfunction(each)
        and each.__module__ == module.__name__
        and get_type_hints(each).get("return") in KINDS.values()
        and not name.startswith("_")
    ]


@pytest.mark.parametrize("module", MODULES, ids=lambda each: each.__name__)
def test_a_strength_is_of_the_kind_that_its_function_is_named_for(module: ModuleType) -> None:
    found = strengths(module)

    assert found
    for name, kind in found:
        named = [word for word in name.split("_") if word in KINDS]
        assert named and KINDS[named[0]] is kind, name


def test_a_design_value_is_a_fraction_of_the_ultimate_one() -> None:
    """The margins of the standard: 4.5 to 5.5."""
    for gravity in (0.35, 0.5, 0.7):
        ultimate = ultimate_screw_withdrawal(gravity, 4.17, 25)
        assert 4.5 < ultimate / design_screw_withdrawal(gravity, 4.17, 25) < 5.6


@pytest.mark.parametrize("figure", [0.0, -1.0, float("nan"), float("inf")])
def test_a_figure_that_is_not_above_zero_is_refused_by_name(figure: float) -> None:
    with pytest.raises(BadInput, match="The threaded length of a fastener must be above zero"):
        above_zero(threaded_length=figure)


@pytest.mark.parametrize("gravity", [0.0, 0.05, 420.0, float("nan")])
def test_a_density_is_not_taken_for_a_specific_gravity(gravity: float) -> None:
    with pytest.raises(BadInput, match="No wood has a specific gravity of"):
        wood_gravity(gravity)
