"""The shop's name and logo: any picture, or a sentence."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest
from PIL import Image

from model.bed import Design
from model.designs import from_bytes, to_bytes
from model.errors import BadInput
from model.publisher import LARGEST_SIDE, Publisher, checked_line, logo_of


def picture(width: int, height: int, kind: str = "PNG", mode: str = "RGB") -> bytes:
    file = io.BytesIO()
    Image.new(mode, (width, height), 120 if mode in "LP" else None).save(file, kind)
    return file.getvalue()


@pytest.mark.parametrize(
    ("width", "height", "kind", "mode"),
    [
        (1, 1, "PNG", "L"),
        (4000, 20, "JPEG", "RGB"),
        (300, 300, "PNG", "RGBA"),
        (64, 64, "GIF", "P"),
        (50, 900, "JPEG", "CMYK"),
        (20, 20, "BMP", "RGB"),
    ],
)
def test_any_picture_becomes_a_png_of_a_fit_size(
    width: int, height: int, kind: str, mode: str
) -> None:
    with Image.open(io.BytesIO(logo_of(picture(width, height, kind, mode)))) as made:
        assert made.format == "PNG"
        assert max(made.size) == min(max(width, height), LARGEST_SIDE)


@pytest.mark.parametrize(
    "file", [b"", b"no picture", picture(50, 50)[:60], b"<svg xmlns='http://www.w3.org/2000/svg'/>"]
)
def test_what_is_no_picture_is_told_in_a_sentence(file: bytes) -> None:
    with pytest.raises(BadInput, match="save it as PNG or JPEG"):
        logo_of(file)


def test_a_logo_the_size_of_a_house_is_refused() -> None:
    with pytest.raises(BadInput, match="enough for print"):
        logo_of(picture(9000, 8000, mode="L"))


def test_a_design_file_keeps_it() -> None:
    publisher = Publisher(name="Étagère & Söhne", line="Lumber Lane 1").with_logo(picture(9, 9))
    design = replace(Design(), publisher=publisher)
    assert from_bytes(to_bytes(design)).publisher == publisher


def test_a_design_without_one_says_nothing_of_it() -> None:
    assert b"publisher" not in to_bytes(Design())


@pytest.mark.parametrize(
    "record", ['"publisher": 3', '"publisher": {"logo": "%%%"}', '"publisher": {"colour": "red"}']
)
def test_a_damaged_one_is_refused(record: str) -> None:
    whole = to_bytes(Design()).decode().rstrip().removesuffix("}")
    with pytest.raises(BadInput):
        from_bytes(f"{whole}, {record}}}".encode())


def test_a_line_has_room_on_a_page() -> None:
    assert checked_line("  The   Bed\tShop ", "name") == "The Bed Shop"
    with pytest.raises(BadInput, match="longer than"):
        checked_line("x" * 200, "name")
    with pytest.raises(BadInput, match="printed"):
        checked_line("a\u202eb", "name")
