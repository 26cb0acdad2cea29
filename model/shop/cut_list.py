"""The cut list: what is sawn for every part, layers and strips of glued-up parts each on its own.

Sheet parts are cut to size at once; solid ones are sawn rough, milled, and cut to size after.
Source: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from model.bed import Bed, Design
from model.cutting.record import Grain
from model.materials import Material, lumber
from model.materials.table import row_of
from model.parts.marks import Mark
from model.shop.wood_source import SAME, Source, allowances, source_of
from model.stock.rough import Size
from model.units import GRIDS, Count, Mm, show_length, snapped, tape_grid

# What strips have over the panel that is glued from them; common practice, no source.
PANEL_THICKER: Mm = 1.5  # 1/16 in: strips slip under the clamps, and the panel is planed flat
PANEL_WIDER: Mm = 6.0  # 1/4 in: one edge is jointed again, and the other ripped


@dataclass(frozen=True, kw_only=True)
class CutPiece:
    """Pieces that are sawn alike: all of one mark, or the layers or strips that it is glued from.

    `name` is what is chalked on them (`S1`, or `H1/1` for layers and strips), `mark` that of the
    parts list. `quantity` is for the whole bed; the pieces of one part have numbers that follow
    each other: of `layers` layers, `strips` strips each. `finished` is the size when milled,
    `rough` when sawn. `source` says where solid wood comes from; it is None for sheets.
    """

    name: str
    mark: str
    part: str
    material: Material
    quantity: Count
    finished: Size
    rough: Size
    grain: Grain
    layers: Count = 1
    strips: Count = 1
    source: Source | None = None
    notes: tuple[str, ...] = ()

    @property
    def for_each(self) -> Count:
        """How many of them one part takes."""
        return self.layers * self.strips

    @property
    def is_glued(self) -> bool:
        """Whether it is a layer or strip of a part."""
        return self.for_each > 1

    @property
    def thickness(self) -> Mm:
        """Of the stock that it is sawn from."""
        return self.finished.thickness if self.source is None else self.source.thickness

    @property
    def task(self) -> str:
        """What pieces share that are sawn from the same stock: `red_maple-31.75`.

        Planed stock as wide as the part is only crosscut, so each of its widths is on its own:
        `european_beech-30x160`. What is ripped from wider: `european_beech-30-planed`.
        """
        name = f"{self.material.key}-{round(self.thickness, 3):g}"
        if self.source is None or not self.source.is_planed:
            return name
        return f"{name}x{self.rough.width:g}" if self.is_as_bought else f"{name}-planed"

    @property
    def is_as_bought(self) -> bool:
        """Whether planed stock has its width already."""
        return self.source is not None and self.source.is_as_wide(self.rough.width)


def cut_list(bed: Bed) -> tuple[CutPiece, ...]:
    """What is sawn for every mark, in the order of the parts list."""
    return tuple(cut_piece(bed, mark) for mark in bed.marks)


def cut_piece(bed: Bed, mark: Mark) -> CutPiece:
    """What is sawn for one mark."""
    wood = row_of(bed.materials, mark.material, "material")
    return _of_sheet(mark, wood) if wood.kind == "sheet" else _of_boards(bed, mark, wood)


def _of_sheet(mark: Mark, sheet: Material) -> CutPiece:
    layer = _layer(mark)
    return CutPiece(
        name=f"{mark.mark}/1" if mark.layers > 1 else mark.mark,
        mark=mark.mark,
        part=mark.name,
        material=sheet,
        quantity=mark.layers * mark.quantity,
        finished=layer,
        rough=layer,
        grain=_grain(mark, sheet),
        layers=mark.layers,
        notes=_sheet_notes(layer, sheet),
    )


def _grain(mark: Mark, sheet: Material) -> Grain:
    if sheet.flat is not None and not sheet.flat.has_grain:
        return "free"
    return "width" if mark.grain == "width" else "free" if mark.grain == "free" else "length"


def _sheet_notes(layer: Size, sheet: Material) -> tuple[str, ...]:
    """Measured sheets differ from their label by parts of a mm; more is another sheet."""
    sold = {sheet.nominal_mm or layer.thickness, sheet.actual_mm or layer.thickness}
    if min(abs(layer.thickness - each) for each in sold) <= 1.0:
        return ()
    return (
        f"It is reckoned {layer.thickness:g} mm thick, and {sheet.name} is another thickness: "
        "choose the sheet that it is made of.",
    )


def _of_boards(bed: Bed, mark: Mark, wood: Material) -> CutPiece:
    design, layer = bed.design, _layer(mark)
    source = source_of(design, wood.key, layer.thickness)
    milled, strips = layer, 1
    if source.rough_width(layer.width, allowances(design).width) > source.widest + 1e-6:
        milled, source = _thicker(design, layer, source)
        strips = _strips(layer.width, source, design)
        grid = GRIDS[design.value("grid")]
        milled = replace(milled, width=grid.up((layer.width + PANEL_WIDER) / strips))
    unit = design.value("shown_unit")
    return CutPiece(
        name=f"{mark.mark}/1" if mark.layers * strips > 1 else mark.mark,
        mark=mark.mark,
        part=mark.name,
        material=wood,
        quantity=mark.layers * strips * mark.quantity,
        finished=milled,
        rough=_sawn(bed, milled, source),
        grain="length",
        layers=mark.layers,
        strips=strips,
        source=source,
        notes=(*_glue_notes(layer, milled, strips, unit), *_resaw_notes(milled, source)),
    )


def _layer(mark: Mark) -> Size:
    thick = mark.part.layer_thickness if mark.layers > 1 else mark.thickness
    return Size(length=snapped(mark.length), width=snapped(mark.width), thickness=snapped(thick))


def _thicker(design: Design, layer: Size, source: Source) -> tuple[Size, Source]:
    """A strip as thick as it is glued, and its boards: never quite flush, a panel is planed flat
    after. Planed boards of the right thickness leave nothing for that.
    """
    if source.is_planed:
        return layer, source
    least = layer.thickness + PANEL_THICKER
    told = tape_grid(design.value("shown_unit")).up(least)
    boards, thicker = (source_of(design, source.material, each) for each in (least, told))
    is_same = abs(boards.thickness - thicker.thickness) <= SAME
    return replace(layer, thickness=told if is_same else least), boards


def _strips(width: Mm, source: Source, design: Design) -> Count:
    """How many strips a part is glued up from that no board is wide enough for."""
    most: Mm = design.value("widest_strip")
    widest = max(min(most, source.widest - allowances(design).width), 1.0)
    return max(2, math.ceil((width + PANEL_WIDER) / widest - 1e-9))


def _sawn(bed: Bed, milled: Size, source: Source) -> Size:
    more = allowances(bed.design)
    return Size(
        length=milled.length + more.length,
        width=source.rough_width(milled.width, more.width),
        thickness=source.thickness,
    )


def _glue_notes(whole: Size, strip: Size, strips: Count, unit: str) -> tuple[str, ...]:
    if strips == 1:
        return ()
    sides = [f"ripped to {show_length(whole.width, unit)}"]
    if strip.thickness > whole.thickness + 1e-6:
        sides.insert(0, f"planed flat to {show_length(whole.thickness, unit)}")
    return (
        f"Glued up from {strips} strips, each jointed to {show_length(strip.width, unit)}; the "
        f"panel is then {' and '.join(sides)}.",
    )


# ---------------------------------------------------------------- resawing

_RESAWN_MOST: Mm = 16.0  # 5/8 in: thicker parts come one from a board, common practice
_RESAW_PLANED: Mm = 3.0  # 1/8 in a slab: two faces of the bandsaw to plane away, common practice
_RESAW_KERF: Mm = 1.6  # 1/16 in: a bandsaw's, common practice


def _resaw_notes(milled: Size, source: Source) -> tuple[str, ...]:
    """Thin parts can be had two from one thick board, where that takes less wood."""
    if source.is_planed or milled.thickness > _RESAWN_MOST:
        return ()
    needed = 2 * (milled.thickness + _RESAW_PLANED) + _RESAW_KERF
    classes = sorted(
        (row.actual_mm, row.nominal)
        for row in lumber().values()
        if row.family == "hardwood" and row.dimension == "thickness" and row.state == "rough"
    )
    found = next((each for each in classes if each[0] >= needed), None)
    if found is None or found[0] > 2 * source.thickness - 1e-6:
        return ()
    return (f"Two can be resawn from one board of {found[1]}.",)
