"""Pages as PDF, read back by other libraries."""

from __future__ import annotations

import io
import os
import re
import subprocess
import sys
from pathlib import Path

import pypdf
import pypdfium2
import pytest
from PIL import Image

from model.cutting.record import Box
from model.drawings.paper import Drawing, Fill, Hatch, Item, Measure, Picture, Ring, Stroke, Text
from model.exports.pdf import pdf_file
from model.planset.page import A4, Link, Page

ROOT = Path(__file__).parents[3]
POINT = 25.4 / 72  # mm


def page(key: str, *items: Item, **more: object) -> Page:
    drawing = Drawing(width=A4.width, height=A4.height, scale=1.0, items=items)
    return Page(key=key, title=f"Page {key}", drawing=drawing, **more)  # type: ignore[arg-type]


def read(*pages: Page) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf_file(pages, "A bed")))


ALL_ITEMS = (
    Text((20, 200), "Étagère 27 ½ × ⌀ 8 at 45°", 2.1, "left"),
    Text((20, 190), "heading", 4.0, "left", bold=True),
    Text((15, 100), "read upwards", 2.0, turned=True),
    Stroke(((20, 20), (120, 20)), "wide"),
    Stroke(((20, 30), (120, 30)), "hidden"),
    Ring((60, 130), 8.0, "narrow"),
    Fill(((150, 150), (170, 150), (160, 170)), 0.3),
    Hatch(((100, 120), (130, 120), (130, 150), (100, 150)), 2.0),
    Measure((40, 100), (120, 100), 90, False, "800 mm", 800),
)


def test_words_are_found_again() -> None:
    told = read(page("a", *ALL_ITEMS)).pages[0].extract_text()
    for words in ("Étagère 27 ½ × ⌀ 8 at 45°", "heading", "read upwards", "800 mm"):
        assert words in told


def test_the_paper_has_its_size() -> None:
    box = read(page("a", *ALL_ITEMS)).pages[0].mediabox
    assert float(box.width) * 25.4 / 72 == pytest.approx(210, abs=0.01)
    assert float(box.height) * 25.4 / 72 == pytest.approx(297, abs=0.01)


def test_lines_lie_where_they_should() -> None:
    """Painted by PDFium: a line 100 mm long, 20 mm from the left, is dark in between only."""
    document = pypdfium2.PdfDocument(pdf_file([page("a", ALL_ITEMS[3])], "A bed"))
    picture = document[0].render(scale=254 / 72, grayscale=True).to_numpy().squeeze()
    dark = (picture < 128).nonzero()
    assert dark[1].min() == pytest.approx(200, abs=4) and dark[1].max() == pytest.approx(
        1200, abs=4
    )
    assert dark[0].mean() == pytest.approx(2970 - 200, abs=3)
    assert dark[0].max() - dark[0].min() == pytest.approx(5, abs=2)  # 0.5 mm, at 10 px a mm


def test_bookmarks_and_links_lead_to_their_pages() -> None:
    link = Link(Box(20, 20, 60, 60), "b")
    found = read(page("a", *ALL_ITEMS, links=(link,)), page("b", *ALL_ITEMS, chapter="a"))
    (first, (second,)) = found.outline
    assert (first.title, second.title) == ("Page a", "Page b")
    assert found.get_destination_page_number(second) == 1
    (annotation,) = found.pages[0]["/Annots"]
    rect = [float(each) * 25.4 / 72 for each in annotation.get_object()["/Rect"]]
    assert rect == pytest.approx([20, 20, 60, 60], abs=0.02)
    target = annotation.get_object()["/Dest"]
    named = found.named_destinations[target] if isinstance(target, str) else target
    assert (
        found.get_page_number(
            named[0].get_object() if isinstance(named, list) else named.page.get_object()
        )
        == 1
    )


def test_a_link_to_a_page_that_was_not_chosen_is_left_out() -> None:
    link = Link(Box(20, 20, 60, 60), "b")
    assert "/Annots" not in read(page("a", *ALL_ITEMS, links=(link,))).pages[0]


def test_title_and_language_are_told() -> None:
    found = read(page("a", *ALL_ITEMS))
    assert found.metadata is not None and found.metadata.title == "A bed"
    assert found.root_object["/Lang"] == "en"


def test_every_font_is_embedded() -> None:
    fonts = read(page("a", *ALL_ITEMS)).pages[0]["/Resources"]["/Font"]
    used = [font.get_object() for name, font in fonts.items()]
    assert used
    for font in used:
        assert "/FontFile2" in font["/FontDescriptor"].get_object()


def test_the_same_pages_give_the_same_file() -> None:
    assert pdf_file([page("a", *ALL_ITEMS)], "A bed") == pdf_file([page("a", *ALL_ITEMS)], "A bed")


def test_whoever_listens_hears_every_page_and_may_give_up() -> None:
    heard: list[int] = []
    pdf_file([page("a"), page("b")], "A bed", heard.append)
    assert heard == [1, 2]

    class GivenUp(Exception):
        pass

    def give_up(done: int) -> None:
        raise GivenUp

    with pytest.raises(GivenUp):
        pdf_file([page("a"), page("b")], "A bed", give_up)


# ---------------------------------------------------------------- facts of the file


def test_the_author_is_who_publishes_it() -> None:
    found = pypdf.PdfReader(io.BytesIO(pdf_file([page("a")], "A bed", author="Žofie & דוד")))
    assert found.metadata is not None and found.metadata.author == "Žofie & דוד"


def test_fonts_are_subsets_and_no_other_font_is_named() -> None:
    file = pdf_file([page("a", *ALL_ITEMS), page("b")], "A bed")
    fonts = read(page("a", *ALL_ITEMS)).pages[0]["/Resources"]["/Font"]
    names = [font.get_object()["/BaseFont"] for font in fonts.values()]

    assert b"Helvetica" not in file
    # A tag of six letters and a plus stand before the name of a subset (ISO 32000-1, 9.6.4).
    assert names and all(re.fullmatch(r"/[A-Z]{6}\+.+", name) for name in names)
    assert len(file) < 100_000  # the whole fonts take 300 kB each


def test_other_processes_write_the_same_bytes(tmp_path: Path) -> None:
    """Whatever order Python's own hashes give to sets."""
    files = []
    for seed in ("1", "2"):
        path = tmp_path / f"{seed}.pdf"
        code = (
            "import sys; from pathlib import Path; from model.exports.pdf import pdf_file;"
            "from tests.model.exports.test_pdf import ALL_ITEMS, page;"
            "Path(sys.argv[1]).write_bytes(pdf_file([page('a', *ALL_ITEMS)], 'A bed'))"
        )
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        subprocess.run([sys.executable, "-c", code, path], check=True, env=environment, cwd=ROOT)
        files.append(path.read_bytes())

    assert files[0] == files[1] == pdf_file([page("a", *ALL_ITEMS)], "A bed")


@pytest.mark.parametrize("mode", ["RGB", "RGBA", "L", "P"])
@pytest.mark.parametrize("size", [(1, 1), (4000, 20), (20, 20)])
def test_a_picture_is_shown_in_its_box(mode: str, size: tuple[int, int]) -> None:
    """Painted by PDFium: black where the picture is, also of a picture with clear parts."""
    made = Image.new(mode, size, (0, 0, 0, 255) if mode == "RGBA" else 0)
    file = io.BytesIO()
    made.save(file, "PNG")
    picture = Picture(Box(20, 20, 60, 40), file.getvalue())
    document = pypdfium2.PdfDocument(pdf_file([page("a", picture)], "A bed"))
    shown = document[0].render(scale=72 / 72, grayscale=True).to_numpy().squeeze()
    dark = (shown < 100).nonzero()

    assert dark[1].min() * POINT == pytest.approx(20, abs=0.8)
    assert dark[1].max() * POINT == pytest.approx(60, abs=0.8)
    assert 297 - dark[0].max() * POINT == pytest.approx(20, abs=0.8)


def test_what_is_clear_in_a_picture_shows_the_paper() -> None:
    file = io.BytesIO()
    Image.new("RGBA", (8, 8), (0, 0, 0, 0)).save(file, "PNG")
    picture = Picture(Box(20, 20, 60, 40), file.getvalue())
    document = pypdfium2.PdfDocument(pdf_file([page("a", picture)], "A bed"))

    assert document[0].render(grayscale=True).to_numpy().min() == 255


@pytest.mark.parametrize("words", ["床 oak 床", "מיטה 12", "سرير", "a\u00adb\u2060c", "🛏️ bed", ""])
def test_any_words_can_be_written(words: str) -> None:
    """What has no letter is an empty box: `unprinted_names` says so beforehand."""
    told = read(page("a", Text((20, 200), words, 2.1, "left"))).pages[0].extract_text()
    assert ("□" in told) == any(each in words for each in "床🛏")
