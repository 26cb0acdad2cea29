"""The findings of the checks as people read them: alike ones once, weights in the shop's units."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from model.checks.record import Finding, Verdict
from model.shop.order import say
from model.units import INCH, Mm, show_length

_FINE: Mm = INCH  # what is smaller is told to the 64th, all else to the 16th of an inch
_MEMORY = "from memory"


@dataclass(frozen=True)
class Unit:
    """A metric unit of what is heavy or pushes, and what an inch shop counts in; `one` of it."""

    metric: str
    told: str
    one: float


# Sources: international pound 0.45359237 kg (1959) and standard gravity 9.80665 m/s2 (CGPM 1901).
_POUND_FORCE = 0.45359237 * 9.80665
_UNITS = (
    Unit("N m", "lb ft", _POUND_FORCE * 0.3048),
    Unit("kg/m3", "lb/ft3", 0.45359237 / 0.3048**3),
    Unit("kPa", "lb/ft2", _POUND_FORCE / 0.3048**2 / 1000),
    Unit("MPa", "lb/in2", _POUND_FORCE / 0.0254**2 / 1e6),
    Unit("kg", "lb", 0.45359237),
    Unit("N", "lb", _POUND_FORCE),
)
_NUMBER = r"\d+(?:\.\d+)?"
_OLD = re.compile(rf"(?P<kg>{_NUMBER}) kg \((?P<lb>{_NUMBER}) lb\)")
_HEAVY = re.compile(
    rf"(?<!\()\b(?P<number>{_NUMBER}) (?P<unit>{'|'.join(each.metric for each in _UNITS)})"
    r"(?![\w/])(?! \()"
)
_LONG = re.compile(rf"\b(?P<low>{_NUMBER})(?:(?P<word> to | x )(?P<high>{_NUMBER}))? mm\b")
_BOOKS = re.compile(
    r"Wood Handbook|NDS \d+|EN \d+(?:-\d)*|16 CFR \d+|ANSI/KCMA A[\d.]+|AS/NZS \d+|ASTM [A-Z]\d+"
    r"|IRC|ISO \d+(?:-\d)*"
)


@dataclass(frozen=True, kw_only=True)
class Said:
    """A finding, told once for all places where it is the same."""

    verdict: Verdict
    title: str
    reason: str


def in_shop_units(sentence: str, unit: str) -> str:
    """A sentence with the units of a shop in inches: `305 lb (1356 N)`, `3/64"`; as it is in mm."""
    if unit != "inch":
        return sentence
    turned = _OLD.sub(r"\g<lb> lb (\g<kg> kg)", sentence)
    return _LONG.sub(_length, _HEAVY.sub(_pounds, turned))


def _pounds(found: re.Match[str]) -> str:
    row = next(each for each in _UNITS if each.metric == found["unit"])
    pounds = float(found["number"]) / row.one
    told = f"{pounds:.0f}" if pounds >= 2 else f"{pounds:.1f}"
    return f"{told} {row.told} ({found[0]})"


def _length(found: re.Match[str]) -> str:
    ends = [float(end) for end in (found["low"], found["high"]) if end]
    told = [show_length(end, "inch", None if end < _FINE else INCH / 16) for end in ends]
    return (found["word"] or "").join(told)


def said(findings: Iterable[Finding], unit: str) -> tuple[Said, ...]:
    """Findings in their order, those alike together, by the first; their places in the title."""
    found: dict[tuple[Verdict, str, str], list[str]] = {}
    for each in findings:
        key = (each.verdict, each.title, in_shop_units(each.reason, unit))
        found.setdefault(key, []).append(each.place)
    return tuple(
        Said(verdict=verdict, title=_placed(title, places), reason=reason)
        for (verdict, title, reason), places in found.items()
    )


def _placed(title: str, places: list[str]) -> str:
    """`Standing room at the open drawer (left and right)`."""
    named = list(dict.fromkeys(place for place in places if place))
    return f"{title} ({say.listed(named)})" if named else title


def rests_on(findings: Iterable[Finding]) -> Iterator[str]:
    """What the figures of the checks rest on, in sentences; books by the checks' own sources."""
    sources = [each.source for each in findings]
    books = sorted({book for source in sources for book in _BOOKS.findall(source)})
    if books:
        yield (
            f"The checks follow {say.listed(books)}, as far as these speak of beds and their "
            "wood, sheets and fasteners; all else is common practice in the trade."
        )
    if any(_MEMORY in source for source in sources):
        yield (
            "Some figures of these books were written down without the book at hand, and load "
            "classes of hardware are those of common rows of goods: where much hangs on one, look "
            "it up, and ask the hardware's maker. No bed of this plan has been tested to breaking."
        )
