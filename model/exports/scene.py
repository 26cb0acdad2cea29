"""The bed as a tree of named pieces: what every model file holds, said once.

The bed holds its assemblies, the assembly `drawers` holds the drawers, and these hold pieces:
`MARK-n` for wood, `HW-code-n` for what is bought. Pieces cut alike share one shape.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from model.bed import Bed
from model.materials import Material
from model.part import Part
from model.parts.pieces import Floats
from model.shop.part_sizes import made_of


@dataclass(frozen=True, kw_only=True, eq=False)
class Shape:
    """One solid, in the axes in which its part is cut (`form`); `name` is the mark, or `HW-code`.

    `material` is None for what is bought.
    """

    name: str
    form: Part
    material: Material | None = None

    @property
    def is_wood(self) -> bool:
        return self.material is not None


@dataclass(frozen=True, kw_only=True, eq=False)
class Item:
    """One piece: its name, its shape, and the (4, 4) matrix that lays the shape on the bed, mm."""

    name: str
    shape: Shape
    matrix: Floats


@dataclass(kw_only=True, eq=False)
class Group:
    """Pieces and groups under one name. `drawer` is the drawer that the group is, as `left-1`."""

    name: str
    drawer: str = ""
    items: list[Item] = field(default_factory=list)
    groups: list[Group] = field(default_factory=list)


def scene(bed: Bed) -> Group:
    """The whole bed without its mattress: assemblies in the order of their first pieces."""
    groups: dict[str, Group] = {}
    drawers: dict[str, Group] = {}
    for piece, item in _items(bed):
        drawer = bed.pieces.groups[bed.pieces.group[piece]]
        if drawer:
            home = drawers.setdefault(drawer, Group(name=f"drawer-{drawer}", drawer=drawer))
        else:
            name = bed.pieces.form(piece).assembly
            home = groups.setdefault(name, Group(name=name))
        home.items.append(item)
    if drawers:
        groups.setdefault("drawers", Group(name="drawers")).groups += drawers.values()
    return Group(name="bed", groups=list(groups.values()))


def items(bed: Bed) -> list[Item]:
    """Every piece in the order of the parts list, then what is bought."""
    return [item for _, item in _items(bed)]


def _items(bed: Bed) -> Iterator[tuple[int, Item]]:
    for mark in bed.marks:
        shape = Shape(name=mark.mark, form=mark.part, material=made_of(bed, mark))
        for count, (piece, matrix) in enumerate(zip(mark.pieces, mark.matrices, strict=True), 1):
            yield piece, Item(name=f"{mark.mark}-{count}", shape=shape, matrix=matrix)
    for bought in bed.hardware:
        name, known = f"HW-{bought.code}", dict[tuple[Any, ...], Shape]()
        for count, piece in enumerate(bought.pieces, 1):
            form = bed.pieces.form(piece)
            key = (form.size, form.cuts, form.holes, form.is_round)
            shape = known.setdefault(key, Shape(name=name, form=form))
            matrix = bed.pieces.matrices[piece]
            yield piece, Item(name=f"{name}-{count}", shape=shape, matrix=matrix)
