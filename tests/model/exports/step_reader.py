"""What an independent reader, the kernel Open CASCADE, finds in an exchange file."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.collections import Sequence_TDF_Label
from OCP.GProp import GProp_GProps
from OCP.IFSelect import IFSelect_ReturnStatus
from OCP.STEPCAFControl import STEPCAFControl_Reader
from OCP.TCollection import TCollection_ExtendedString
from OCP.TDataStd import TDataStd_Name
from OCP.TDF import TDF_Label
from OCP.TDocStd import TDocStd_Document
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS
from OCP.XCAFDoc import XCAFDoc_DocumentTool, XCAFDoc_ShapeTool

_Tool = XCAFDoc_ShapeTool


@dataclass(frozen=True, kw_only=True)
class Node:
    """A use of a product: its own name, the product's name, and the shape where it lies, or what
    it is made of.
    """

    name: str
    product: str
    shape: Any = None
    inside: tuple[Node, ...] = field(default=())

    def pieces(self) -> Iterator[Node]:
        """Everything in it that is made of nothing else."""
        if not self.inside:
            yield self
        for each in self.inside:
            yield from each.pieces()


def read(path: Path) -> Node:
    """The one product of a file that no other uses; its pieces lie where they do in it."""
    document = TDocStd_Document(TCollection_ExtendedString("bed"))
    reader = STEPCAFControl_Reader()
    reader.SetNameMode(True)
    assert reader.ReadFile(str(path)) == IFSelect_ReturnStatus.IFSelect_RetDone
    assert reader.Transfer(document)
    tool = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    roots = Sequence_TDF_Label()
    tool.GetFreeShapes(roots)
    assert roots.Length() == 1
    root = roots.Value(1)
    return Node(name="", product=_name(root), inside=tuple(_inside(root)))


def _inside(product: TDF_Label) -> Iterator[Node]:
    uses = Sequence_TDF_Label()
    _Tool.GetComponents_s(product, uses)
    for k in range(1, uses.Length() + 1):
        use, used = uses.Value(k), TDF_Label()
        _Tool.GetReferredShape_s(use, used)
        inside = tuple(_inside(used)) if _Tool.IsAssembly_s(used) else ()
        shape = None if inside else _Tool.GetShape_s(use)
        yield Node(name=_name(use), product=_name(used), shape=shape, inside=inside)


def _name(label: TDF_Label) -> str:
    found = TDataStd_Name()
    assert label.FindAttribute(TDataStd_Name.GetID_s(), found)
    return str(found.Get().ToExtString())


def is_valid(shape: Any) -> bool:
    """Whether the kernel finds nothing wrong with edges, faces and shells."""
    return bool(BRepCheck_Analyzer(shape).IsValid())


def volume(shape: Any) -> float:
    """mm3, below 0 where the surface is inside out."""
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, found)
    return float(found.Mass())


def bounds(shape: Any) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The corners of the smallest box around a shape's vertices, mm: for what bulges nowhere."""
    corners = _each(shape, TopAbs_ShapeEnum.TopAbs_VERTEX)
    points = (BRep_Tool.Pnt_s(TopoDS.Vertex(each)) for each in corners)
    rows = tuple(zip(*((at.X(), at.Y(), at.Z()) for at in points), strict=True))
    return tuple(map(min, rows)), tuple(map(max, rows))


def solids(shape: Any) -> int:
    """How many solids a shape has."""
    return sum(1 for _ in _each(shape, TopAbs_ShapeEnum.TopAbs_SOLID))


def surfaces(shape: Any) -> Counter[str]:
    """How many faces there are of each kind: `Plane`, `Cylinder`."""
    faces = _each(shape, TopAbs_ShapeEnum.TopAbs_FACE)
    kinds = (BRepAdaptor_Surface(TopoDS.Face(face)).GetType().name for face in faces)
    return Counter(kind.rpartition("_")[2] for kind in kinds)


def _each(shape: Any, kind: Any) -> Iterator[Any]:
    found = TopExp_Explorer(shape, kind)
    while found.More():
        yield found.Current()
        found.Next()
