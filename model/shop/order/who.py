"""Which part a line of the work order is about, in words that outlast a change of the design."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from model.parts.marks import Mark

_STEP = 2  # decimals of a mm: below any tape, above floating-point dust


def identities(marks: Iterable[Mark]) -> Mapping[str, str]:
    """For each mark a text of name and finished size: what a tick on it is kept under.

    Marks are letters and numbers that move when a part is added; a part that stays as it is keeps
    its ticks. Those that share name and size (a left and a right post) are told apart by order.
    """
    seen: Counter[str] = Counter()
    found = {}
    for mark in marks:
        sides = (mark.length, mark.width, mark.thickness)
        size = "x".join(f"{round(float(side), _STEP):g}" for side in sides)
        text = f"{mark.assembly[:1].upper()} {mark.name} {size}"
        seen[text] += 1
        found[mark.mark] = text if seen[text] == 1 else f"{text} #{seen[text]}"
    return found
