"""`plan.pdf` as a whole: read back, the same everywhere, and written whole or not at all."""

from __future__ import annotations

import errno
import io
import os
import re
import subprocess
import sys
from dataclasses import replace
from functools import cache
from pathlib import Path

import pypdf
import pytest
from pypdf.generic import Destination

from model.errors import BadInput
from model.exports import plan_pdf
from model.exports.package import WRITERS, write_package
from model.exports.pdf import pdf_file
from model.planset.book import PlanSet
from model.publisher import Publisher
from model.shop.part_sizes import shown_sizes
from tests.model.planset.sets import bed_of, pages_of, plan_of

BED = "loft_single"
ROOT = Path(__file__).parents[3]


@cache
def written() -> bytes:
    return pdf_file(pages_of(BED), plan_of(BED).title, author=plan_of(BED).author)


@cache
def reader() -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(written()))


def test_the_page_of_each_mark_tells_its_size_and_quantity() -> None:
    bed = bed_of(BED)
    told = [page.extract_text() for page in reader().pages]
    for mark in bed.marks:
        size = " × ".join(shown_sizes(bed, mark, bed.design.value("shown_unit"))[:3])
        own = [
            words
            for words, page in zip(told, pages_of(BED), strict=True)
            if page.key.startswith("part/") and f"{mark.mark} {mark.name}" in page.title
        ]
        assert len(own) == 1
        assert size in own[0] and re.search(rf"\b{mark.quantity}\b", own[0])


def test_each_row_of_the_parts_list_leads_to_the_page_of_its_mark() -> None:
    """In the file: a place is linked, and what lies at its left is the mark."""
    keys = [page.key for page in pages_of(BED)]
    rows = 0
    for at, page in enumerate(reader().pages):
        if not keys[at].startswith("parts"):
            continue
        for each in page.get("/Annots", []):
            target = each.get_object()["/Dest"]
            number = reader().get_page_number(target[0].get_object())
            assert keys[number].startswith("part/")
            rows += 1
    assert rows == len(bed_of(BED).marks)


def test_bookmarks_hold_the_pages_of_a_chapter() -> None:
    nested: dict[str, list[str]] = {}
    last = ""
    for each in reader().outline:
        if isinstance(each, Destination):
            last = str(each.title)
            nested[last] = []
        else:
            nested[last] = [str(below.title) for below in each]
    wanted: dict[str, list[str]] = {}
    for page in pages_of(BED):
        if page.chapter:
            wanted[next(p.listed_as for p in pages_of(BED) if p.key == page.chapter)].append(
                page.title
            )
        else:
            wanted[page.listed_as] = []
    assert nested == wanted


def test_title_author_and_language_are_told(tmp_path: Path) -> None:
    bed = bed_of(BED)
    design = replace(bed.design, name="Žofie's bed", publisher=Publisher(name="The Bed Shop"))
    plan = PlanSet(replace(bed, design=design))
    file = pdf_file([plan.early_cover()], plan.title, author=plan.author)
    found = pypdf.PdfReader(io.BytesIO(file))

    assert found.metadata is not None
    assert (found.metadata.title, found.metadata.author) == (
        "Žofie's bed: plan set", "The Bed Shop",
    )  # fmt: skip
    assert found.root_object["/Lang"] == "en"


def test_another_process_writes_the_same_file(tmp_path: Path) -> None:
    """Whatever order Python's own hashes give to sets there."""
    code = (
        "import sys; from pathlib import Path; from model.exports import plan_pdf;"
        "from tests.model.planset.sets import bed_of;"
        f"plan_pdf.write(bed_of({BED!r}), Path(sys.argv[1]))"
    )
    path = tmp_path / "plan.pdf"
    environment = {**os.environ, "PYTHONHASHSEED": "7"}
    subprocess.run([sys.executable, "-c", code, path], check=True, env=environment, cwd=ROOT)

    assert path.read_bytes() == written()


# ---------------------------------------------------------------- onto a disk that refuses


@pytest.fixture
def alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """A package of plan.pdf and nothing else, of pages that are drawn already."""
    for name in list(WRITERS):
        if name != "plan.pdf":
            monkeypatch.delitem(WRITERS, name)
    monkeypatch.setattr("model.exports.package.FOLDERS", {})
    monkeypatch.setattr(plan_pdf, "PlanSet", lambda bed: plan_of(BED))


def test_a_full_disk_is_told_and_nothing_half_written_is_left(
    alone: None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "plan.pdf").write_bytes(b"the old one")
    real = Path.write_bytes

    def half(path: Path, data: bytes) -> int:
        real(path, data[: len(data) // 2])
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", half)

    with pytest.raises(BadInput, match="no room left on the disk"):
        write_package(bed_of(BED), tmp_path)

    assert [each.name for each in tmp_path.iterdir()] == ["plan.pdf"]
    assert (tmp_path / "plan.pdf").read_bytes() == b"the old one"


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="a device that is always full")
def test_a_disk_that_is_always_full_is_told(alone: None, tmp_path: Path) -> None:
    """The real thing: every write to it ends with ENOSPC."""
    with pytest.raises(OSError, match="space"):
        plan_pdf.write(bed_of(BED), Path("/dev/full"))


def test_a_folder_that_cannot_be_made_is_told(alone: None, tmp_path: Path) -> None:
    (tmp_path / "plan").write_bytes(b"a file")

    with pytest.raises(BadInput, match="was not written"):
        write_package(bed_of(BED), tmp_path / "plan" / "deep")

    assert (tmp_path / "plan").read_bytes() == b"a file"


def test_a_place_where_nothing_can_be_made_is_told(alone: None) -> None:
    """/proc takes no folders, from nobody."""
    with pytest.raises(BadInput, match="was not written"):
        write_package(bed_of(BED), Path("/proc/plan"))
