"""The maker's own rows: woods and sheets that stand beside those of the trade."""

from __future__ import annotations

from dataclasses import dataclass

from model.materials.sheet import Sheet
from model.materials.species import Species


@dataclass(frozen=True, kw_only=True)
class OwnRows:
    """Woods and sheets of the maker's own; a row with the key of a shipped one takes its place."""

    species: tuple[Species, ...] = ()
    sheets: tuple[Sheet, ...] = ()


NONE = OwnRows()
