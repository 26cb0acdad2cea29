"""The plan package: all files or none, and never half of one."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from model.bed import Bed, solve
from model.designs import read
from model.errors import BadInput
from model.exports import package
from model.exports.contents import CONTENTS, Row, write_contents
from model.exports.package import FOLDERS, WRITERS, write_package

DEMOS = Path(__file__).resolve().parents[3] / "resources" / "demos"


SMALLEST = DEMOS / "loft_single.bedwright"


@cache
def smallest() -> Bed:
    return solve(read(SMALLEST))


@pytest.fixture
def small_bed() -> Bed:
    """A real one: what is bought and sawn is worked out from more than its parts."""
    return smallest()


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[Path]]:
    """A whole package in a new folder, and what is said to have been written."""
    folder = tmp_path_factory.mktemp("written") / "new" / "plan"
    return folder, write_package(smallest(), folder)


@pytest.fixture
def fill_with(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """From now on every file of a package is this word, which takes no time to write."""

    def fill(word: str) -> None:
        for name in WRITERS:
            monkeypatch.setitem(WRITERS, name, lambda bed, path: path.write_text(word))
        for name in FOLDERS:
            monkeypatch.setitem(FOLDERS, name, drawings_named("A1.dxf", word=word))

    return fill


def contents(folder: Path) -> dict[str, bytes]:
    """All files, those of folders by their path."""
    found = (each for each in folder.rglob("*") if each.is_file())
    return {each.relative_to(folder).as_posix(): each.read_bytes() for each in found}


def fail_at(name: str, error: BaseException, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(bed: Any, path: Path) -> None:
        (path / "half.dxf" if path.is_dir() else path).write_bytes(b"half")
        raise error

    monkeypatch.setitem(FOLDERS if name in FOLDERS else WRITERS, name, broken)


def test_every_writer_writes_its_file(written: tuple[Path, list[Path]]) -> None:
    folder, told = written

    names = [path.relative_to(folder).as_posix() for path in told]
    assert names[: len(WRITERS)] == list(WRITERS)
    assert all(path.stat().st_size > 0 for path in told)
    assert set(contents(folder)) == set(names)
    assert {each.name for each in folder.iterdir() if each.is_dir()} == set(FOLDERS)


def test_the_same_bed_gives_the_same_bytes(
    written: tuple[Path, list[Path]], tmp_path: Path
) -> None:
    write_package(solve(read(SMALLEST)), tmp_path)

    assert contents(tmp_path) == contents(written[0])


@pytest.mark.parametrize("where", ["bed.glb", "drawings"])
@pytest.mark.parametrize(
    "error", [OSError(errno.ENOSPC, "full"), ValueError("a bug"), KeyboardInterrupt()]
)
def test_what_fails_on_the_way_leaves_the_old_package(
    small_bed: Any,
    fill_with: Callable[[str], None],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    error: BaseException,
    where: str,
) -> None:
    fill_with("old")
    write_package(small_bed, tmp_path)
    before = contents(tmp_path)
    fill_with("new")
    fail_at(where, error, monkeypatch)
    expected = BadInput if isinstance(error, OSError) else type(error)

    with pytest.raises(expected):
        write_package(small_bed, tmp_path)

    assert contents(tmp_path) == before
    assert [each.name for each in tmp_path.iterdir() if each.is_dir()] == list(FOLDERS)


def test_what_fails_on_the_way_leaves_no_new_folder(
    small_bed: Any,
    fill_with: Callable[[str], None],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    fill_with("new")
    fail_at("checks.csv", OSError(errno.EDQUOT, "quota"), monkeypatch)

    with pytest.raises(BadInput, match="no room"):
        write_package(small_bed, tmp_path / "deep" / "plan")

    assert list(tmp_path.iterdir()) == []


def test_a_folder_in_a_files_place_is_named_before_anything_moves(
    small_bed: Any, tmp_path: Path
) -> None:
    (tmp_path / "parts.xlsx").mkdir()

    with pytest.raises(BadInput, match="parts.xlsx"):
        write_package(small_bed, tmp_path)
    assert contents(tmp_path) == {}


@pytest.mark.skipif(os.name != "posix", reason="links as POSIX has them")
def test_a_link_in_a_files_place_is_not_followed(
    small_bed: Any, fill_with: Callable[[str], None], tmp_path: Path
) -> None:
    """A package in a shared folder must not write over what lies elsewhere."""
    elsewhere = tmp_path / "elsewhere"
    elsewhere.write_bytes(b"precious")
    (tmp_path / "plan").mkdir()
    (tmp_path / "plan" / "parts.csv").symlink_to(elsewhere)

    fill_with("new")
    write_package(small_bed, tmp_path / "plan")

    assert elsewhere.read_bytes() == b"precious"
    assert (tmp_path / "plan" / "parts.csv").read_text() == "new"
    assert not (tmp_path / "plan" / "parts.csv").is_symlink()


@pytest.mark.skipif(os.name != "posix", reason="permissions as POSIX has them")
def test_files_have_the_users_usual_permissions(
    written: tuple[Path, list[Path]], tmp_path: Path
) -> None:
    (tmp_path / "usual").write_bytes(b"")
    usual = (tmp_path / "usual").stat().st_mode

    assert {path.stat().st_mode for path in written[1]} == {usual}


def test_a_disk_that_refuses_the_folder_is_told_in_a_sentence(
    small_bed: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(**_: object) -> str:
        raise PermissionError(errno.EACCES, "no")

    monkeypatch.setattr(package.tempfile, "mkdtemp", refuse)

    with pytest.raises(BadInput, match="not written.*not allowed") as refusal:
        write_package(small_bed, tmp_path)
    assert refusal.value.field == "folder"


# ---------------------------------------------------------------- folders of the package


def drawings_named(*names: str, word: str = "") -> Any:
    """A writer of a folder that holds these files, each with its own name or a word in it."""

    def write(bed: Any, folder: Path) -> None:
        for name in names:
            (folder / name).parent.mkdir(exist_ok=True)
            (folder / name).write_text(word or name)
        write_contents([Row(name, "", "mm", "1 : 1") for name in names], folder)

    return write


def write_drawings(folder: Path, monkeypatch: pytest.MonkeyPatch, *names: str) -> None:
    """A package of nothing but these drawings."""
    for name in list(WRITERS):
        monkeypatch.delitem(WRITERS, name)
    monkeypatch.setitem(FOLDERS, "drawings", drawings_named(*names))
    write_package(smallest(), folder)


def test_drawings_that_a_bed_no_longer_has_go_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_drawings(tmp_path, monkeypatch, "A1.dxf", "A2.dxf", "profiles/A2.dxf")
    write_drawings(tmp_path, monkeypatch, "A1.dxf")

    assert set(contents(tmp_path)) == {"drawings/A1.dxf", f"drawings/{CONTENTS}"}


def test_what_the_maker_changed_or_put_there_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_drawings(tmp_path, monkeypatch, "A1.dxf", "A2.dxf")
    (tmp_path / "drawings" / "A2.dxf").write_text("tool paths of my own")
    (tmp_path / "drawings" / "mine.dxf").write_text("mine")
    write_drawings(tmp_path, monkeypatch, "A1.dxf")

    kept = contents(tmp_path)
    assert kept["drawings/A2.dxf"] == b"tool paths of my own"
    assert kept["drawings/mine.dxf"] == b"mine"


def test_a_list_that_names_files_elsewhere_clears_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    precious = tmp_path / "precious.txt"
    precious.write_text("precious")
    digest = sha256(b"precious").hexdigest()
    folder = tmp_path / "plan"
    (folder / "drawings").mkdir(parents=True)
    lines = [f"{name},,,,{digest}" for name in ("../../precious.txt", str(precious))]
    listed = "\n".join(["file,shows,unit,scale,sha256", *lines, ""])
    (folder / "drawings" / CONTENTS).write_text(listed)

    write_drawings(folder, monkeypatch, "A1.dxf")

    assert precious.read_text() == "precious"


def test_a_file_in_a_folders_place_is_named_before_anything_moves(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "drawings").write_text("mine")

    with pytest.raises(BadInput, match="drawings is a file; the drawings need a folder"):
        write_drawings(tmp_path, monkeypatch, "A1.dxf")
    assert contents(tmp_path) == {"drawings": b"mine"}


@pytest.mark.skipif(os.name != "posix", reason="links as POSIX has them")
def test_a_link_in_a_folders_place_is_not_followed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "plan").mkdir()
    (tmp_path / "plan" / "drawings").symlink_to(tmp_path / "elsewhere")

    with pytest.raises(BadInput, match="drawings is a link"):
        write_drawings(tmp_path / "plan", monkeypatch, "A1.dxf")
    assert list((tmp_path / "elsewhere").iterdir()) == []
