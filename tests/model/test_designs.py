"""Design files: what is read is sound, what is not is told in a sentence, nothing is lost."""

from __future__ import annotations

import json
import os
import string
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model import designs
from model.bed import Design
from model.brief import all_choices
from model.errors import BadInput


def content(choices: Any = None, **more: Any) -> bytes:
    record = {"format": "bedwright-design", "version": 1, "name": "Bed", "choices": choices or {}}
    return json.dumps(record | more).encode()


def refused(given: bytes) -> BadInput:
    """The refusal of a file's bytes: one sentence or two on one line."""
    with pytest.raises(BadInput) as refusal:
        designs.from_bytes(given)
    sentence = str(refusal.value)
    assert sentence == sentence.strip() and "\n" not in sentence
    assert sentence.endswith((".", "?")) and len(sentence) < 1500
    return refusal.value


# ---------------------------------------------------------------- there and back


def test_a_design_reads_back_as_it_was_saved(tmp_path: Path) -> None:
    design = Design(name="Oak bed, 2nd try").with_choices(
        {"mattress_width": 1600, "left.drawers": 2, "box_joint": "dado", "has_skirting": True,
         "frame_stock_measured": 22.1}
    )  # fmt: skip

    designs.write(design, tmp_path / "bed.bedwright")

    assert designs.read(tmp_path / "bed.bedwright") == design


def test_a_file_holds_every_choice_in_the_order_of_the_panes(tmp_path: Path) -> None:
    """So a design is the same bed in a later program that has other defaults."""
    designs.write(Design(), tmp_path / "bed.bedwright")
    record = json.loads((tmp_path / "bed.bedwright").read_text("utf-8"))

    assert list(record) == ["format", "version", "name", "choices"]
    assert list(record["choices"]) == list(all_choices())


def test_a_choice_that_is_as_usual_is_no_change() -> None:
    usual = {name: choice.default for name, choice in all_choices().items()}

    assert designs.from_bytes(content(usual)) == Design(name="Bed")


def test_a_length_may_be_a_text_with_its_unit() -> None:
    design = designs.from_bytes(content({"rail_height": "16 1/2 in", "side_fit": "1.5cm"}))

    assert design.value("rail_height") == pytest.approx(419.1, abs=1e-9)
    assert design.value("side_fit") == 15


def test_a_bare_figure_in_a_text_is_mm() -> None:
    assert designs.from_bytes(content({"rail_height": "420"})).value("rail_height") == 420


def test_what_a_later_version_kept_is_written_again() -> None:
    kept = {"lamp": {"height": 300.5, "names": ["left", "é"]}, "none": None}

    design = designs.from_bytes(content(kept=kept))

    assert json.loads(designs.to_bytes(design))["kept"] == kept


def test_a_mark_that_some_editors_put_first_does_no_harm() -> None:
    assert designs.from_bytes(b"\xef\xbb\xbf" + content()).name == "Bed"


# ---------------------------------------------------------------- bad input


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (b"", "empty"),
        (b"  \n", "empty"),
        (content()[:-3], "ends too early"),
        (content({"rail_height": 400})[:70], "ends too early|not understood"),
        (b"\xff\xfe" + "{}".encode("utf-16-le"), "UTF-8"),
        (b"\x00\x01\x02", "not understood"),
        (b"PK\x03\x04 a zip", "not understood"),
        (b"[1, 2]", "brace"),
        (b'"text"', "brace"),
        (b"[" * 200_000, "too deep"),
        (b'{"a":' * 100_000, "too deep"),
        (b"{}", "format"),
        (content(format="bed-design"), "format"),
    ],
)
def test_what_is_no_design_is_said_to_be_none(given: bytes, said: str) -> None:
    with pytest.raises(BadInput, match=said):
        designs.from_bytes(given)
    refused(given)


@pytest.mark.parametrize("version", [0, -1, 1.0, "1", True, None, [1]])
def test_a_version_that_is_none_is_named(version: Any) -> None:
    assert refused(content(version=version)).field == "version"


@pytest.mark.parametrize("version", [2, 10**15])
def test_a_newer_design_asks_for_the_newer_program(version: int) -> None:
    assert "newer" in str(refused(content(version=version)))


BAD_VALUES = [
    ("mattress_width", "NaN"), ("mattress_width", "Infinity"), ("mattress_width", "-Infinity"),
    ("mattress_width", "1e999"), ("mattress_width", "-1"), ("mattress_width", "0"),
    ("mattress_width", "1e15"), ("mattress_width", "9" * 5000), ("mattress_width", '"27 kg"'),
    ("mattress_width", '"wide"'), ("mattress_width", "true"), ("mattress_width", "null"),
    ("mattress_width", "[1524]"), ("mattress_width", '{"mm": 1524}'), ("mattress_width", '"60 ft"'),
    ("mattress_width", f'"{"1" * 5000}"'), ("left.drawers", "2.5"), ("left.drawers", "NaN"),
    ("left.drawers", "-" + "9" * 400), ("left.drawers", '"1e999"'), ("left.drawers", "70"),
    ("has_skirting", "1"), ("has_skirting", '"perhaps"'), ("frame_wood", '"unobtainium"'),
    ("frame_wood", "7"), ("box_joint", '"glue only"'), ("frame_stock_measured", "NaN"),
    ("frame_stock_measured", "-3"), ("grid", '"1/7 in"'), ("shown_unit", '"furlong"'),
]  # fmt: skip


@pytest.mark.parametrize(("name", "value"), BAD_VALUES)
def test_a_bad_value_names_its_field(name: str, value: str) -> None:
    text = content({"@": 0}).decode().replace('"@": 0', f'"{name}": {value}')

    refusal = refused(text.encode())

    assert refusal.field == name
    assert name in str(refusal)


@pytest.mark.parametrize(
    ("name", "nearest"),
    [
        ("mattres_width", "mattress_width"),
        ("left_drawers", "left.drawers"),
        ("railheight", "rail_height"),
    ],
)
def test_an_unknown_choice_names_the_nearest(name: str, nearest: str) -> None:
    refusal = refused(content({name: 1}))

    assert (refusal.field, nearest in str(refusal)) == (name, True)


def test_an_unknown_key_of_the_file_names_the_nearest() -> None:
    assert "choices" in str(refused(content(choises={})))


def test_a_key_that_is_given_twice_is_named() -> None:
    twice = content({"rail_height": 400}).replace(b"}}", b', "rail_height": 500}}')

    assert refused(twice).field == "rail_height"


@pytest.mark.parametrize(
    "name", ["", "   ", "a\nb", "a\x00b", "x" * 121, 7, None, "\ud800", "a\u202eb"]
)
def test_a_name_that_no_page_can_hold_is_refused(name: Any) -> None:
    assert refused(content(name=name)).field == "name"


@pytest.mark.parametrize(
    "name", ["=1+1", "Ana’s bed", "寝台", "a/b", "<b>", "../../bed", "%s %n {0}"]
)
def test_a_name_may_hold_what_a_person_would_write(name: str) -> None:
    design = designs.from_bytes(content(name=name))

    assert designs.from_bytes(designs.to_bytes(design)).name == name


@pytest.mark.parametrize("choices", [[], "text", 3, [["rail_height", 400]]])
def test_choices_that_are_no_list_of_names_are_refused(choices: Any) -> None:
    record = json.loads(content()) | {"choices": choices}

    assert refused(json.dumps(record).encode()).field == "choices"


def test_kept_that_could_not_be_written_again_is_refused() -> None:
    deep = json.loads("[" * 60 + "]" * 60)

    assert refused(content(kept={"lamp": deep})).field == "kept"
    assert refused(content(kept={"lamp": "\ud800"})).field == "kept"
    assert refused(content(kept={"lamp": float("nan")})).field == "kept"
    assert refused(content(kept=[1])).field == "kept"


@given(st.binary(max_size=300))
@example(b"{" * 5000)
def test_any_bytes_are_a_design_or_a_sentence(given: bytes) -> None:
    try:
        assert isinstance(designs.from_bytes(given), Design)
    except BadInput as refusal:
        assert str(refusal).endswith((".", "?"))


NEARLY = st.sampled_from(["12 mm", "1/0", "3 1/2 in", "yellow_poplar", "slab", "yes", "NaN"])
PLAIN = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=30) | NEARLY
JUNK = st.recursive(
    PLAIN,
    lambda inside: (
        st.lists(inside, max_size=3) | st.dictionaries(st.text(max_size=5), inside, max_size=3)
    ),
    max_leaves=8,
)
NAMES = st.sampled_from(list(all_choices())) | st.text(max_size=12)
KEYS = st.sampled_from(["format", "version", "name", "choices", "own", "kept", "x"])


@given(st.dictionaries(NAMES, JUNK, max_size=6), st.dictionaries(KEYS, JUNK, max_size=2))
def test_any_values_are_a_design_or_a_sentence(
    choices: dict[str, Any], more: dict[str, Any]
) -> None:
    record = json.loads(content(choices)) | more

    try:
        design = designs.from_bytes(json.dumps(record).encode())
    except BadInput as refusal:
        assert str(refusal)
    else:
        assert designs.from_bytes(designs.to_bytes(design)) == design


@given(st.integers(0, 3000), st.integers(0, 255), st.booleans())
def test_a_damaged_file_is_a_design_or_a_sentence(at: int, byte: int, is_cut: bool) -> None:
    whole = bytearray(designs.to_bytes(Design()))
    whole[at] = byte

    try:
        designs.from_bytes(bytes(whole[:at] if is_cut else whole))
    except BadInput as refusal:
        assert str(refusal)


@given(st.data())
def test_any_choices_within_their_ranges_read_back(data: st.DataObject) -> None:
    names = data.draw(st.lists(st.sampled_from(list(all_choices())), max_size=8))
    title = data.draw(st.text(string.printable.strip() + "éß½", min_size=1, max_size=120))
    design = Design(name=title).with_choices({name: _drawn(data, name) for name in names})

    found = designs.from_bytes(designs.to_bytes(design))

    assert found.name == title
    assert all(found.value(name) == design.value(name) for name in all_choices())


def _drawn(data: st.DataObject, name: str) -> Any:
    choice = all_choices()[name]
    if choice.is_flag:
        return data.draw(st.booleans())
    if choice.keys:
        return data.draw(st.sampled_from(choice.keys))
    if choice.is_count:
        return data.draw(st.integers(int(choice.least or 0), int(choice.most or 0)))
    number = data.draw(st.floats(choice.least, choice.most))
    return data.draw(st.none() | st.just(number)) if choice.may_be_empty else number


# ---------------------------------------------------------------- materials of the maker's own

ELM = {
    "name": "Wych elm", "kind": "hardwood", "density_kg_m3": 670, "moe_mpa": 10200,
    "shrinkage_radial_pct": 5.2, "shrinkage_tangential_pct": 8.0, "source": "a timber merchant",
}  # fmt: skip


def with_elm(**choices: Any) -> bytes:
    record = json.loads(content(choices))
    return json.dumps(record | {"own": {"species": [ELM]}}).encode()


def test_a_wood_of_ones_own_travels_with_the_design() -> None:
    design = designs.from_bytes(with_elm(frame_wood="wych_elm"))

    again = designs.from_bytes(designs.to_bytes(design))

    assert again == design
    assert again.value("frame_wood") == "wych_elm"
    (elm,) = again.own.species
    assert (elm.moe_mpa, elm.source_moe_mpa) == (10200.0, "a timber merchant")


def test_a_wood_that_the_file_does_not_bring_is_refused() -> None:
    assert refused(content({"frame_wood": "wych_elm"})).field == "frame_wood"


def test_a_row_that_makes_no_sense_is_refused_by_name() -> None:
    record = json.loads(content({})) | {"own": {"species": [ELM | {"density_kg_m3": 67000}]}}

    refusal = refused(json.dumps(record).encode())

    assert "Wych elm" in refusal.sentence and "density" in refusal.sentence


ROWS = st.dictionaries(st.sampled_from([*ELM, "key", "shear_mpa"]), PLAIN, max_size=8)


@given(ROWS, st.sampled_from(["species", "sheets"]))
def test_any_row_is_a_material_or_a_sentence(row: dict[str, Any], kind: str) -> None:
    for cells in (row, ELM | row):
        record = json.loads(content({})) | {"own": {kind: [cells]}}
        try:
            design = designs.from_bytes(json.dumps(record).encode())
        except BadInput as refusal:
            assert str(refusal)
        else:
            assert designs.from_bytes(designs.to_bytes(design)) == design


# ---------------------------------------------------------------- the file itself


def test_a_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="none.bedwright"):
        designs.read(tmp_path / "none.bedwright")


def test_a_folder_is_no_design(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="folder"):
        designs.read(tmp_path)


def test_a_huge_file_is_not_read_to_its_end(tmp_path: Path) -> None:
    with (tmp_path / "huge").open("wb") as file:
        file.truncate(50_000_000_000)

    with pytest.raises(BadInput, match="larger"):
        designs.read(tmp_path / "huge")


@pytest.mark.skipif(os.name != "posix", reason="pipes with a name")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")

    with pytest.raises(BadInput, match="device"):
        designs.read(tmp_path / "pipe")


def test_a_design_that_cannot_be_saved_leaves_the_old_file(tmp_path: Path) -> None:
    file = tmp_path / "bed.bedwright"
    designs.write(Design(name="Old"), file)

    with pytest.raises(BadInput, match="name"):
        designs.write(Design(name="two\nlines"), file)
    assert designs.read(file).name == "Old"
    assert [each.name for each in tmp_path.iterdir()] == ["bed.bedwright"]


SAY = """
import sys
from model import designs
from model.bed import Design
sys.stdout.buffer.write(designs.to_bytes(Design().with_choices({"left.drawers": 2})))
"""


def test_the_same_design_gives_the_same_bytes_in_every_process() -> None:
    runs = {
        subprocess.run(
            [sys.executable, "-c", SAY],
            env=os.environ | {"PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }

    assert len(runs) == 1
