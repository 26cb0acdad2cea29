"""Errors are sentences that a maker understands; these are the kinds they come in.

`field` names the choice or dimension at fault, so that the window can show the sentence beside the
field and the command line can name the option. Everything else is a bug of ours and stays a bug.
"""

from __future__ import annotations

from typing import Any

Names = tuple[str, ...]


class BedError(Exception):
    """Whatever the maker is told in a sentence; `str(error)` is that sentence."""

    __slots__ = ("_field", "_sentence")

    def __init__(self, field: str, sentence: str) -> None:
        super().__init__(sentence)
        self._field = field
        self._sentence = sentence

    @property
    def field(self) -> str:
        """The choice, dimension or file at fault."""
        return self._field

    @property
    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""
        return self._sentence

    def __reduce__(self) -> tuple[Any, ...]:
        # Exceptions pickle by their args, which hold the sentence alone; a worker process must
        # hand over the field as well.
        return type(self), (self._field, self._sentence)

    def __str__(self) -> str:
        return self._sentence


class BadInput(BedError):
    """Something typed or read cannot be understood, or lies outside the range of its field."""


class CannotBuild(BedError):
    """The choices are readable, but no bed can be built from them.

    `involved` names the other choices that are in conflict with `field`. What would work instead is
    not for a rule to guess: `model.mend` finds it by building.
    """

    __slots__ = ("_involved",)

    def __init__(self, field: str, sentence: str, involved: Names = ()) -> None:
        super().__init__(field, sentence)
        self._involved = involved

    @property
    def involved(self) -> Names:
        """The other choices that take part in the conflict."""
        return self._involved

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.field, self.sentence, self._involved)
