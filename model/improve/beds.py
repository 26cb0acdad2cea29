"""Beds that differ from one bed in a few choices; those built last are kept, for the next check."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping
from typing import Any

from model.bed import Bed, solve
from model.errors import BadInput, CannotBuild

KEPT = 64  # beds: about half a megabyte each, and their frames

Key = tuple[tuple[str, Any], ...]


class Beds:
    """Builds beds near `bed`, each from it, so that little is derived again."""

    def __init__(self, bed: Bed) -> None:
        self.bed = bed
        self._built: OrderedDict[Key, Bed | None] = OrderedDict()

    def having(self, changes: Mapping[str, Any]) -> Bed | None:
        """The bed with these choices; None: it cannot be built."""
        key = tuple(sorted(changes.items()))
        if key not in self._built:
            self._built[key] = self._solved(changes)
        self._built.move_to_end(key)
        while len(self._built) > KEPT:
            self._built.popitem(last=False)
        return self._built[key]

    def _solved(self, changes: Mapping[str, Any]) -> Bed | None:
        try:
            return solve(self.bed.design.with_choices(changes), self.bed)
        except (CannotBuild, BadInput):
            return None
