"""A number that is no length, with its unit or none; both decimal marks are read."""

from __future__ import annotations

from app.fields.length_field import LengthField
from model.errors import BadInput


class NumberField(LengthField):
    """One number."""

    def read(self, text: str) -> float | None:
        try:
            return float(text.strip().removesuffix(self.choice.unit).strip().replace(",", "."))
        except ValueError:
            raise BadInput(
                self.choice.name, f"“{text.strip()}” is not understood as a number."
            ) from None
