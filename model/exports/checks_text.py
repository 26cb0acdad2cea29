"""The checks as text for a plain terminal, worst first."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from itertools import islice
from textwrap import wrap

from model.bed import Bed
from model.brief.words import in_unit
from model.checks.record import Finding, Verdict
from model.exports import cautions_text
from model.exports.checks_table import counts
from model.improve import Answer
from model.units import show_length

_INDENT = " " * 7
_SAID: dict[str, tuple[str, str]] = {
    Verdict.FAILS: ("fails", "fail"),
    Verdict.TIGHT: ("is tight", "are tight"),
    Verdict.NOTE: ("is a note", "are notes"),
    Verdict.HOLDS: ("holds", "hold"),
}


def lines(bed: Bed, columns: int, answers: Iterable[Answer] = ()) -> Iterator[str]:
    """Every check in a few lines of at most `columns` characters, the cautions, and a tally.

    `answers` say what would mend failed and tight checks, in the order of the bed's findings; each
    is taken when its check is told, so that nobody waits for all of them.
    """
    unit, coming = bed.design.value("shown_unit"), iter(answers)
    for finding in bed.findings:
        yield from _finding(finding, unit, columns)
        if finding.verdict in (Verdict.FAILS, Verdict.TIGHT):
            for answer in islice(coming, 1):
                yield from _indented(_answer(answer), columns)
    yield ""
    yield from cautions_text.lines(bed, columns)
    yield ""
    yield from wrap(tally(bed), columns)  # last, where a terminal leaves the eye


def tally(bed: Bed) -> str:
    """How many checks fail, are tight, hold: one sentence."""
    found = [
        f"{count} {_SAID[verdict][0 if count == 1 else 1]}"
        for verdict, count in counts(bed).items()
        if count
    ]
    return f"Of {len(bed.findings)} checks {', '.join(found)}." if found else "No checks apply."


def _finding(finding: Finding, unit: str, columns: int) -> Iterator[str]:
    place = f", {finding.place}" if finding.place and finding.place not in finding.title else ""
    head = f"{str(finding.verdict).upper():<6} {finding.title}{place}"
    yield from wrap(head, columns, subsequent_indent=_INDENT)
    figures = (("", finding.value), ("limit ", finding.limit), ("margin ", finding.margin))
    told = [
        f"{word}{_figure(value, finding.unit, unit)}"
        for word, value in figures
        if math.isfinite(value)
    ]
    source = f"({finding.source})" if finding.source else ""
    for text in (", ".join(told), in_unit(finding.reason, unit), source):
        yield from _indented(text, columns)


def _answer(answer: Answer) -> str:
    found = answer.improvement
    if found is None:
        return answer.sentence
    return f"Would hold with: {found.change} ({found.result}). {found.effects}".strip()


def _indented(text: str, columns: int) -> list[str]:
    return wrap(text, columns, initial_indent=_INDENT, subsequent_indent=_INDENT)


def _figure(value: float, unit: str, shown_unit: str) -> str:
    return show_length(value, shown_unit) if unit == "mm" else f"{value:.4g} {unit}".strip()
