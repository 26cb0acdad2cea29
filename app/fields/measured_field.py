"""A measured length beside its nominal one: empty means that the nominal one is used."""

from __future__ import annotations

from app.fields.length_field import LengthField
from model.brief import all_choices

MEASURED = "_measured"


class MeasuredField(LengthField):
    """May be left empty."""

    def build(self) -> None:
        super().build()
        nominal = self.choice.name.removesuffix(MEASURED)
        is_measured = nominal != self.choice.name
        self.line.setPlaceholderText("not measured" if is_measured else "not given")
        if is_measured and nominal in all_choices():  # it stands right below the nominal size
            self._heading.setText("as measured")
            self._heading.setProperty("kind", "faint")
            self._heading.setIndent(12)

    def read(self, text: str) -> float | None:
        return super().read(text) if text.strip() else None
