"""Lines, circles and words of a DXF file, written as tags straight away.

A drawing has thousands of them, and the library's own take ten times as long to make and write.
They stand among the library's entities and get their numbers from it. Source of the tags: DXF
reference, ENTITIES section, from memory; files are audited by the library in the tests.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from model.drawings.paper import Anchor, Point

if TYPE_CHECKING:
    from ezdxf.lldxf.tagwriter import AbstractTagWriter

_ACROSS: dict[Anchor, int] = {"left": 0, "middle": 1, "right": 2}
_HALF_WAY = 2  # up the capitals


class _Ready:
    """An entity whose tags are ready: what the library asks of one when it writes a file."""

    __slots__ = ("_tags",)
    is_alive = True

    def __init__(self, tags: str) -> None:
        self._tags = tags

    def export_dxf(self, tagwriter: AbstractTagWriter) -> None:
        tagwriter.write_str(self._tags)


class Ink:
    """Writes into one space of a document, its modelspace or a block; all in the file's unit."""

    def __init__(self, space: Any) -> None:
        self._add, self._owner = space.entity_space.entities.append, space.layout_key
        self._number = space.doc.entitydb.next_handle

    def stroke(self, points: Sequence[Point], layer: str, closes: bool = False) -> None:
        """A LINE, or a LWPOLYLINE where there are more than two points."""
        if len(points) == 2:
            tags = _point(points[0]) + _point(points[1], 1)
            self._entity("LINE", layer, "AcDbLine", tags)
            return
        corners = "".join(f" 10\n{x}\n 20\n{y}\n" for x, y in points)
        tags = f" 90\n{len(points)}\n 70\n{int(closes)}\n{corners}"
        self._entity("LWPOLYLINE", layer, "AcDbPolyline", tags)

    def circle(self, at: Point, radius: float, layer: str) -> None:
        """A CIRCLE."""
        self._entity("CIRCLE", layer, "AcDbCircle", f"{_point(at)} 40\n{radius}\n")

    def words(
        self, at: Point, words: str, height: float, anchor: Anchor, turned: bool, style: str,
        layer: str,
    ) -> None:  # fmt: skip
        """A TEXT, by its anchor half-way up its capitals."""
        tags = (
            f"{_point(at)} 40\n{height}\n  1\n{words}\n 50\n{90.0 if turned else 0.0}\n"
            f"  7\n{style}\n 72\n{_ACROSS[anchor]}\n{_point(at, 1)}"
            f"100\nAcDbText\n 73\n{_HALF_WAY}\n"
        )
        self._entity("TEXT", layer, "AcDbText", tags)

    def _entity(self, kind: str, layer: str, subclass: str, tags: str) -> None:
        self._add(_Ready(
            f"  0\n{kind}\n  5\n{self._number()}\n330\n{self._owner}\n100\nAcDbEntity\n"
            f"  8\n{layer}\n100\n{subclass}\n{tags}"
        ))  # fmt: skip


def _point(at: Point, number: int = 0) -> str:
    """The tags of the first or second point of an entity."""
    return f" 1{number}\n{at[0]}\n 2{number}\n{at[1]}\n 3{number}\n0.0\n"
