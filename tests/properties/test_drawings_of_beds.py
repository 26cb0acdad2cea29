"""The drawings of beds as files, opened again: what is measured in them is what is built."""

from __future__ import annotations

import io
import os
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pypdf
import pytest

from model.bed import Bed, solve
from model.designs import read
from model.drawings.paper import Measure
from model.exports.drawing_dxf import dxf_file
from model.exports.drawing_files import Named, drawings, sheet_marks
from model.exports.features import features
from model.exports.pdf import pdf_file
from model.exports.profile_dxf import profile_file
from model.parts.marks import Mark
from model.planset.book import PlanSet
from model.planset.elevations import told_by
from model.planset.setting import Setting
from model.solids.exact import solid
from tests.model.exports.dxf_reader import (
    area,
    dimensions,
    extents,
    mm_per_unit,
    opened,
    plain,
)
from tests.properties.designs import built_from

DEMOS = Path(__file__).resolve().parents[2] / "resources" / "demos"
COUNT = int(os.environ.get("BEDWRIGHT_DRAWN_BEDS", "2"))  # drawn by lot, besides the demos
FILES = [path.stem for path in sorted(DEMOS.glob("*.bedwright"))]
BEDS = [*FILES, *(f"random {n}" for n in range(COUNT))]
TRUE = 1e-6  # mm
# The page that shows the same view, by the name of a drawing.
PAGES = {
    "ends": "ends", "sides": "sides", "plan": "plan", "section-1": "sections",
    "section-2": "sections/2", "section-3": "sections/3",
}  # fmt: skip


@cache
def drawn_by_lot() -> tuple[Bed, ...]:
    return built_from(0, COUNT)


@cache
def bed_of(name: str) -> Bed:
    if name in FILES:
        return solve(read(DEMOS / f"{name}.bedwright"))
    return drawn_by_lot()[int(name.split()[1])]


def drawn(name: str) -> Iterator[Named]:
    return drawings(PlanSet(bed_of(name)))


def reopened(name: str, each: Named) -> Any:
    """A drawing's file, opened again."""
    return opened(dxf_file(each.drawing, told_by(Setting(bed=bed_of(name))).unit))


# ---------------------------------------------------------------- drawings


@pytest.mark.parametrize("name", BEDS)
def test_dimensions_measure_wood_and_say_what_the_paper_says(name: str) -> None:
    for each in drawn(name):
        document = reopened(name, each)
        wanted = [item for item in each.drawing.items if isinstance(item, Measure)]
        found = list(dimensions(document))
        assert [told.size for told in found] == pytest.approx(
            [measure.size for measure in wanted], abs=TRUE
        )
        assert [plain(told.words) for told in found] == [measure.words for measure in wanted]


@pytest.mark.parametrize("name", ["guest_room_double", "painted_storage_queen"])  # mm, inches
def test_dimensions_of_views_stand_on_the_pages_of_the_plan_set(name: str) -> None:
    book = PlanSet(bed_of(name))
    keys = [sheet.key for sheet in book.sheets]
    for each in drawn(name):
        key = PAGES.get(each.name, "")
        if key not in keys:
            continue
        (page,) = book.pages({keys.index(key)})
        file = io.BytesIO(pdf_file([page], book.title))
        text = _packed(pypdf.PdfReader(file).pages[0].extract_text())
        words = [plain(told.words) for told in dimensions(reopened(name, each))]
        assert words and [each for each in words if _packed(each) not in text] == []


def _packed(words: str) -> str:
    return "".join(words.split())


@pytest.mark.parametrize("name", BEDS)
def test_every_mark_and_view_is_drawn(name: str) -> None:
    names = [each.name for each in drawn(name)]

    assert {mark.mark for mark in bed_of(name).marks} <= set(names)
    assert {"ends", "sides", "plan", "section-1"} <= set(names)
    assert len({each.lower() for each in names}) == len(names)  # where a and A are one


@pytest.mark.parametrize("name", BEDS)
def test_the_plan_is_as_large_as_the_bed_with_its_pulls(name: str) -> None:
    bed = bed_of(name)
    codes = [bed.pieces.form(piece).hardware for piece in range(len(bed.pieces))]
    shown = [n for n, code in enumerate(codes) if not code or code.startswith("PULL-")]
    low, high = (np.asarray(side)[shown] for side in bed.pieces.bounds)
    plan = next(each for each in drawn(name) if each.name == "plan")

    x0, y0, x1, y1 = extents(reopened(name, plan), "LINE", "LWPOLYLINE", on="outline")
    across, along, _ = (high.max(axis=0) - low.min(axis=0)).tolist()
    # Views tell edges that meet by thousandths of a mm.
    assert (x1 - x0, y1 - y0) == pytest.approx((across, along), abs=1e-3)


# ---------------------------------------------------------------- profiles


def profiles(name: str) -> Iterator[tuple[Mark, Any]]:
    bed = bed_of(name)
    unit = told_by(Setting(bed=bed)).unit
    for mark in sheet_marks(bed):
        yield mark, opened(profile_file(mark, unit))


def said(document: Any) -> str:
    return "\n".join(plain(text.dxf.text) for text in document.modelspace().query("TEXT"))


@pytest.mark.parametrize("name", BEDS)
def test_a_profile_is_as_large_as_its_part(name: str) -> None:
    for mark, document in profiles(name):
        length, width, _ = mark.part.size
        found = extents(document, "LWPOLYLINE")
        assert found == pytest.approx((0.0, 0.0, length, width), abs=TRUE)


@pytest.mark.parametrize("name", BEDS)
def test_a_profile_has_the_holes_of_the_parts_list(name: str) -> None:
    for mark, document in profiles(name):
        mm, is_back = mm_per_unit(document), "The back lies up" in said(document)
        found = [
            (mm * c.dxf.center.x, mm * c.dxf.center.y, 2 * mm * c.dxf.radius, c.dxf.layer)
            for c in document.modelspace().query("CIRCLE")
        ]
        wanted = []
        for each in features(mark.part):
            if abs(each.get("toward", (0, 0, 0))[2]) == 1:
                x, y, _ = each["position"]
                y = mark.part.size[1] - y if is_back else y
                wanted.append((x, y, each["size"]["diameter"], each["size"]["depth"]))
        assert len(found) == len(wanted)
        for x, y, diameter, deep in wanted:
            (layer,) = (
                row[3] for row in found if row[:3] == pytest.approx((x, y, diameter), abs=TRUE)
            )
            assert layer.endswith("-through") or deep < mark.part.size[2] - TRUE


@pytest.mark.parametrize("name", BEDS)
def test_what_a_router_leaves_weighs_as_much_as_the_part(name: str) -> None:
    """Outline less openings and pockets, each by its depth, against the exact solid."""
    for mark, document in profiles(name):
        kinds = {cut.kind for cut in mark.part.cuts}
        if mark.part.taper or any(f"{kind} in the" in said(document) for kind in kinds):
            continue
        plain_part = replace(mark.part, holes=())
        left = _area(document, "outline") - _area(document, "opening")
        volume = left * mark.part.size[2]
        for layer in {each.dxf.layer for each in document.modelspace().query("LWPOLYLINE")}:
            if found := re.match(r"pocket-([\d.]+)(mm|in)-", layer):
                deep = float(found[1]) * (25.4 if found[2] == "in" else 1.0)
                volume -= deep * _area(document, layer)
        assert volume == pytest.approx(solid(plain_part).volume(), rel=2e-4)


def _area(document: Any, layer: str) -> float:
    """Of all loops of a layer, those around islands counting down, mm²."""
    lines = document.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
    ground = sum(area(list(line.get_points("xy"))) for line in lines)
    return abs(ground) * mm_per_unit(document) ** 2
