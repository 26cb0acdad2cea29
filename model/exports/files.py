"""How files reach the disk: whole, or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import stat
from collections.abc import Iterator
from pathlib import Path

from model.errors import BadInput

_REASONS: dict[int, str] = {
    errno.ENOSPC: "there is no room left on the disk",
    errno.EDQUOT: "there is no room left for this user",
    errno.EFBIG: "the file would be larger than is allowed here",
    errno.EACCES: "it is not allowed there",
    errno.EPERM: "it is not allowed there",
    errno.EROFS: "the disk can only be read",
    errno.ENOENT: "there is no such file or folder",
    errno.ENOTDIR: "what should be a folder is a file",
    errno.EISDIR: "there is a folder of that name",
    errno.EEXIST: "there is a file of that name",
    errno.ENAMETOOLONG: "the name is too long",
    errno.ELOOP: "the links there lead round in a circle",
}


@contextlib.contextmanager
def told_in_a_sentence(doing: str, field: str = "file") -> Iterator[None]:
    """Whatever the disk refuses inside becomes BadInput: `doing`, and why it did not work.

    `doing` is what did not happen, as in "mine.bedwright was not saved".
    """
    try:
        yield
    except OSError as trouble:
        why = _REASONS.get(trouble.errno or 0) or (trouble.strerror or "the disk refused").lower()
        raise BadInput(field, f"{doing}: {why}.") from trouble


def replace_file(path: Path, content: bytes) -> None:
    """Put new content in place of a file in one step: whoever reads it finds the old or the new.

    A link stays a link and its target is written; permissions stay. Refused with BadInput, and
    nothing changed: a folder that cannot be written, a full disk, a device in place of a file.
    """
    with told_in_a_sentence(f"{path} was not saved"):
        target = Path(os.path.realpath(path))
        mode = _mode_to_keep(path, target)
        spare = target.with_name(f".{secrets.token_hex(8)}.saving")
        try:
            _write_new(spare, content, mode)
            os.replace(spare, target)
        except BaseException:
            with contextlib.suppress(OSError):
                spare.unlink()
            raise
        settle(target.parent)


def _mode_to_keep(path: Path, target: Path) -> int | None:
    """Permissions of the file as it is; None for a new file, which gets the user's usual ones."""
    try:
        found = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(found.st_mode):
        raise IsADirectoryError(errno.EISDIR, "is a folder")
    if not stat.S_ISREG(found.st_mode):
        raise BadInput("file", f"{path} was not saved: it is a device, not a file.")
    return stat.S_IMODE(found.st_mode)


def _write_new(path: Path, content: bytes, mode: int | None) -> None:
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    with os.fdopen(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    if mode is not None:
        os.chmod(path, mode)


def settle(path: Path) -> None:
    """Ask the disk to keep a file, or the names in a folder, now; not every system can."""
    with contextlib.suppress(OSError):
        handle = os.open(path, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
