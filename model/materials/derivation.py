"""What a material may bear, and every step on the way to it, as records.

Tables give averages of small clear pieces (woods) or what a mill promises (sheets). What a piece in
a bed may bear is less: some pieces are weaker than the average, a lasting load weakens wood,
and boards have knots and slanting grain. For a load that lies less long than ten years see
`Allowed.lasting`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.mechanics.duration import LoadTime, Product, duration_factor
from model.units import KgPerM3, Mpa


@dataclass(frozen=True, kw_only=True)
class Step:
    """One line of a derivation: what is done, the factor, what comes out, and its source."""

    title: str
    factor: float
    value_mpa: Mpa
    source: str


@dataclass(frozen=True, kw_only=True, eq=False)
class Allowed:
    """What one material may be asked to bear for ten years, MPa; `along` and `across` the grain,
    for sheets that of the face.

    Bending and shear of a sheet are those of a sheet bent flat. `across_mpa` is bearing on the side
    of the grain (the face of a sheet), held to a deformation: it takes no duration factor.
    Stiffness is the average, because sag is judged by it; that of wood contains the sag by shear of
    a test span of 14 depths. `steps` holds the derivation of every figure by its name.
    """

    key: str
    name: str
    product: Product
    bending_mpa: Mpa
    bending_across_mpa: Mpa
    shear_mpa: Mpa
    across_mpa: Mpa
    along_mpa: Mpa
    moe_mpa: Mpa
    moe_across_mpa: Mpa
    shear_modulus_mpa: Mpa
    specific_gravity: float
    density_kg_m3: KgPerM3
    steps: Mapping[str, tuple[Step, ...]]

    def lasting(self, time: LoadTime) -> float:
        """The factor on bending, shear and compression along the grain for a load of that time."""
        return duration_factor(time, self.product)


FIGURES = tuple(name for name in Allowed.__annotations__ if name.endswith("_mpa"))


def start(title: str, value: Mpa, source: str) -> Step:
    """The first line of a derivation: a figure as it stands in a table."""
    return Step(title=title, factor=1.0, value_mpa=value, source=source)


def chain(first: Step, *then: tuple[str, float, str]) -> tuple[Step, ...]:
    """A derivation: each (title, factor, source) is applied to what the line before gave."""
    steps = [first]
    for title, factor, source in then:
        value = steps[-1].value_mpa * factor
        steps.append(Step(title=title, factor=factor, value_mpa=value, source=source))
    return tuple(steps)
