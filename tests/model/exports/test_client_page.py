"""The client's page, read as a browser reads it, without a browser."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from model.bed import Design
from model.exports import client_page
from model.materials import material
from model.publisher import Publisher

CHOICES = {
    "finish": "clear", "finished": "what shows", "shown_unit": "mm",
    "frame_wood": material("yellow_poplar"),
}  # fmt: skip
VOID = {"meta", "link", "img", "input"}

HOSTILE = "</script><script>alert(\"1\")</script> & <b onload='x'>&amp;"
RIGHT_TO_LEFT = "سرير الضيوف – מיטה"


class Reader(HTMLParser):
    """What a page is made of: every element with its attributes, and the text within by path."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[tuple[str, str]] = []
        self.open: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open[-1] == tag, f"{tag} ends, {self.open[-1:]} is open"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.texts.append((self.open[-1] if self.open else "", data))

    def of(self, tag: str, **attributes: str) -> list[dict[str, str | None]]:
        return [
            each
            for name, each in self.elements
            if name == tag and attributes.items() <= {k: v for k, v in each.items()}.items()
        ]

    def text(self, tag: str) -> list[str]:
        return [data for inside, data in self.texts if inside == tag]

    @property
    def said(self) -> str:
        """All that a reader sees in words."""
        return " ".join(data for tag, data in self.texts if tag not in ("script", "style"))

    @property
    def record(self) -> dict[str, Any]:
        found: dict[str, Any] = json.loads(self.text("script")[0])
        return found


@pytest.fixture
def bed(small_bed: Any) -> Any:
    return replace(small_bed, values=dict(small_bed.values) | CHOICES)


def read(bed: Any) -> Reader:
    page = Reader(client_page.page(bed))
    assert page.open == [], "every element is closed"
    return page


def figures(text: str, kind: str, *shape: int) -> Any:
    return np.frombuffer(base64.b64decode(text), kind).reshape(shape)


def placed_corners(record: dict[str, Any]) -> list[Any]:
    """The corners of every piece where it stands, from the page's own figures."""
    corners = figures(record["corners"], "<f4", -1, 3)
    starts = np.cumsum([0, *(count for count, _, _ in record["shapes"])])
    places = figures(record["places"], "<f4", -1, 3, 4)
    return [
        corners[starts[shape] : starts[shape + 1]] @ place[:, :3].T + place[:, 3]
        for (shape, _, _), place in zip(record["pieces"], places, strict=True)
    ]


def test_the_page_is_a_whole_one_for_small_and_large_screens(bed: Any) -> None:
    page = read(bed)

    assert client_page.page(bed).startswith("<!doctype html>\n")
    assert page.of("html", lang="en")
    assert page.of("meta", charset="utf-8")
    assert page.of("meta", name="viewport", content="width=device-width, initial-scale=1")
    assert page.text("title") == page.text("h1") == [bed.design.name]
    assert "@@" not in client_page.page(bed)


def test_the_same_bed_gives_the_same_bytes(bed: Any, tmp_path: Path) -> None:
    for name in ("one.html", "two.html"):
        client_page.write(bed, tmp_path / name)

    assert (tmp_path / "one.html").read_bytes() == (tmp_path / "two.html").read_bytes()
    assert b"\r" not in (tmp_path / "one.html").read_bytes()


def test_nothing_is_fetched_from_anywhere(bed: Any) -> None:
    page = read(bed)

    places = [
        value
        for _, attributes in page.elements
        for name, value in attributes.items()
        if name in ("src", "href", "srcset", "action", "data", "poster", "formaction")
    ]
    assert all(value and value.startswith("data:") for value in places), places
    assert len(places) == 2  # the picture and an empty icon
    code = "".join(page.text("script")[1:] + page.text("style"))
    assert not re.search(r"https?:|//\w+\.\w|url\(|@import|import\(|fetch\(|XMLHttp|Worker", code)


def test_the_page_forbids_all_but_its_own_style_and_script(bed: Any) -> None:
    """Hashes are of what stands in the elements. Source: W3C Content Security Policy Level 3."""
    page = read(bed)
    (policy,) = (each["content"] for each in page.of("meta") if "http-equiv" in each)
    assert policy is not None
    rules = dict(rule.split(" ", 1) for rule in policy.split("; "))

    def hashed(text: str) -> str:
        return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"

    assert rules["default-src"] == "'none'" and rules["img-src"] == "data:"
    assert rules["script-src"] == hashed(page.text("script")[1])
    assert rules["style-src"] == hashed(page.text("style")[0])
    assert not any("style" in each or "onclick" in each for _, each in page.elements)


@pytest.mark.parametrize(
    "name", [HOSTILE, RIGHT_TO_LEFT, "Zoë’s “großes” Bett – 1,60 m", "@@bed@@"]
)
def test_a_name_stays_a_text_whatever_stands_in_it(bed: Any, name: str) -> None:
    publisher = Publisher(name=f"Shop {name}")

    page = read(replace(bed, design=Design(name=name, publisher=publisher)))

    assert "".join(page.text("h1")) == name
    assert "".join(page.text("title")) == f"{name} – Shop {name}"
    assert "".join(page.text("p")[:1]) == f"Shop {name}"
    assert len(page.of("script")) == 2 and not page.of("b")
    assert any(name in (each["alt"] or "") for each in page.of("img"))


def test_a_record_can_neither_end_its_element_nor_change_on_its_way() -> None:
    """What ends a script element begins with `<`. Source: WHATWG HTML, script data states."""
    record = json.dumps({"name": "</script><!-- & ]]> ' \\u003c"})

    text = client_page.as_script_text(record)

    assert not re.search("[<>&]", text)
    assert json.loads(text) == json.loads(record)


def test_a_name_is_written_in_the_direction_it_is_read(bed: Any) -> None:
    design = Design(name=RIGHT_TO_LEFT, publisher=Publisher(name=RIGHT_TO_LEFT))

    page = read(replace(bed, design=design))

    assert page.of("h1", dir="auto") and page.of("p", dir="auto")


def test_the_shop_is_named_only_where_it_has_a_name(bed: Any) -> None:
    assert not read(bed).of("p", **{"class": "shop"})

    named = read(replace(bed, design=Design(publisher=Publisher(name="Third Street Shop"))))

    assert named.of("p", **{"class": "shop"})
    assert "Third Street Shop" in named.said


def test_a_logo_is_in_the_page(bed: Any) -> None:
    logo = b"\x89PNG\r\n\x1a\n some dots"
    page = read(replace(bed, design=Design(publisher=Publisher(name="A shop", logo=logo))))

    (shown,) = [each for each in page.of("img") if "id" not in each]
    assert shown["alt"] == ""
    assert base64.b64decode((shown["src"] or "").partition("base64,")[2]) == logo


def test_every_piece_stands_where_the_bed_has_it(bed: Any) -> None:
    record = read(bed).record
    low, high = bed.pieces.bounds

    found = placed_corners(record)

    assert len(found) == len(bed.pieces)
    for piece, corners in enumerate(found):
        assert np.allclose(corners.min(axis=0), low[piece], atol=1e-3)  # a float of four bytes
        assert np.allclose(corners.max(axis=0), high[piece], atol=1e-3)


def test_shapes_are_closed_and_counted(bed: Any) -> None:
    """Every edge of a triangle is met by another the other way round, or a hole would show."""
    record = read(bed).record
    faces = figures(record["faces"], "<u2", -1, 3)
    assert len(faces) == sum(count for _, count, _ in record["shapes"])
    assert len(figures(record["edges"], "<f4", -1, 6)) == sum(n for _, _, n in record["shapes"])

    at = 0
    for corners, count, _ in record["shapes"]:
        own = faces[at : at + count]
        at += count
        assert own.max() < corners
        sides = [
            (a, b) for face in own.tolist() for a, b in zip(face, [*face[1:], face[0]], strict=True)
        ]
        assert sorted(sides) == sorted((b, a) for a, b in sides)


def test_drawers_slide_their_own_way_with_what_is_theirs(bed: Any) -> None:
    page = read(bed)
    record = page.record

    assert record["drawers"] == [{"name": "left-1", "toward": [-1, 0, 0], "travel": 450}]
    inside = [k for k, (_, drawer, _) in enumerate(record["pieces"]) if drawer == 1]
    assert inside == [k for k in range(len(bed.pieces)) if bed.pieces.group[k]]
    (button,) = [each for each in page.of("button") if "data-drawer" in each]
    assert button["data-drawer"] == "left-1" and button["aria-pressed"] == "false"
    assert button["aria-label"] == "Open drawer 1, left side"


def test_a_bed_without_drawers_offers_none(bed: Any) -> None:
    parts = {name: made for name, made in bed.parts.items() if "box" not in name}

    page = read(replace(bed, parts={n: made for n, made in parts.items() if "slide" not in n}))

    assert page.record["drawers"] == []
    assert "rawer" not in page.said


def test_sizes_are_those_of_the_bed(bed: Any) -> None:
    """Rails reach from v = 0 to 2000; posts stand 35 mm outside of 800 and are 600 high."""
    page = read(bed)

    low = np.min([bed.pieces.bounds[0][k] for mark in bed.marks for k in mark.pieces], axis=0)
    high = np.max([bed.pieces.bounds[1][k] for mark in bed.marks for k in mark.pieces], axis=0)
    shown = dict(zip(page.text("dt"), page.text("dd"), strict=True))
    assert shown["Length"] == f"{high[1] - low[1]:g} mm"
    assert shown["Width"] == f"{high[0] - low[0]:g} mm"
    assert shown["Height"] == "600 mm"
    assert shown["Sleeping height"] == "610 mm"  # 360 + 250
    assert shown["Mattress"] == "1500 mm × 1950 mm"
    assert shown["Left drawer comes out"] == "450 mm"


def test_sizes_are_said_in_inches_where_the_shop_reads_them(bed: Any) -> None:
    page = read(replace(bed, values=dict(bed.values) | {"shown_unit": "inch"}))

    assert "Sleeping height" in page.text("dt")
    assert '24"' in page.text("dd")  # 610 mm is 24.016 in: 24 by a tape's sixteenths


@pytest.mark.parametrize(
    ("finish", "first", "wood"),
    [
        ("painted", 1, "Clear wood"), ("clear", 0, "Clear wood"),
        ("oil", 0, "Oiled wood"), ("none", 0, "Bare wood"),
    ],
)  # fmt: skip
def test_the_page_begins_with_the_finish_that_the_maker_chose(
    bed: Any, finish: str, first: int, wood: str
) -> None:
    page = read(replace(bed, values=dict(bed.values) | {"finish": finish}))

    choices = page.of("input", type="radio")
    assert [k for k, each in enumerate(choices) if "checked" in each] == [first]
    assert len(page.record["finishes"]) == len(choices) >= 5
    assert wood in page.text("span")
    assert page.record["finishes"][0] == {"colour": None}


def test_paint_covers_what_the_maker_finishes_and_no_metal(bed: Any) -> None:
    record = read(bed).record

    painted = {
        bed.pieces.form(k).name
        for k, (_, _, look) in enumerate(record["pieces"])
        if record["looks"][look]["takesPaint"]
    }
    assert painted == {"post", "side rail"}  # neither the box inside nor the slide


def test_nothing_on_the_page_speaks_of_prices(bed: Any) -> None:
    said = read(bed).said

    assert not re.search(r"[$€£¥]|USD|EUR|[Pp]rice|[Cc]ost", said)


def test_what_a_finger_or_key_can_press_has_a_name(bed: Any) -> None:
    """A button is named by its text or its label. Source: WCAG 2.2, 4.1.2 Name, Role, Value."""
    text = client_page.page(bed)

    for attributes, inner in re.findall(r"<button([^>]*)>(.*?)</button>", text, re.S):
        assert "aria-label=" in attributes or re.sub("<[^>]*>", "", inner).strip()
    page = read(bed)
    (canvas,) = page.of("canvas")
    assert canvas["tabindex"] == "0" and canvas["aria-label"]
    assert all(each["alt"] for each in page.of("img", id="still"))


def test_a_hostile_part_never_reaches_the_page(bed_named: Callable[[str], Any]) -> None:
    named = bed_named("x</script>")
    bed = replace(named, values=dict(named.values) | CHOICES, design=Design(name="A bed"))

    assert "x</script>" not in client_page.page(bed)
