"""`bed.step`: the bed for other design programs, every piece a named solid, in mm.

The bed is an assembly of assemblies, as in the GLB: `bed`, its sides and ends, the drawers, the
pieces (`MARK-n`, `HW-code-n`). Pieces cut alike share one solid, named by the mark. Round holes are
cylinders wherever they go through flat faces and meet no other hole; a bolt hole that meets the
hole of its barrel nut is a ring of flats. Left out are eased edges and the mattress. Source: ISO
10303-21 and 10303-214 (automotive design, conformance class 2), which most programs read.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import NamedTuple

from model.bed import Bed
from model.exports.looks import Look, look
from model.exports.scene import Group, Shape, scene
from model.exports.step_file import ANY, Ref, StepFile, Word
from model.exports.step_solid import add_solid
from model.exports.version import version
from model.parts.pieces import Floats
from model.solids.brep import brep

_MADE = "2000-01-01T00:00:00"  # one day for all: the same design gives the same bytes
_SCHEMA = "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }"
_FINEST = Word("LENGTH_MEASURE(1.E-05)")  # mm; figures are written to a tenth of it
_HERE = ((0.0, 0.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))


def write(bed: Bed, path: Path) -> None:
    """Write every piece, wood and bought, where it lies on the bed."""
    path.write_bytes(content(bed))


def content(bed: Bed) -> bytes:
    """The bytes of the file."""
    made = _Products(bed)
    made.assembly(scene(bed), bed.design.name)
    made.finish()
    maker = f"Bedwright {version()}"
    head = (
        ("FILE_DESCRIPTION", (["A bed: every piece a named solid, mm, z up"], "2;1")),
        ("FILE_NAME", ("bed.step", _MADE, [""], [""], maker, maker, "")),
        ("FILE_SCHEMA", ([_SCHEMA],)),
    )
    return made.file.to_bytes(head)


class _Made(NamedTuple):
    """A product in the file: its definition, and the representation of its shape."""

    definition: Ref
    shape: Ref


class _Products:
    """Products, from single solids to the whole bed."""

    def __init__(self, bed: Bed) -> None:
        self.file = file = StepFile()
        text = "core data for automotive mechanical design processes"
        context = file.add("APPLICATION_CONTEXT", text)
        file.add(
            "APPLICATION_PROTOCOL_DEFINITION", "international standard", "automotive_design", 2000,
            context,
        )  # fmt: skip
        self.of_product = file.add("PRODUCT_CONTEXT", "", context, "mechanical")
        self.of_design = file.add(
            "PRODUCT_DEFINITION_CONTEXT", "part definition", context, "design"
        )
        self.space = _space(file)
        self.origin = file.axes(*_HERE)
        self.made: dict[Shape, _Made] = {}
        self.named: Counter[str] = Counter()
        self.products: list[Ref] = []
        self.styled: list[Ref] = []

    def assembly(self, group: Group, name: str) -> _Made:
        """A group with all that is in it."""
        inside = [(self._solid(each.shape), each) for each in group.items]
        groups = [(self.assembly(each, each.name), each) for each in group.groups]
        places = [self._place(each.matrix) for each in group.items]
        rows = [self.origin, *places, *(self.origin for _ in groups)]
        shape = self.file.add("SHAPE_REPRESENTATION", name, rows, self.space)
        made = self._product(group.name, name, "", shape)
        for (part, item), place in zip(inside, places, strict=True):
            self._instance(made, part, place, item.name)
        for part, each in groups:
            self._instance(made, part, self.origin, each.name)
        return made

    def finish(self) -> None:
        """What is said of all solids at once."""
        file = self.file
        file.add("PRODUCT_RELATED_PRODUCT_CATEGORY", "part", None, self.products)
        file.add(
            "MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION", "", self.styled, self.space
        )

    def _solid(self, shape: Shape) -> _Made:
        """The solid that all pieces cut alike share."""
        if shape not in self.made:
            solid = add_solid(self.file, shape.name, brep(shape.form))
            rows = [self.origin, solid]
            name = "ADVANCED_BREP_SHAPE_REPRESENTATION"
            found = self.file.add(name, shape.name, rows, self.space)
            self._paint(solid, look(shape))
            told = f"{shape.form.name}, {look(shape).name}"
            self.made[shape] = self._product(shape.name, shape.name, told, found)
        return self.made[shape]

    def _product(self, key: str, name: str, told: str, shape: Ref) -> _Made:
        """A product of a shape; of two with one key the second is numbered."""
        file = self.file
        self.named[key] += 1
        key = f"{key}/{self.named[key]}" if self.named[key] > 1 else key
        product = file.add("PRODUCT", key, name, told, [self.of_product])
        version = file.add("PRODUCT_DEFINITION_FORMATION", "", "", product)
        definition = file.add("PRODUCT_DEFINITION", "design", "", version, self.of_design)
        has_shape = file.add("PRODUCT_DEFINITION_SHAPE", "", "", definition)
        file.add("SHAPE_DEFINITION_REPRESENTATION", has_shape, shape)
        self.products.append(product)
        return _Made(definition, shape)

    def _instance(self, whole: _Made, part: _Made, place: Ref, name: str) -> None:
        """One use of a product in another, at a place. It has no description: some readers would
        show that in place of its name.
        """
        file, kind = self.file, "NEXT_ASSEMBLY_USAGE_OCCURRENCE"
        use = file.add(kind, name, name, None, whole.definition, part.definition, None)
        placed = file.add("PRODUCT_DEFINITION_SHAPE", "", "", use)
        moved = file.add("ITEM_DEFINED_TRANSFORMATION", "", "", self.origin, place)
        relation = file.joined(
            REPRESENTATION_RELATIONSHIP=("", "", part.shape, whole.shape),
            REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION=(moved,),
            SHAPE_REPRESENTATION_RELATIONSHIP=(),
        )
        file.add("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION", relation, placed)

    def _place(self, matrix: Floats) -> Ref:
        rows = matrix[:3, (3, 2, 0)].T.tolist()
        return self.file.axes(*rows)

    def _paint(self, solid: Ref, tone: Look) -> None:
        """The solid's colour on screens."""
        file = self.file
        red, green, blue = (round(each, 4) for each in tone.on_screen)
        colour = file.add("COLOUR_RGB", tone.name, red, green, blue)
        fill = file.add("FILL_AREA_STYLE_COLOUR", "", colour)
        area = file.add("SURFACE_STYLE_FILL_AREA", file.add("FILL_AREA_STYLE", "", [fill]))
        side = file.add("SURFACE_SIDE_STYLE", "", [area])
        usage = file.add("SURFACE_STYLE_USAGE", Word(".BOTH."), side)
        style = file.add("PRESENTATION_STYLE_ASSIGNMENT", [usage])
        self.styled.append(file.add("STYLED_ITEM", "colour", [style], solid))


def _space(file: StepFile) -> Ref:
    """Three dimensions, mm, radians."""
    length = file.joined(
        LENGTH_UNIT=(), NAMED_UNIT=(ANY,), SI_UNIT=(Word(".MILLI."), Word(".METRE."))
    )
    angle = file.joined(NAMED_UNIT=(ANY,), PLANE_ANGLE_UNIT=(), SI_UNIT=(None, Word(".RADIAN.")))
    solid_angle = file.joined(
        NAMED_UNIT=(ANY,), SI_UNIT=(None, Word(".STERADIAN.")), SOLID_ANGLE_UNIT=()
    )
    finest = file.add(
        "UNCERTAINTY_MEASURE_WITH_UNIT", _FINEST, length, "distance_accuracy_value",
        "closer than this is the same",
    )  # fmt: skip
    return file.joined(
        GEOMETRIC_REPRESENTATION_CONTEXT=(3,),
        GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT=([finest],),
        GLOBAL_UNIT_ASSIGNED_CONTEXT=([length, angle, solid_angle],),
        REPRESENTATION_CONTEXT=("", ""),
    )
