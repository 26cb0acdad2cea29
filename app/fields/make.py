"""The field that fits a choice's declaration."""

from __future__ import annotations

from app.fields.count_field import CountField
from app.fields.field import Field
from app.fields.flag_field import FlagField
from app.fields.length_field import LengthField
from app.fields.measured_field import MeasuredField
from app.fields.number_field import NumberField
from app.fields.option_field import OptionField
from app.fields.slider_field import SliderField
from model.brief.declare import Choice


def field_for(choice: Choice, unit: str) -> Field:
    """Nothing but the declaration decides: a new choice needs no new line here."""
    return _kind(choice)(choice, unit)


def _kind(choice: Choice) -> type[Field]:
    if choice.is_flag:
        return FlagField
    if choice.keys:
        return OptionField
    if choice.is_count:
        return CountField
    if choice.may_be_empty:
        return MeasuredField
    if choice.is_length:
        return SliderField if choice.slider else LengthField
    return NumberField
