"""What the maker can decide, as text for a plain terminal: name, help, usual value, range."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from model.brief import all_choices
from model.brief.declare import Choice


def lines(columns: int) -> Iterator[str]:
    """Every choice under the heading of its topic, in the order of the panes."""
    topic = ""
    for choice in all_choices().values():
        if choice.topic != topic:
            yield from ("", choice.topic) if topic else (choice.topic,)
            topic = choice.topic
        yield from _indented(f"{choice.name}: {choice.help}", 2, columns)
        yield from _indented(span(choice), 6, columns)


def span(choice: Choice) -> str:
    """What a choice can be, and what it is while nothing else is said."""
    sign = f" {choice.unit}" if choice.unit else ""
    usual = "none" if choice.default is None else f"{_plain(choice.default)}{sign}"
    if choice.keys:
        return f"usually {usual}; one of: {', '.join(choice.keys)}"
    if choice.is_flag:
        return f"usually {usual}; yes or no"
    return f"usually {usual}; {choice.least:g} to {choice.most:g}{sign}"


def _plain(value: float | bool | str) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value if isinstance(value, str) else f"{value:g}"


def _indented(text: str, indent: int, columns: int) -> list[str]:
    margin = " " * indent
    return wrap(text, columns, initial_indent=margin, subsequent_indent=margin + "  ")
