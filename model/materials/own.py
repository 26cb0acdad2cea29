"""The maker's own rows: woods and sheets that stand beside those of the trade."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from model.materials.sheet import Sheet
from model.materials.species import Species


@dataclass(frozen=True, kw_only=True)
class OwnRows:
    """Woods and sheets of the maker's own; a row with the key of a shipped one takes its place."""

    species: tuple[Species, ...] = ()
    sheets: tuple[Sheet, ...] = ()

    @cached_property
    def _hash(self) -> int:  # rows have many fields, and tables are looked up on every change
        return hash((self.species, self.sheets))

    def __hash__(self) -> int:
        return self._hash

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys of all rows, woods first."""
        return (*(row.key for row in self.species), *(row.key for row in self.sheets))

    def joined(self, other: OwnRows) -> OwnRows:
        """These rows and the other ones, which take the place of those with the same key."""
        woods = {row.key: row for row in (*self.species, *other.species)}
        flat = {row.key: row for row in (*self.sheets, *other.sheets)}
        return OwnRows(species=tuple(woods.values()), sheets=tuple(flat.values()))

    def without(self, key: str) -> OwnRows:
        """All rows but the one with that key."""
        return OwnRows(
            species=tuple(row for row in self.species if row.key != key),
            sheets=tuple(row for row in self.sheets if row.key != key),
        )


NONE = OwnRows()
