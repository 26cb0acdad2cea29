"""A measured length beside its nominal one: empty means that the nominal one is used."""

from __future__ import annotations

from app.fields.length_field import LengthField

MEASURED = "_measured"


class MeasuredField(LengthField):
    """May be left empty."""

    def build(self) -> None:
        super().build()
        self.line.setPlaceholderText("not measured")
        if self.choice.name.endswith(MEASURED):  # it stands right below the nominal size
            self._heading.setText("as measured")
            self._heading.setProperty("kind", "faint")
            self._heading.setIndent(12)

    def read(self, text: str) -> float | None:
        return super().read(text) if text.strip() else None
