"""An empty DXF document of ours: units, layers, lines, letters and dimensions, and no date in it.

Lengths stand at true size, in the unit that the plan is told in. What belongs to paper (letters,
dashes, ticks) is sized so that it comes out right when the drawing is plotted at its scale.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import TYPE_CHECKING, NamedTuple

from model.cutting.record import Box
from model.drawings.dimensioning.told import Unit
from model.drawings.measures import GAP, PAST, TICK, WORDS
from model.drawings.paper import DASHES, PEN_WIDTHS, Pen, Point
from model.units import INCH, Mm, Share

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts import Modelspace

VERSION = "R2010"  # the oldest whose letters are UTF-8 and that every reader of today takes
STYLE = "bedwright"  # of dimensions
BLACK, GREY = 7, 8  # colours by number: 7 is black on white and white on black
_MM, _INCH = 4, 1  # $INSUNITS
_DECIMAL, _FRACTIONS = 2, 5  # $LUNITS, DIMLUNIT
_LETTERS = {"regular": "FiraGO-Regular.ttf", "bold": "FiraGO-Bold.ttf"}


class Layer(NamedTuple):
    """What is alike for all that lies on a layer."""

    colour: int = BLACK
    width: Mm = PEN_WIDTHS["narrow"]
    dashes: str = "Continuous"


class Lengths(NamedTuple):
    """How lengths stand in a file: `unit`, and mm on paper to mm of wood."""

    unit: Unit
    scale: Share = 1.0

    @property
    def per_wood(self) -> float:
        """Of the file to a mm of wood."""
        return 1 / INCH if self.unit == "inch" else 1.0

    @property
    def per_paper(self) -> float:
        """Of the file to a mm on paper."""
        return self.per_wood / self.scale


def new_document(lengths: Lengths, layers: Mapping[str, Layer]) -> Document:
    """A document without a drawing."""
    import ezdxf

    with _without_dates():
        document = ezdxf.new(VERSION)
    _say_units(document, lengths)
    for pen, shares in DASHES.items():
        _add_dashes(document, pen, shares)
    for name, file in _LETTERS.items():
        document.styles.new(name, dxfattribs={"font": file})
    _add_dimension_style(document, lengths)
    for name, layer in layers.items():
        add_layer(document, name, layer)
    return document


def add_layer(document: Document, name: str, layer: Layer) -> None:
    """One more layer, unless there is one of that name."""
    if name not in document.layers:
        document.layers.add(
            name, color=layer.colour, lineweight=round(100 * layer.width), linetype=layer.dashes
        )


def file_of(document: Document, extent: Box) -> bytes:
    """The whole file, which opens with `extent` (in the file's unit) in view."""
    space: Modelspace = document.modelspace()
    space.reset_extents((extent.x0, extent.y0, 0), (extent.x1, extent.y1, 0))
    space.reset_limits((extent.x0, extent.y0), (extent.x1, extent.y1))
    middle: Point = ((extent.x0 + extent.x1) / 2, (extent.y0 + extent.y1) / 2)
    high = max(extent.y1 - extent.y0, (extent.x1 - extent.x0) / 1.6)
    document.set_modelspace_vport(1.1 * high, middle)
    for name in sorted(document.entitydb.dxf_types_in_use()):  # the library goes by a set
        document.classes.add_class(name)
    stream = io.StringIO()
    with _without_dates():
        document.write(stream)
    # Ends of lines as they are on most machines that stand beside a router.
    return document.encode(stream.getvalue().replace("\n", "\r\n"))


@contextmanager
def _without_dates() -> Iterator[None]:
    """The library's own switch for files that are alike: no time, no number drawn by lot."""
    from ezdxf import options

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _say_units(document: Document, lengths: Lengths) -> None:
    is_inch = lengths.unit == "inch"
    document.units = _INCH if is_inch else _MM
    header = document.header
    header["$MEASUREMENT"] = 0 if is_inch else 1
    header["$LUNITS"] = _FRACTIONS if is_inch else _DECIMAL
    header["$LUPREC"] = 6 if is_inch else 2
    header["$LTSCALE"] = lengths.per_paper
    header["$LWDISPLAY"] = 1
    header["$DIMSTYLE"] = STYLE


def _add_dashes(document: Document, pen: Pen, shares: tuple[float, ...]) -> None:
    """A line type in mm on paper: strokes count up, gaps down."""
    steps = [
        share * PEN_WIDTHS[pen] * (-1 if k % 2 else 1) for k, share in enumerate(shares)
    ]  # fmt: skip
    whole = sum(abs(step) for step in steps)
    document.linetypes.add(pen, pattern=[whole, *steps], description=f"{pen} lines")


def _add_dimension_style(document: Document, lengths: Lengths) -> None:
    """Dimensions as `model.drawings.measures` inks them, in the steps of `printed`."""
    is_inch = lengths.unit == "inch"
    document.dimstyles.new(
        STYLE,
        dxfattribs={
            "dimscale": lengths.per_paper, "dimtxsty": "regular", "dimtxt": WORDS, "dimtsz": TICK,
            "dimexo": GAP, "dimexe": PAST, "dimgap": 0.45 * WORDS, "dimtad": 1, "dimtih": 0,
            "dimtoh": 0, "dimtofl": 1, "dimzin": 8, "dimlunit": _FRACTIONS if is_inch else _DECIMAL,
            "dimdec": 6 if is_inch else 2, "dimfrac": 2, "dimdsep": ord("."),
        },
    )  # fmt: skip
