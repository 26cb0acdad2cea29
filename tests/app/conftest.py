"""What tests of window and command line share."""

import pytest

from model.exports.package import FOLDERS, WRITERS


@pytest.fixture
def lists_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of the plan package only lists and tables are written: the rest takes most of its time."""
    for name in ("plan.pdf", "bed.glb", "bed.stl", "bed.3mf", "bed.step", "client.html"):
        monkeypatch.delitem(WRITERS, name)
    for name in list(FOLDERS):
        monkeypatch.delitem(FOLDERS, name)
