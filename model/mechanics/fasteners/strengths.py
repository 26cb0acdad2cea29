"""The kinds of strength, and the inputs that every formula of this folder refuses."""

from __future__ import annotations

from typing import NewType

from model.errors import BadInput

Ultimate = NewType("Ultimate", float)  # N: what a test breaks at
Yield = NewType("Yield", float)  # N: where a test leaves its straight line; still no design value
Design = NewType("Design", float)  # N: what may be used, normal load duration
UltimateStress = NewType("UltimateStress", float)  # MPa
DesignStress = NewType("DesignStress", float)  # MPa

N_PER_LBF = 4.4482216152605
MPA_PER_PSI = 0.006894757293168
INCH = 25.4


def above_zero(**figures: float) -> None:
    """Refuse, by name, a figure that is not a number above zero."""
    for name, figure in figures.items():
        if not figure > 0 or figure == float("inf"):
            words = name.replace("_", " ")
            raise BadInput(name, f"The {words} of a fastener must be above zero, not {figure:g}.")


def wood_gravity(gravity: float) -> None:
    """Refuse a specific gravity that no wood has."""
    if not 0.1 <= gravity <= 1.3:
        raise BadInput(
            "specific_gravity",
            f"No wood has a specific gravity of {gravity:g}: balsa has 0.16, lignum vitae 1.1.",
        )
