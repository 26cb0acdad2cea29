"""From what a mill promises to what a sheet may bear (EN 1995-1-1, turned into one allowable)."""

from __future__ import annotations

from model.materials.clear_wood import clear_figure
from model.materials.derivation import Allowed, Step, chain, start
from model.materials.sheet import Sheet
from model.materials.sheet_family import SheetFamily, sheet_family
from model.mechanics.duration import Product
from model.units import Mpa

_LOAD_FACTOR = 1.5  # Source: EN 1990:2002, table A1.2(B), imposed loads, from memory
_TEN_YEARS: dict[Product, float] = {"plywood": 0.70, "fibreboard": 0.40}
_SOURCE_TEN_YEARS = (
    "EN 1995-1-1:2004, table 3.1, long-term, service class 1, plywood 0.70, MDF 0.40, from memory"
)
_EDGE_SHARE = 0.5  # compression in the plane of the sheet, of its bending strength
_DRY_MASS = 1120  # kg/m3 at 12 % moisture per unit of specific gravity

Line = tuple[str, float, str]


def of_sheet(sheet: Sheet) -> Allowed:
    """What a sheet may bear for ten years when it is bent flat."""
    family = sheet_family(sheet.family)
    bending = _bending(sheet, "along", sheet.mor_along_mpa, family)
    shear = start(
        f"shear between the layers of {family.name}, fifth percentile",
        family.planar_shear_mpa,
        family.source_planar_shear,
    )
    in_plane: Line = ("in its plane, against bending", _EDGE_SHARE, "assumed, no source")
    steps = {
        "bending_mpa": bending,
        "bending_across_mpa": _bending(sheet, "across", sheet.mor_across_mpa, family),
        "shear_mpa": chain(shear, *_safe(family)),
        "across_mpa": (
            start("bearing on the face", family.face_bearing_mpa, family.source_face_bearing),
        ),
        "along_mpa": (*bending, *chain(bending[-1], in_plane)[1:]),
        "moe_mpa": _stiffness(sheet, "along", sheet.moe_along_mpa),
        "moe_across_mpa": _stiffness(sheet, "across", sheet.moe_across_mpa),
        "shear_modulus_mpa": (
            start(
                f"shear modulus between the layers of {family.name}, average",
                family.shear_modulus_mpa,
                family.source_planar_shear,
            ),
        ),
    }
    return Allowed(
        key=sheet.key,
        name=sheet.name,
        product=family.product,
        specific_gravity=sheet.density_kg_m3 / _DRY_MASS,
        density_kg_m3=sheet.density_kg_m3,
        steps=steps,
        **{name: derived[-1].value_mpa for name, derived in steps.items()},
    )


def _bending(sheet: Sheet, way: str, strength: Mpa, family: SheetFamily) -> tuple[Step, ...]:
    """A mill's least value stands for the fifth percentile; an average is brought down to it."""
    said = "least" if sheet.strength_is == "least" else "average"
    first = start(
        f"bending strength of {sheet.name} {way} the face, {said}", strength, sheet.source_strength
    )
    if sheet.strength_is == "least":
        return chain(first, *_safe(family))
    wood = clear_figure("bending")
    spread: Line = (
        "what 95 pieces of 100 reach, spread as clear wood",
        wood.fifth_percentile,
        f"assumed; {wood.source_variation}",
    )
    return chain(first, spread, *_safe(family))


def _safe(family: SheetFamily) -> tuple[Line, ...]:
    return (
        ("ten years of load", _TEN_YEARS[family.product], _SOURCE_TEN_YEARS),
        ("safety of the material", 1 / family.safety, family.source_safety),
        (
            "safety of the load",
            1 / _LOAD_FACTOR,
            "EN 1990:2002, table A1.2(B), imposed loads, from memory",
        ),
    )


def _stiffness(sheet: Sheet, way: str, value: Mpa) -> tuple[Step, ...]:
    return (
        start(f"stiffness of {sheet.name} {way} the face, average", value, sheet.source_strength),
    )
