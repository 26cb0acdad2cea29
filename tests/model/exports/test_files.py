"""Saving is whole or not at all: whatever fails, the old file is still there, and nothing else."""

from __future__ import annotations

import errno
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from model.errors import BadInput
from model.exports.files import replace_file

POSIX = pytest.mark.skipif(os.name != "posix", reason="links and permissions as POSIX has them")


def left_in(folder: Path) -> list[str]:
    return sorted(each.name for each in folder.iterdir())


def test_new_content_takes_the_old_ones_place(tmp_path: Path) -> None:
    file = tmp_path / "bed"
    file.write_bytes(b"old, and longer than the new")

    replace_file(file, b"new")

    assert file.read_bytes() == b"new"
    assert left_in(tmp_path) == ["bed"]


@POSIX
def test_a_link_stays_a_link_and_its_target_is_written(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    target, link = tmp_path / "real" / "bed", tmp_path / "link"
    target.write_bytes(b"old")
    link.symlink_to(target)

    replace_file(link, b"new")

    assert link.is_symlink()
    assert target.read_bytes() == b"new"
    assert left_in(tmp_path / "real") == ["bed"]


@POSIX
def test_permissions_stay(tmp_path: Path) -> None:
    file = tmp_path / "bed"
    file.write_bytes(b"old")
    file.chmod(0o640)

    replace_file(file, b"new")

    assert stat.S_IMODE(file.stat().st_mode) == 0o640


@POSIX
def test_a_new_file_has_the_users_usual_permissions(tmp_path: Path) -> None:
    (tmp_path / "usual").write_bytes(b"")

    replace_file(tmp_path / "bed", b"new")

    assert (tmp_path / "bed").stat().st_mode == (tmp_path / "usual").stat().st_mode


@pytest.mark.parametrize("step", ["fsync", "replace"])
@pytest.mark.parametrize(
    ("number", "said"), [(errno.ENOSPC, "no room"), (errno.EACCES, "not allowed")]
)
def test_when_the_disk_refuses_the_old_file_is_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str, number: int, said: str
) -> None:
    file = tmp_path / "bed"
    file.write_bytes(b"old")

    def refuse(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, step, refuse)

    with pytest.raises(BadInput, match=said):
        replace_file(file, b"new")
    assert file.read_bytes() == b"old"
    assert left_in(tmp_path) == ["bed"]


@pytest.mark.skipif(
    sys.platform != "linux", reason="a limit on the size of files stands for a full disk"
)
def test_a_disk_that_fills_up_on_the_way_leaves_the_old_file(tmp_path: Path) -> None:
    file = tmp_path / "bed"
    file.write_bytes(b"old")
    save = (
        "import resource, sys; from pathlib import Path\n"
        "from model.exports.files import replace_file\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))\n"
        "replace_file(Path(sys.argv[1]), b'x' * 5000)"
    )

    done = subprocess.run([sys.executable, "-c", save, file], capture_output=True, text=True)

    assert "BadInput" in done.stderr and "larger than is allowed" in done.stderr
    assert file.read_bytes() == b"old"
    assert left_in(tmp_path) == ["bed"]


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="no such file or folder") as refusal:
        replace_file(tmp_path / "attic" / "bed", b"new")

    assert "attic" in str(refusal.value)
    assert left_in(tmp_path) == []


def test_a_folder_is_not_written_over(tmp_path: Path) -> None:
    (tmp_path / "bed").mkdir()

    with pytest.raises(BadInput, match="a folder of that name"):
        replace_file(tmp_path / "bed", b"new")


@POSIX
def test_a_device_is_not_replaced_by_a_file(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)

    with pytest.raises(BadInput, match="device"):
        replace_file(pipe, b"new")
    assert stat.S_ISFIFO(pipe.stat().st_mode)


@POSIX
def test_links_that_lead_round_in_a_circle_are_told_as_such(tmp_path: Path) -> None:
    (tmp_path / "one").symlink_to(tmp_path / "other")
    (tmp_path / "other").symlink_to(tmp_path / "one")

    with pytest.raises(BadInput, match="circle"):
        replace_file(tmp_path / "one", b"new")
