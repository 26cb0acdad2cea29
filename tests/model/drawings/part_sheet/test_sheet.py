"""Drawings of parts of kinds that the demos lack, and of rooms of several sizes."""

from __future__ import annotations

import pytest

from model.drawings.dimensioning.told import Told
from model.drawings.paper import Measure, Ring, Stroke
from model.drawings.part_sheet.sheet import PartSheet, part_sheet
from model.joints.groove import groove
from model.joints.rabbet import rabbet
from model.materials.material import materials
from model.part import Face, Hole
from tests.checkers.words_on_paper import texts_that_overlap
from tests.model.drawings.part_sheet.samples import MM, mark_of, part, sheet_of


def test_a_part_is_drawn_at_the_largest_scale_that_fits() -> None:
    plain = part(600, 80, 20)

    assert sheet_of(plain).drawing.scale == pytest.approx(1 / 5)  # 1:2 would be 300 mm wide
    assert sheet_of(plain, width=100).drawing.scale == pytest.approx(1 / 10)


def test_a_drawing_tells_when_no_scale_is_small_enough() -> None:
    assert not sheet_of(part(600, 80, 20), height=20).fits


def test_a_part_that_is_too_long_for_any_scale_is_refused() -> None:
    with pytest.raises(ValueError, match="too long"):
        sheet_of(part(60000, 80, 20), width=100)


def test_a_small_groove_is_drawn_at_full_size() -> None:
    size = (1400.0, 167.0, 12.0)
    side = part(*size, cuts=(groove(size, Face.BACK, between=(10, 16), depth=6),))

    told = sheet_of(side).told

    assert "A  1 : 1  groove" in told
    assert "groove 6 wide, 6 deep, full length" in told


def test_rabbets_at_the_ends_are_drawn_again_along_the_part() -> None:
    size = (1400.0, 167.0, 12.0)
    ends = tuple(rabbet(size, Face.BACK, end, width=12, depth=6) for end in (Face.NEAR, Face.FAR))

    told = sheet_of(part(*size, cuts=ends)).told

    assert any("along the middle" in words and "1 : 1" in words for words in told)
    assert told.count("6") == 2 and "12" in told  # what is taken off, what is left, how far in


def test_a_section_along_an_edge_has_all_sizes_of_a_rabbet() -> None:
    size = (138.0, 38.0, 21.0)
    block = part(*size, cuts=(rabbet(size, Face.BACK, Face.LOWER, width=17, depth=8),))

    told = sheet_of(block).told

    assert {"17", "8", "13"} <= set(told)  # 38 - 17 = 21, which is its thickness as well
    assert told.count("21") == 2


def test_a_section_is_broken_off_only_where_it_would_be_too_thin() -> None:
    bore = Hole("shank hole", Face.FACE, (13, 44.5, 24), (0.0, 0.0, -1.0), 4.5, 24)
    slat = sheet_of(part(1422, 89, 24, holes=(bore,)))
    panel = sheet_of(part(1422, 189, 6, cuts=(groove((1422, 189, 6), Face.BACK, between=(9, 15),
                                                     depth=3),)))  # fmt: skip

    assert "A  1 : 2  shank hole" in slat.told  # 1:1 would be 89 mm high
    assert any(words.startswith("A  1 : 1") for words in panel.told)


def test_a_taper_is_told_with_its_length_and_its_end() -> None:
    leg = part(895, 65, 65, taper=10.0, taper_length=175.0)

    told = sheet_of(leg).told

    assert "175" in told
    assert "Tapered on all four sides, 10 a side," in told
    assert "to 45 × 45 at the near end." in told


def test_the_outline_of_a_taper_runs_to_its_end() -> None:
    leg = part(895, 65, 65, taper=10.0, taper_length=175.0)
    sheet = sheet_of(leg)
    scale = sheet.drawing.scale

    heights = {
        round(abs(s.points[0][1] - s.points[-1][1]) / scale, 1)
        for s in sheet.drawing.items
        if isinstance(s, Stroke) and s.pen == "wide"
    }
    assert {45.0, 65.0, 10.0} <= heights  # near end, far end, and the rise of the taper


def test_layers_are_told_and_drawn() -> None:
    post = part(600, 76, 50, layers=2, layer_thickness=25.0)

    assert "Glued up of 2 layers, 25 each." in sheet_of(post).told


def test_a_round_bar_has_a_diameter() -> None:
    bar = part(200, 12, 12, is_round=True)
    sheet = sheet_of(bar)

    assert "⌀ 12" in sheet.told and "200" in sheet.told
    assert any(isinstance(item, Ring) and item.pen == "wide" for item in sheet.drawing.items)


def test_equal_spaces_are_told_with_their_sum() -> None:
    bores = tuple(
        Hole("shank hole", Face.FACE, (40 + 150 * k, 19, 30), (0.0, 0.0, -1.0), 4.37, 30)
        for k in range(14)
    )

    assert "13 × 150 = 1950" in sheet_of(part(2030, 38, 30, holes=bores)).told


def test_holes_across_the_grain_of_a_wide_part_are_measured_beside_the_view() -> None:
    bores = tuple(
        Hole("pull hole", Face.FACE, (x, 92, 19), (0.0, 0.0, -1.0), 4.8, 19) for x in (250, 350)
    )

    sheet = sheet_of(part(600, 184, 19, holes=bores))

    assert {"250", "350", "92"} <= set(sheet.told)


def test_grain_along_the_width_is_shown_upright() -> None:
    sheet = sheet_of(part(300, 600, 6, grain="width"))

    assert "grain" in sheet.told


def test_both_units_stand_beside_each_other() -> None:
    told = sheet_of(part(508, 76.2, 25.4), Told("mm", has_both=True)).told

    assert '508 [20"]' in told


def test_a_strange_part_still_has_no_words_on_words() -> None:
    size = (60.0, 9.0, 4.0)
    chip = part(*size, cuts=(groove(size, Face.FACE, between=(3, 5), depth=1),))

    assert texts_that_overlap(sheet_of(chip).drawing.items) == []


def test_the_lower_edge_lies_below_in_the_main_view_whichever_side_is_worked() -> None:
    """A groove 10 mm from the lower edge lies low on paper, on the face and on the back."""
    size = (600.0, 160.0, 12.0)
    for side in (Face.FACE, Face.BACK):
        sheet = sheet_of(part(*size, cuts=(groove(size, side, between=(10, 16), depth=6),)))

        assert any(words.startswith("upper edge above") for words in sheet.told)
        whole = next(m for m in measures(sheet) if m.upright and m.size == 160)
        up = next(m for m in measures(sheet) if m.upright and m.size == 10)
        assert min(up.start[1], up.end[1]) == pytest.approx(min(whole.start[1], whole.end[1]))


def test_a_worked_back_is_measured_from_its_near_end_at_the_right() -> None:
    """As it lies when the board is turned over end for end, its lower edge left where it was."""
    hole = Hole("bolt hole", Face.BACK, (100, 40, 0), (0.0, 0.0, 1.0), 8, 20)
    sheet = sheet_of(part(600, 80, 20, holes=(hole,)))

    assert any(words.endswith("near end at the right") for words in sheet.told)
    whole = next(m for m in measures(sheet) if not m.upright and m.size == 600)
    at = next(m for m in measures(sheet) if not m.upright and m.size == 100)
    assert max(at.start[0], at.end[0]) == pytest.approx(max(whole.start[0], whole.end[0]))
    rings = [item.at[0] for item in sheet.drawing.items if isinstance(item, Ring)]
    assert rings and all(x == pytest.approx(min(at.start[0], at.end[0])) for x in rings)


def test_holes_at_odd_places_are_each_told_from_the_near_end() -> None:
    """A chain of rounded spans would pile up what each of them leaves."""
    places = (10.33, 41.27, 300.13, 571.77)
    holes = tuple(
        Hole("dowel hole", Face.LOWER, (x, 0, 10), (0.0, 1.0, 0.0), 8, 20) for x in places
    )
    sheet = sheet_of(part(600, 80, 20, holes=holes), Told("inch"))

    lows = {round(m.size, 2): m.start[0] for m in measures(sheet) if not m.upright}
    assert set(places) <= set(lows)
    assert len({round(lows[place], 6) for place in places}) == 1


def test_a_board_of_fibres_has_no_grain() -> None:
    sheets = [each for each in materials().values() if each.flat is not None]
    fibres, layers = (
        next(each for each in sheets if each.flat and each.flat.has_grain == wanted)
        for wanted in (False, True)
    )

    plain = part(600, 80, 20)
    told = [part_sheet(mark_of(plain, made_of=m), MM, 180, 240).told for m in (fibres, layers)]
    assert "grain" not in told[0] and "grain" in told[1]


def measures(sheet: PartSheet) -> list[Measure]:
    return [item for item in sheet.drawing.items if isinstance(item, Measure)]
