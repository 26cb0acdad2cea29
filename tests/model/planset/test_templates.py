"""Full-size templates, measured in the file that is printed."""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

import pypdf
import pytest
from pypdf.generic import ContentStream

from model.cutting.record import Box
from model.exports.pdf import pdf_file
from model.planset.page import LETTER, PAPERS, Paper
from model.planset.sheet import room_on
from model.planset.templates import Template, coded, laid_out, templates, windows
from tests.model.building.beds import QUEEN
from tests.model.planset.sets import bed_of, plan_of

NAMES = ("no drawers", "loft_single")
POINT = 25.4 / 72  # mm: PDF's own unit (ISO 32000-1, 8.3.2.3)
WRITTEN = 0.01  # mm: how fine numbers are written in the file
Segment = tuple[tuple[float, float], tuple[float, float]]


@pytest.mark.parametrize("name", NAMES)
def test_the_bars_have_their_length_on_paper(name: str) -> None:
    for page in printed(name):
        long = [math.dist(*each) for each in page]
        assert any(each == pytest.approx(100.0, abs=WRITTEN) for each in long)
        assert any(each == pytest.approx(101.6, abs=WRITTEN) for each in long)


@pytest.mark.parametrize("name", NAMES)
def test_holes_lie_as_far_apart_as_in_the_part(name: str) -> None:
    found = [distances(crosses(page)) for page in printed(name)]
    for template in templates(bed_of(name)):
        own = distances(centres(template))
        assert own, "a template without holes to measure"
        for each in own:
            assert any(
                each == pytest.approx(one, abs=3 * WRITTEN) for page in found for one in page
            )


def centres(template: Template) -> list[tuple[float, float]]:
    """Of the holes within it, along the part and over its height."""
    part = template.mark.part
    up = 1 if template.face.axis == 2 else 2
    places = {(hole.at[0], hole.at[up]) for hole in part.holes if hole.face == template.face}
    return sorted(each for each in places if template.low <= each[0] <= template.high)


def distances(places: list[tuple[float, float]]) -> list[float]:
    return [math.dist(*pair) for pair in combinations(places, 2)]


def crosses(page: list[Segment]) -> list[tuple[float, float]]:
    """Middles that a level and an upright stroke of one length share."""
    middles: dict[tuple[float, float], set[bool]] = {}
    for (x0, y0), (x1, y1) in page:
        if math.dist((x0, y0), (x1, y1)) == pytest.approx(12.0, abs=WRITTEN):
            middle = (round((x0 + x1) / 2, 2), round((y0 + y1) / 2, 2))
            middles.setdefault(middle, set()).add(abs(y1 - y0) < WRITTEN)
    return [at for at, ways in middles.items() if ways == {True, False}]


def printed(name: str) -> Iterator[list[Segment]]:
    """The straight lines of each page of templates, in mm, as another library reads them."""
    plan = plan_of(name)
    places = [n for n, sheet in enumerate(plan.sheets) if sheet.key.startswith("templates")]
    reader = pypdf.PdfReader(io.BytesIO(pdf_file(list(plan.pages(places)), "Templates")))
    for page in reader.pages:
        yield list(segments(ContentStream(page.get_contents(), reader)))


def segments(stream: ContentStream) -> Iterator[Segment]:
    """Where the pen goes from and to. Source: ISO 32000-1, tables 57 and 59."""
    matrix, kept = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), []
    at = (0.0, 0.0)
    for operands, operator in stream.operations:
        numbers = [float(each) for each in operands if isinstance(each, (int, float))]
        if operator == b"q":
            kept.append(matrix)
        elif operator == b"Q":
            matrix = kept.pop()
        elif operator == b"cm":
            matrix = times(numbers, matrix)
        elif operator == b"m":
            at = placed(numbers, matrix)
        elif operator == b"l":
            to = placed(numbers, matrix)
            yield at, to
            at = to


def times(one: list[float], other: tuple[float, ...]) -> tuple[float, ...]:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k,
            e * h + f * j + m)  # fmt: skip


def placed(at: list[float], matrix: tuple[float, ...]) -> tuple[float, float]:
    a, b, c, d, e, f = matrix
    x, y = at
    return ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)


# ---------------------------------------------------------------- which, and on what


@pytest.mark.parametrize("name", NAMES)
def test_a_mirror_image_is_named_and_has_none_of_its_own(name: str) -> None:
    made = templates(bed_of(name))
    own = {each.mark.mark for each in made}
    assert not own & {each.also for each in made}
    for each in made:
        other = next((mark for mark in bed_of(name).marks if mark.mark == each.also), None)
        assert bool(each.also) == bool(other and other.handed.endswith(each.mark.mark))


@pytest.mark.parametrize("name", NAMES)
def test_a_template_begins_at_an_end_or_at_a_step_of_the_tape(name: str) -> None:
    """Half a cm or a quarter of an inch is read at once; whole ones cost the plates of the queen's
    posts a second sheet.
    """
    bed = bed_of(name)
    step = 6.35 if bed.design.value("shown_unit") == "inch" else 5.0
    for each in templates(bed):
        ends = {0.0, each.mark.part.size[0]}
        for at in (each.low, each.high):
            is_end = any(at == pytest.approx(end, abs=1e-9) for end in ends)
            assert is_end or at / step == pytest.approx(round(at / step), abs=1e-6)


@pytest.mark.parametrize("name", ["post", "end stile", "front panel"])
def test_plates_and_pulls_have_room_on_one_sheet(name: str) -> None:
    """None of them is longer than a sheet, where the template leaves out an end that is far off."""
    found = [each for each in templates(bed_of(QUEEN)) if each.mark.name == name]
    assert found
    for each in found:
        laid = laid_out(each, room_on(LETTER))
        assert list(map(len, windows(laid, room_on(LETTER)))) == [1]
        assert {laid.low, laid.high} <= {each.low, each.high, *each.tight}


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_parts_of_a_template_cover_it_without_overlap(paper: Paper) -> None:
    room = room_on(paper)
    long = whole_part()
    pieces = [box for row in windows(long, room) for box in row]

    assert len(pieces) > 1
    area = sum((box.x1 - box.x0) * (box.y1 - box.y0) for box in pieces)
    whole = long.box
    assert area == pytest.approx((whole.x1 - whole.x0) * (whole.y1 - whole.y0))
    for box, other in combinations(pieces, 2):
        assert not share_room(box, other)
    for box in pieces:
        assert box.x1 - box.x0 <= room.x1 - room.x0 and box.y1 - box.y0 <= room.y1 - room.y0


def whole_part() -> Template:
    (one, *_) = templates(bed_of("no drawers"))
    return replace(one, low=0.0, high=one.mark.part.size[0])


@pytest.mark.parametrize("name", [QUEEN, *NAMES])
@pytest.mark.parametrize("wide", range(80, 200, 3))
def test_no_seam_runs_through_a_hole(name: str, wide: int) -> None:
    """However wide the paper is: half a hole on each of two sheets is nowhere."""
    room = Box(0, 0, wide, 200)
    for each in templates(bed_of(name)):
        long = replace(each, low=0.0, high=each.mark.part.size[0])
        holes = [hole for hole in each.mark.part.holes if hole.face == each.face]
        for box in windows(long, room)[0]:
            for hole in holes:
                at, half = long.flat(hole.at)[0], hole.diameter / 2
                assert not any(at - half < seam < at + half for seam in (box.x0, box.x1))


@pytest.mark.parametrize("name", [QUEEN, *NAMES])
def test_no_two_sheets_have_one_code(name: str) -> None:
    plan = plan_of(name)
    titles = [sheet.title for sheet in plan.sheets if sheet.key.startswith("templates")]
    codes = [
        word for title in titles for word in title.split()
        if word.rstrip("0123456789").isupper() and f"{word} for" in title
    ]  # fmt: skip

    assert len(codes) >= len(titles)
    assert len(set(codes)) == len(codes)


def test_a_sheet_names_those_that_it_is_joined_to() -> None:
    long = whole_part()
    grid = windows(long, Box(0, 0, long.box.x1 / 2.5, long.box.y1 / 1.5 + 36))
    found = {each.code: each.beside for each in coded("C", long, grid)}

    assert len(grid) == 2 and len(grid[0]) == 3
    assert found["C1"] == "C2 at its right and C4 above"
    assert found["C5"] == "C4 at its left, C6 at its right and C2 below"


def share_room(one: Box, other: Box) -> bool:
    return (
        one.x0 < other.x1 - 1e-9 and other.x0 < one.x1 - 1e-9
        and one.y0 < other.y1 - 1e-9 and other.y0 < one.y1 - 1e-9
    )  # fmt: skip
