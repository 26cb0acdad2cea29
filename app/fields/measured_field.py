"""A measured length beside its nominal one: empty means that the nominal one is used."""

from __future__ import annotations

from app.fields.length_field import LengthField


class MeasuredField(LengthField):
    """May be left empty."""

    def build(self) -> None:
        super().build()
        self.line.setPlaceholderText("not measured")

    def read(self, text: str) -> float | None:
        return super().read(text) if text.strip() else None
