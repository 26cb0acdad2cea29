"""Answers that took a while, kept for the next time that the same is asked."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable
from typing import Generic, TypeVar

Key = TypeVar("Key", bound=Hashable)
Answer = TypeVar("Answer")


class Remembered(Generic[Key, Answer]):
    """The answers that were asked for last; unlike a cache of calls it may leave one out."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._known: OrderedDict[Key, Answer] = OrderedDict()

    def get(self, key: Key) -> Answer | None:
        """The answer, or None."""
        found = self._known.get(key)
        if found is not None:
            self._known.move_to_end(key)
        return found

    def keep(self, key: Key, answer: Answer) -> None:
        """Keep an answer; the one that was not asked for longest goes."""
        self._known[key] = answer
        while len(self._known) > self._most:
            self._known.popitem(last=False)
