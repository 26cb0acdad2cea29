"""An error is a sentence, and it survives the way back from a worker process."""

from __future__ import annotations

import pickle

import pytest

from model.errors import BadInput, BedError, CannotBuild


def test_an_error_reads_as_its_sentence() -> None:
    assert str(BadInput("width", "Too wide.")) == "Too wide."
    assert isinstance(CannotBuild("depth", "The drawers meet."), BedError)


@pytest.mark.parametrize(
    "error",
    [
        BadInput("width", "Too wide."),
        CannotBuild("depth", "The drawers meet.", involved=("rows",)),
        CannotBuild("slide", "No slide is so short."),
    ],
)
def test_an_error_pickles_whole(error: BedError) -> None:
    back = pickle.loads(pickle.dumps(error))

    assert type(back) is type(error)
    assert (back.field, str(back)) == (error.field, str(error))
    assert getattr(back, "involved", ()) == getattr(error, "involved", ())


def test_an_error_cannot_be_changed_on_its_way() -> None:
    with pytest.raises(AttributeError):
        BadInput("width", "Too wide.").field = "depth"  # type: ignore[misc]
