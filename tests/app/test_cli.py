"""The command line: exit codes that scripts can trust, sentences that a maker can act on."""

from __future__ import annotations

import csv
import io
import json
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from app.cli import main
from model import designs
from model.stock.rows import Board, StockRows

Out = pytest.CaptureFixture[str]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A design as `new` writes it."""
    path = tmp_path / "bed.bedwright"
    assert main(["new", str(path), "--name", "Bed"]) == 0
    return path


def refusal(capsys: Out, *arguments: str | Path) -> str:
    """Run a command that is refused: exit code 2, nothing printed, one line of complaint."""
    capsys.readouterr()
    assert main([str(each) for each in arguments]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("bedwright: ") and said.err.count("\n") == 1
    return said.err


# ---------------------------------------------------------------- new


def test_new_writes_a_design_from_options(tmp_path: Path, capsys: Out) -> None:
    file = tmp_path / "oak.bedwright"

    code = main(
        ["new", str(file), "--name", "Oak", "--set", "left.drawers=2", "--set", "rail_height=16in"]
    )

    design = designs.read(file)
    assert code == 0
    assert (design.name, design.value("left.drawers")) == ("Oak", 2)
    assert design.value("rail_height") == pytest.approx(406.4, abs=1e-9)
    assert capsys.readouterr().out == f"Wrote {file}\n"


SAWN = {  # as a maker says it in inches, and in mm
    "rough_length_more": (25.4, 25.0), "rough_width_more": (12.7, 13.0),
    "board_end_trim": (25.4, 25.0), "sheet_trim_long": (6.35, 6.0), "sheet_trim_short": (6.35, 6.0),
    "kerf": (3.175, 3.2), "grid": ("1/16 in", "1 mm"),
}  # fmt: skip


def test_a_new_bed_is_sawn_by_round_figures_of_its_own_unit(tmp_path: Path) -> None:
    """1 in and 1/2 in over, 1/4 in of a sheet's edge; nothing that only a caliper could set."""
    inches, metric = tmp_path / "inches.bedwright", tmp_path / "metric.bedwright"

    main(["new", str(inches)])
    main(["new", str(metric), "--set", "shown_unit=mm", "--set", "kerf=2.8"])

    in_inches, in_mm = designs.read(inches), designs.read(metric)
    for name, (inch, mm) in SAWN.items():
        assert in_inches.value(name) == inch
        assert in_mm.value(name) == (2.8 if name == "kerf" else mm)


def test_a_design_that_is_started_from_keeps_its_figures_in_another_unit(tmp_path: Path) -> None:
    start, turned = tmp_path / "start.bedwright", tmp_path / "turned.bedwright"
    main(["new", str(start)])

    main(["new", str(turned), "--from", str(start), "--set", "shown_unit=mm"])

    assert designs.read(turned).value("sheet_trim_long") == 6.35


def test_a_length_without_a_unit_is_in_the_designs_unit(tmp_path: Path) -> None:
    inches, metric = tmp_path / "inches.bedwright", tmp_path / "metric.bedwright"

    main(["new", str(inches), "--set", "rail_height=16 1/2"])
    main(["new", str(metric), "--set", "rail_height=420", "--set", "shown_unit=mm"])

    assert designs.read(inches).value("rail_height") == pytest.approx(419.1, abs=1e-9)
    assert designs.read(metric).value("rail_height") == 420


def test_mm_taken_for_inches_are_pointed_out(tmp_path: Path, capsys: Out) -> None:
    said = refusal(capsys, "new", tmp_path / "bed", "--set", "mattress_width=1524")

    assert "mattress_width" in said and "write 1524mm" in said
    assert list(tmp_path.iterdir()) == []


def test_new_adds_the_ending_of_design_files(tmp_path: Path) -> None:
    main(["new", str(tmp_path / "guest_room")])

    assert designs.read(tmp_path / "guest_room.bedwright").name == "guest room"


def test_new_writes_nothing_over_a_file_unless_told_to(file: Path, capsys: Out) -> None:
    before = file.read_bytes()

    assert "--replace" in refusal(capsys, "new", file, "--name", "Other")
    assert file.read_bytes() == before

    assert main(["new", str(file), "--name", "Other", "--replace"]) == 0
    assert designs.read(file).name == "Other"


def test_new_can_start_from_another_design(tmp_path: Path) -> None:
    first, second = tmp_path / "first.bedwright", tmp_path / "second.bedwright"
    main(["new", str(first), "--name", "First", "--set", "left.drawers=1"])

    main(["new", str(second), "--from", str(first), "--set", "right.drawers=2"])

    design = designs.read(second)
    assert [design.value(f"{side}.drawers") for side in ("left", "right")] == [1, 2]
    assert design.name == "First"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--set", "mattres_width=60in"], "mattress_width"),
        (["--set", "left.drawers=2.5"], "left.drawers"),
        (["--set", "left.drawers=nan"], "left.drawers"),
        (["--set", "rail_height=tall"], "rail_height"),
        (["--set", "rail_height=-16in"], "rail_height"),
        (["--set", "rail_height=16kg"], "rail_height"),
        (["--set", "frame_wood=unobtainium"], "frame_wood"),
        (["--set", "has_skirting=perhaps"], "has_skirting"),
        (["--set", "rail_height"], "NAME=VALUE"),
        (["--set", "shown_unit=mm", "--set", "shown_unit=inch"], "twice"),
        (["--from", "no-such-demo"], "no-such-demo"),
        (["--name", " "], "name"),
    ],
)
def test_options_that_are_no_bed_are_refused_by_name(
    tmp_path: Path, capsys: Out, arguments: list[str], said: str
) -> None:
    assert said in refusal(capsys, "new", tmp_path / "bed", *arguments)
    assert list(tmp_path.iterdir()) == []


def test_new_needs_a_name_that_ends_as_designs_do(tmp_path: Path, capsys: Out) -> None:
    assert ".bedwright" in refusal(capsys, "new", tmp_path / "bed.json")
    assert "FILE" in refusal(capsys, "new")


def test_the_list_of_choices_fits_the_terminal(capsys: Out) -> None:
    assert main(["new", "--choices"]) == 0

    lines = capsys.readouterr().out.splitlines()
    assert any(line.startswith("  mattress_width: ") for line in lines)
    assert max(len(line) for line in lines) <= 80


# ---------------------------------------------------------------- check, why, plan


def test_check_prints_every_check_and_tells_the_verdict_by_its_code(
    file: Path, capsys: Out
) -> None:
    capsys.readouterr()
    code = main(["check", str(file)])

    out = capsys.readouterr().out
    assert code == (1 if "\nFAILS" in f"\n{out}" else 0)
    assert max(len(line) for line in out.splitlines()) <= 80
    assert out.splitlines()[-1].startswith("Of ")


def test_check_prints_what_would_mend_a_failed_check_below_it(tmp_path: Path, capsys: Out) -> None:
    """Slats by count, too few for foam: two more close the gaps to 3 in and less."""
    file = tmp_path / "few.bedwright"
    main(["new", str(file), "--set", "slats_by=count", "--set", "slat_count=12"])
    capsys.readouterr()

    code = main(["check", str(file)])

    out = capsys.readouterr().out
    assert code == 1
    said = " ".join(out[out.index("FAILS  Gap between slats suits the mattress") :].split())
    assert "Would hold with: Slat count 14 in place of 12" in said[:400]
    assert max(len(line) for line in out.splitlines()) <= 80


def test_check_tells_what_mends_a_bed_and_the_mended_bed_holds(tmp_path: Path, capsys: Out) -> None:
    before, after = tmp_path / "before.bedwright", tmp_path / "after.bedwright"
    main(["new", str(before), "--set", "slats_by=count", "--set", "slat_count=12"])
    main(["new", str(after), "--from", str(before), "--set", "slat_count=14"])
    capsys.readouterr()

    assert main(["check", str(before)]) == 1
    assert "FAILS  Gap between slats" in capsys.readouterr().out
    main(["check", str(after)])
    assert "HOLDS  Gap between slats" in capsys.readouterr().out


def test_why_leads_down_to_the_makers_choices(file: Path, capsys: Out) -> None:
    capsys.readouterr()
    assert main(["why", str(file), "left.opening_width"]) == 0

    out = capsys.readouterr().out
    assert out.startswith("left.opening_width = ")
    assert 'mattress_length = 80", your choice' in out
    assert max(len(line) for line in out.splitlines()) <= 80


def test_why_knows_the_dimension_behind_a_size_of_a_mark(file: Path, capsys: Out) -> None:
    capsys.readouterr()
    assert main(["why", str(file), "h1.length"]) == 0

    assert " = " in capsys.readouterr().out.splitlines()[0]


def test_why_names_what_sounds_alike(file: Path, capsys: Out) -> None:
    assert "left.opening_width" in refusal(capsys, "why", file, "left.openig_width")


def test_every_dimension_can_be_asked_why(file: Path) -> None:
    from model.bed import solve
    from model.exports import why_text

    bed = solve(designs.read(file))

    for name in bed.dimensions.values:
        lines = list(why_text.lines(bed, name, 80))
        assert lines and max(len(line) for line in lines) <= 80


@pytest.mark.usefixtures("lists_alone")
def test_plan_says_which_stock_is_of_no_use(file: Path, tmp_path: Path, capsys: Out) -> None:
    design = designs.read(file)
    board = Board(name="a", material="white_ash", thickness=25.4, length=2400.0, width=200.0)
    asked = design.with_choices({"boards_from": "rack", "left.drawers": 0, "right.drawers": 0})
    designs.write(replace(asked, stock=StockRows(boards=(board,))), file)

    assert main(["plan", str(file), "-o", str(tmp_path / "plan")]) == 0

    assert "Rack, row 1: no part of this bed is made of White ash." in capsys.readouterr().out


@pytest.mark.parametrize("command", [["check"], ["why"], ["plan"]])
@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "empty"),
        (b'{"format": "bedwright-design"', "ends too early"),
        (b'{"format": "bedwright-design", "version": 9}', "newer"),
        (b'{"format": "bedwright-design", "version": 1, "choices": {"side_fit": NaN}}', "side_fit"),
    ],
)
def test_a_design_that_cannot_be_read_is_told_and_nothing_is_written(
    tmp_path: Path, capsys: Out, command: list[str], content: bytes, said: str
) -> None:
    file, folder = tmp_path / "bad.bedwright", tmp_path / "plan"
    file.write_bytes(content)
    more = {"check": [], "why": ["side_fit"], "plan": ["-o", str(folder)]}[command[0]]

    assert said in refusal(capsys, *command, file, *more)
    assert [each.name for each in tmp_path.iterdir()] == ["bad.bedwright"]


def test_a_bed_that_cannot_be_built_is_refused_with_what_works(tmp_path: Path, capsys: Out) -> None:
    """Rails and floor gap alone are higher than the wished rail height."""
    file, folder = tmp_path / "low.bedwright", tmp_path / "deep" / "plan"
    settings = ["rail_height=150mm", "top_rail_width=150mm", "bottom_rail_width=100mm"]
    main(["new", str(file), *(each for setting in settings for each in ("--set", setting))])

    said = refusal(capsys, "plan", file, "-o", folder)

    assert any(name in said for name in ("rail_height", "rail height", "Rail height"))
    assert " to " in said or "would work" in said
    assert [each.name for each in tmp_path.iterdir()] == ["low.bedwright"]
    assert main(["check", str(file)]) == 2


def test_plan_writes_the_package_and_says_so(file: Path, tmp_path: Path, capsys: Out) -> None:
    capsys.readouterr()
    assert main(["plan", str(file), "-o", str(tmp_path / "plan")]) == 0

    out = capsys.readouterr().out
    assert all(each.name in out for each in (tmp_path / "plan").iterdir())
    assert json.loads((tmp_path / "plan" / "summary.json").read_text("utf-8"))["design"] == "Bed"


def test_plan_into_a_file_is_refused(file: Path, capsys: Out) -> None:
    before = file.read_bytes()

    assert "not written" in refusal(capsys, "plan", file, "-o", file)
    assert "not written" in refusal(capsys, "plan", file, "-o", file / "plan")
    assert file.read_bytes() == before


# ---------------------------------------------------------------- how it starts and ends


def test_help_and_version_are_answered(capsys: Out) -> None:
    assert main(["--help"]) == 0
    assert main(["--version"]) == 0
    assert "Bedwright 0." in capsys.readouterr().out


@pytest.mark.parametrize("arguments", [[], ["saw"], ["plan", "bed.bedwright"], ["check"]])
def test_a_command_that_is_not_understood_is_an_error_of_use(
    arguments: list[str], capsys: Out
) -> None:
    assert main(arguments) == 2
    assert "usage: bedwright" in capsys.readouterr().err


def test_a_mistake_of_our_own_is_noted_and_told_in_a_sentence(
    file: Path,
    tmp_path: Path,
    capsys: Out,
    caplog: pytest.LogCaptureFixture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def break_down(*_: object) -> None:
        raise ZeroDivisionError("a bug")

    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    monkeypatch.setattr("model.designs.read", break_down)

    assert main(["check", str(file)]) == 3
    said = capsys.readouterr().err
    assert "Traceback" not in said and said.count("\n") == 1
    log = tmp_path / "state" / "bedwright" / "bedwright.log"
    assert str(log) in said
    assert "ZeroDivisionError: a bug" in log.read_text("utf-8")


def test_stopped_by_the_keyboard_it_says_so(
    file: Path, capsys: Out, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("model.designs.read", stop)

    assert main(["check", str(file)]) == 130
    assert capsys.readouterr().err == "bedwright: Stopped. Nothing is left half written.\n"


@pytest.mark.skipif(os.name != "posix", reason="pipes as POSIX has them")
def test_a_reader_that_has_seen_enough_ends_it_without_a_word() -> None:
    run = "import sys; from app.cli import main; sys.exit(main(['new', '--choices']))"
    reader, writer = os.pipe()
    os.close(reader)

    done = subprocess.run([sys.executable, "-c", run], stdout=writer, stderr=subprocess.PIPE)

    os.close(writer)
    assert (done.returncode, done.stderr) == (141, b"")


def test_a_terminal_that_lacks_letters_stops_nothing(tmp_path: Path) -> None:
    run = "import sys; from app.cli import main; sys.exit(main(sys.argv[1:]))"

    done = subprocess.run(
        [sys.executable, "-c", run, "new", str(tmp_path / "寝台")],
        env=os.environ | {"PYTHONIOENCODING": "ascii"},
        capture_output=True,
    )

    assert done.returncode == 0, done.stderr
    assert (tmp_path / "寝台.bedwright").exists()


# ---------------------------------------------------------------- materials

ELM = (
    "name,kind,density_kg_m3,shrinkage_radial_pct,shrinkage_tangential_pct\n"
    "Wych elm,hardwood,670,5.2,8.0\n"
)


@pytest.fixture
def elm(tmp_path: Path) -> Path:
    """A table of one wood of the maker's own."""
    path = tmp_path / "woods.csv"
    path.write_text(ELM, "utf-8")
    return path


@pytest.mark.usefixtures("lists_alone")
def test_a_wood_of_ones_own_is_chosen_in_the_same_breath(
    tmp_path: Path, elm: Path, capsys: Out
) -> None:
    file = tmp_path / "elm.bedwright"

    code = main(["new", str(file), "--own", str(elm), "--set", "frame_wood=wych_elm"])
    elm.unlink()  # the design has it now

    assert code == 0
    assert designs.read(file).value("frame_wood") == "wych_elm"
    assert main(["check", str(file)]) in (0, 1)
    assert main(["plan", str(file), "-o", str(tmp_path / "plan")]) == 0
    assert "Wych elm" in (tmp_path / "plan" / "parts.csv").read_text("utf-8")


def test_a_table_of_ones_own_that_makes_no_sense_is_refused(
    tmp_path: Path, elm: Path, capsys: Out
) -> None:
    elm.write_text(ELM.replace("670", "67"), "utf-8")

    said = refusal(capsys, "new", tmp_path / "bed", "--own", elm)

    assert "woods.csv, line 2: Wych elm cannot have density_kg_m3 67" in said
    assert not (tmp_path / "bed.bedwright").exists()


def test_a_table_that_is_not_there_is_named(tmp_path: Path, capsys: Out) -> None:
    assert "none.csv" in refusal(capsys, "new", tmp_path / "bed", "--own", tmp_path / "none.csv")


def test_a_table_that_is_no_text_is_named(tmp_path: Path, elm: Path, capsys: Out) -> None:
    elm.write_bytes(b"\xff\xfe\x00n\x00a")

    assert "not text in UTF-8" in refusal(capsys, "new", tmp_path / "bed", "--own", elm)


def test_materials_are_listed_with_those_of_the_design(
    tmp_path: Path, elm: Path, capsys: Out
) -> None:
    main(["new", str(tmp_path / "bed"), "--own", str(elm)])
    capsys.readouterr()

    assert main(["materials", str(tmp_path / "bed.bedwright")]) == 0
    assert "wych_elm" in capsys.readouterr().out
    assert main(["materials"]) == 0
    assert "wych_elm" not in capsys.readouterr().out


def test_a_material_is_told_by_the_grade_of_the_design(file: Path, capsys: Out) -> None:
    main(["new", str(file), "--replace", "--set", "stock_grade=knotty"])
    capsys.readouterr()

    assert main(["materials", str(file), "--of", "yellow_poplar"]) == 0
    assert "Knotty" in capsys.readouterr().out
    assert main(["materials", str(file), "--of", "yellow_poplar", "--grade", "straight"]) == 0
    assert "Knotty" not in capsys.readouterr().out
    assert "no stock grade called" in refusal(
        capsys, "materials", "--of", "yellow_poplar", "--grade", "gnarled"
    )


def test_a_template_has_the_headings_of_a_table(capsys: Out) -> None:
    assert main(["materials", "--template", "woods"]) == 0

    assert capsys.readouterr().out.startswith("name,kind,density_kg_m3,")


# ---------------------------------------------------------------- prices


def test_a_price_list_goes_out_empty_and_comes_back_into_a_design(
    file: Path, tmp_path: Path, capsys: Out
) -> None:
    capsys.readouterr()
    assert main(["prices", str(file), "--empty"]) == 0
    heading, *rows = csv.reader(io.StringIO(capsys.readouterr().out))
    at = {name: k for k, name in enumerate(heading)}
    glue = next(row for row in rows if row[at["key"]] == "glue/pva")
    assert not any(row[at["price"]] or row[at["minutes"]] for row in rows)

    glue[at["price"]] = "6,50"
    table, priced = tmp_path / "mine.csv", tmp_path / "priced.bedwright"
    with table.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out, delimiter=";").writerows([heading, *rows])  # as spreadsheets here save it
    code = main(["new", str(priced), "--from", str(file), "--prices", str(table)])

    assert code == 0
    found = designs.read(priced).prices.row("glue/pva")
    assert found is not None
    assert found.price == 6.5


def test_a_price_table_that_makes_no_sense_is_refused_by_its_line(
    tmp_path: Path, capsys: Out
) -> None:
    table = tmp_path / "mine.csv"
    table.write_text("key,price\nglue/pva,dear\n", "utf-8")

    said = refusal(capsys, "new", tmp_path / "bed", "--prices", table)

    assert "mine.csv, line 2: price is “dear”" in said
    assert not (tmp_path / "bed.bedwright").exists()


def test_new_names_the_shop_that_publishes_the_plans(tmp_path: Path, capsys: Out) -> None:
    from PIL import Image

    logo, path = tmp_path / "logo.jpg", tmp_path / "bed.bedwright"
    Image.new("RGB", (40, 20)).save(logo)
    told = ["--shop", "The  Bed Shop", "--shop-line", "Mill Lane", "--logo", str(logo)]
    assert main(["new", str(path), *told]) == 0
    publisher = designs.read(path).publisher
    assert (publisher.name, publisher.line) == ("The Bed Shop", "Mill Lane")
    assert publisher.logo.startswith(b"\x89PNG")

    again = tmp_path / "again.bedwright"
    assert main(["new", str(again), "--from", str(path), "--shop-line", ""]) == 0
    kept = designs.read(again).publisher
    assert (kept.name, kept.line, kept.logo) == (publisher.name, "", publisher.logo)


def test_a_logo_that_is_no_picture_is_refused_before_anything_is_written(
    tmp_path: Path, capsys: Out
) -> None:
    path, logo = tmp_path / "bed.bedwright", tmp_path / "logo.png"
    assert "no such file" in refusal(capsys, "new", path, "--logo", logo)
    logo.write_bytes(b"no picture")
    assert "save it as PNG or JPEG" in refusal(capsys, "new", path, "--logo", logo)
    assert not path.exists()
