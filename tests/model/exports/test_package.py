"""The plan package: all files or none, and never half of one."""

from __future__ import annotations

import errno
import os
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from model.bed import Bed, solve
from model.designs import read
from model.errors import BadInput
from model.exports import package
from model.exports.package import WRITERS, write_package

DEMOS = Path(__file__).resolve().parents[3] / "resources" / "demos"


@cache
def smallest() -> Bed:
    return solve(read(DEMOS / "loft_single.bedwright"))


@pytest.fixture
def small_bed() -> Bed:
    """A real one: what is bought and sawn is worked out from more than its parts."""
    return smallest()


def contents(folder: Path) -> dict[str, bytes]:
    return {each.name: each.read_bytes() for each in folder.iterdir() if each.is_file()}


def fail_at(name: str, error: BaseException, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(bed: Any, path: Path) -> None:
        path.write_bytes(b"half")
        raise error

    monkeypatch.setitem(WRITERS, name, broken)


def test_every_writer_writes_its_file(small_bed: Any, tmp_path: Path) -> None:
    written = write_package(small_bed, tmp_path / "new" / "plan")

    assert [path.name for path in written] == list(WRITERS)
    assert all(path.stat().st_size > 0 for path in written)
    assert set(contents(tmp_path / "new" / "plan")) == set(WRITERS)


def test_the_same_bed_gives_the_same_bytes(small_bed: Any, tmp_path: Path) -> None:
    write_package(small_bed, tmp_path / "one")
    write_package(small_bed, tmp_path / "other")

    assert contents(tmp_path / "one") == contents(tmp_path / "other")


@pytest.mark.parametrize(
    "error", [OSError(errno.ENOSPC, "full"), ValueError("a bug"), KeyboardInterrupt()]
)
def test_what_fails_on_the_way_leaves_the_old_package(
    small_bed: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: BaseException
) -> None:
    write_package(small_bed, tmp_path)
    before = contents(tmp_path)
    fail_at("bed.glb", error, monkeypatch)
    expected = BadInput if isinstance(error, OSError) else type(error)

    with pytest.raises(expected):
        write_package(small_bed, tmp_path)

    assert contents(tmp_path) == before
    assert [each for each in tmp_path.iterdir() if each.is_dir()] == []


def test_what_fails_on_the_way_leaves_no_new_folder(
    small_bed: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
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
def test_a_link_in_a_files_place_is_not_followed(small_bed: Any, tmp_path: Path) -> None:
    """A package in a shared folder must not write over what lies elsewhere."""
    elsewhere = tmp_path / "elsewhere"
    elsewhere.write_bytes(b"precious")
    (tmp_path / "plan").mkdir()
    (tmp_path / "plan" / "parts.csv").symlink_to(elsewhere)

    write_package(small_bed, tmp_path / "plan")

    assert elsewhere.read_bytes() == b"precious"
    assert not (tmp_path / "plan" / "parts.csv").is_symlink()


@pytest.mark.skipif(os.name != "posix", reason="permissions as POSIX has them")
def test_files_have_the_users_usual_permissions(small_bed: Any, tmp_path: Path) -> None:
    (tmp_path / "usual").write_bytes(b"")
    usual = (tmp_path / "usual").stat().st_mode

    written = write_package(small_bed, tmp_path / "plan")

    assert {path.stat().st_mode for path in written} == {usual}


def test_a_disk_that_refuses_the_folder_is_told_in_a_sentence(
    small_bed: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(**_: object) -> str:
        raise PermissionError(errno.EACCES, "no")

    monkeypatch.setattr(package.tempfile, "mkdtemp", refuse)

    with pytest.raises(BadInput, match="not written.*not allowed") as refusal:
        write_package(small_bed, tmp_path)
    assert refusal.value.field == "folder"
