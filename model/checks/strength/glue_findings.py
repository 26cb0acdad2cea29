"""What is said of glued ends of members: in use, and as advice where the bed is moved."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from model.brief.shop import ShownUnit
from model.checks.record import Finding, advice, at_most
from model.checks.strength.glued_ends import GIVES_FIRST, GluedEnd, on_dowels, used, with_length
from model.checks.strength.joint_forces import called, lasting
from model.checks.strength.member_ends import Asked
from model.checks.strength.rail_ends import MOVE, in_use_and_moved
from model.mechanics.fasteners.glued_end import TenonEnd
from model.parts.pieces import Floats, Pieces
from model.structure.record import Carried
from model.units import INCH, Mm, show_length

SOURCE = (
    "first principles: glue slips, and dowels are drawn, about the edge that presses; rolling "
    "shear and glue as strong as the wood: Wood Handbook 2021, chapters 5 and 10, from memory; "
    "dowels: NDS 2018, 12.3.1 and end grain 12.5.2, from memory"
)


class Longest(NamedTuple):
    """How long tenons may become, and the unit that the maker reads."""

    tenon: Mm
    unit: ShownUnit


def findings(
    carried: Carried,
    pieces: Pieces,
    ends: Sequence[GluedEnd],
    asked: Asked,
    moved_title: str,
    longest: Longest,
) -> Iterator[Finding]:
    """The worst of alike ends in use, and as the bed is moved."""
    if not ends:
        return
    time = lasting(carried.cases)[:, None]
    use, way = used(ends, asked)
    for _, title, others in in_use_and_moved(carried):
        case, worst = divmod(int(np.where(others, 0.0, use / time).argmax()), len(ends))
        found = at_most(100 * float(use[case, worst] / time[case, 0]), 100.0, tight=10.0, unit="%")
        fails = found.margin < 0
        said = _said(pieces, ends, asked, case, worst, called(carried.cases[case]))
        if fails:
            said += _gives(ends[worst], int(way[case, worst]))
        if title:
            yield replace(
                advice(found), id="moved", title=moved_title, reason=said + MOVE * fails,
                pieces=ends[worst].pieces,
            )  # fmt: skip
            continue
        if fails:
            said += _longer(ends, asked, np.where(others, np.inf, time), longest)
        yield replace(found, reason=said, pieces=ends[worst].pieces)


def _said(
    pieces: Pieces, ends: Sequence[GluedEnd], asked: Asked, case: int, at: int, when: str
) -> str:
    member, mate = (pieces.labels[each] for each in ends[at].pieces)
    grip = ends[at].grip
    if isinstance(grip, TenonEnd):
        figures = (asked.pull, asked.across, asked.bend, asked.tilt)
        pull, across, bend, tilt = (abs(float(each[case, at])) for each in figures)
        way = "drawn out" if asked.pull[case, at] > 0 else "pressed in"
        out_of_it = f", {tilt / 1e3:.0f} N m out of its plane" if tilt > 0 else ""
        return (
            f"The tenon of {member} in {mate} is {way} with {pull:.0f} N, pushed across with "
            f"{across:.0f} N and bent with {bend / 1e3:.0f} N m{out_of_it}, {when}."
        )
    side, out = (float(each[case, at]) for each in on_dowels(ends, asked))
    count = len(grip.spots)
    dowels = f"Each of {count} dowels" if count > 1 else "The one dowel"
    return (
        f"{dowels} between {member} and {mate} bears {side:.0f} N sideways and {out:.0f} N "
        f"outwards, {when}."
    )


def _gives(end: GluedEnd, way: int) -> str:
    return f" {GIVES_FIRST[way]}." if isinstance(end.grip, TenonEnd) else ""


def _longer(ends: Sequence[GluedEnd], asked: Asked, time: Floats, longest: Longest) -> str:
    """From which length on tenons would do, where these are too short."""
    grips = [end.grip for end in ends if isinstance(end.grip, TenonEnd)]
    if not grips:
        return ""
    step = INCH / 8 if longest.unit == "inch" else 1.0
    first, last = (int(x // step) for x in (min(g.length for g in grips), longest.tenon))

    def holds(length: int) -> bool:
        return bool((used(with_length(ends, length * step), asked)[0] <= time).all())

    if last <= first or not holds(last):
        return " Longer tenons alone would not do."
    least = bisect_left(range(last), True, lo=first + 1, key=holds)
    return f" Tenons {show_length(least * step, longest.unit)} long would do."
