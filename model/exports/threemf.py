"""`bed.3mf`: every piece of the bed as an object with its name, in mm, z up, the drawers closed.

A shape is written once; each piece is an object of its own (`MARK-n`, `HW-code-n`) that shows it
where it lies, so that a reader can pick one, hide one, or print one. The mattress is left out.
Source: 3MF Core Specification 1.3.0, 3MF Consortium; its packaging is the Open Packaging
Conventions (ISO/IEC 29500-2).
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator
from pathlib import Path
from xml.sax.saxutils import escape, quoteattr

from model.bed import Bed
from model.exports.looks import Look, look
from model.exports.scene import Item, Shape, items
from model.exports.version import version
from model.parts.pieces import Floats
from model.solids.exact import solid_mesh

_MADE = (2000, 1, 1, 0, 0, 0)  # one day for all: the same design gives the same bytes
_UNIX = 3  # else the system that writes is told in the file
_MODEL = "3D/3dmodel.model"
# Source: XML 1.0, production 2 (Char).
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_TYPES = f"""{_HEAD}<Types xmlns="{_PACKAGE}/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
"""
_START = f"""{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships">
<Relationship Id="model" Target="/{_MODEL}" \
Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
"""


def write(bed: Bed, path: Path) -> None:
    """Write every piece, wood and bought, where it lies on the bed."""
    path.write_bytes(content(bed))


def content(bed: Bed) -> bytes:
    """The bytes of the file."""
    model = _HEAD + "\n".join(_model(bed)) + "\n"
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as package:
        for name, text in (
            ("[Content_Types].xml", _TYPES), ("_rels/.rels", _START), (_MODEL, model),
        ):  # fmt: skip
            entry = zipfile.ZipInfo(name, _MADE)
            entry.compress_type, entry.create_system = zipfile.ZIP_DEFLATED, _UNIX
            package.writestr(entry, text.encode("utf-8"))
    return file.getvalue()


def _model(bed: Bed) -> Iterator[str]:
    every = items(bed)
    shapes = list(dict.fromkeys(item.shape for item in every))
    looks = list(dict.fromkeys(look(shape) for shape in shapes))
    numbers = {shape: number for number, shape in enumerate(shapes, 2)}  # 1 are the looks
    yield f'<model unit="millimeter" xml:lang="en" xmlns="{_CORE}">'
    yield f'<metadata name="Title">{escape(_shown(bed.design.name))}</metadata>'
    yield f'<metadata name="Application">Bedwright {version()}</metadata>'
    yield "<resources>"
    yield from _looks(looks)
    for shape, number in numbers.items():
        yield from _shape(shape, number, looks.index(look(shape)))
    for number, item in enumerate(every, 2 + len(shapes)):
        yield from _piece(item, number, numbers[item.shape])
    yield "</resources>"
    yield "<build>"
    for number, item in enumerate(every, 2 + len(shapes)):
        place = f'objectid="{number}" transform="{_transform(item.matrix)}"'
        yield f"<item {place} partnumber={_quoted(item.name)}/>"
    yield "</build>"
    yield "</model>"


def _looks(looks: list[Look]) -> Iterator[str]:
    yield '<basematerials id="1">'
    for each in looks:
        tone = "".join(f"{round(255 * part):02X}" for part in each.on_screen)
        yield f'<base name={_quoted(each.name)} displaycolor="#{tone}"/>'
    yield "</basematerials>"


def _shape(shape: Shape, number: int, tone: int) -> Iterator[str]:
    corners, faces = solid_mesh(shape.form)
    known = f'id="{number}" type="model" name={_quoted(shape.name)} pid="1" pindex="{tone}"'
    yield f"<object {known}><mesh><vertices>"
    for x, y, z in corners.tolist():
        yield f'<vertex x="{_figure(x)}" y="{_figure(y)}" z="{_figure(z)}"/>'
    yield "</vertices><triangles>"
    for one, two, three in faces.tolist():
        yield f'<triangle v1="{one}" v2="{two}" v3="{three}"/>'
    yield "</triangles></mesh></object>"


def _piece(item: Item, number: int, shape: int) -> Iterator[str]:
    known = f'id="{number}" type="model" name={_quoted(item.name)}'
    yield f"<object {known} partnumber={_quoted(item.shape.name)}>"
    yield f'<components><component objectid="{shape}"/></components></object>'


def _transform(matrix: Floats) -> str:
    """Twelve figures as the format counts them: rows that a point, written as a row, goes by."""
    return " ".join(_figure(each) for each in matrix[:3].T.ravel().tolist())


def _figure(value: float) -> str:
    """A figure to 1 nm; + 0.0: no minus zero."""
    return f"{round(value, 6) + 0.0:.6f}".rstrip("0").rstrip(".")


def _quoted(text: str) -> str:
    return quoteattr(_shown(text))


def _shown(text: str) -> str:
    """A space for each character that XML has no place for."""
    return _NOT_XML.sub(" ", text)
