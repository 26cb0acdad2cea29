"""In what order a plan is sawn: every setting of fence or stop made once, where that is possible.

A cut needs its parent: the piece of wood that it cuts must have been cut off before. Within that,
cuts of one setting are made together over all sheets.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Plan, Region, Way
from model.units import Mm, snapped

Key = tuple[int, ...]


class Setting(NamedTuple):
    """The rip fence or the crosscut stop, set to `distance`: the extent of what lies between it
    and the blade. A trim is not set up but marked: its `distance` is what is taken off, the kerf
    with it, whichever end or edge it comes off.
    """

    way: Way
    distance: Mm
    is_trim: bool


class Step(NamedTuple):
    """One cut: `number` counts from 1 over the whole plan in the order of sawing; `layout` is the
    number of its sheet or board, `region` the wood that is cut.
    """

    number: int
    layout: int
    region: Region


class Batch(NamedTuple):
    """A setting made once, and all the cuts made with it."""

    setting: Setting
    steps: tuple[Step, ...]


class Cut(NamedTuple):
    """A cut of the plan and the place of its parent among all cuts, -1 where it has none."""

    layout: int
    region: Region
    setting: Setting
    parent: int


def batches(plan: Plan) -> tuple[Batch, ...]:
    """The cuts of all layouts, grouped by setting, in the order of sawing.

    List scheduling: a setting whose remaining cuts can all be made now is made first, because
    waiting cannot spare it; where there is none, the setting with most cuts to make. Cuts inside a
    region that `stays_whole` are left out: they are made after milling.
    """
    cuts = tuple(_cuts(plan))
    kinds = sorted({each.setting for each in cuts}, key=_rank)
    place = {setting: at for at, setting in enumerate(kinds)}
    kind_of = [place[each.setting] for each in cuts]
    parents = [each.parent for each in cuts]
    made: list[Batch] = []
    number = 0
    for kind, members in grouped(kind_of, parents, [each.way for each in kinds]):
        steps = []
        for at in members:
            number += 1
            steps.append(Step(number, cuts[at].layout, cuts[at].region))
        made.append(Batch(kinds[kind], tuple(steps)))
    return tuple(made)


def setting_changes(plan: Plan) -> int:
    """How often fence or stop is set for the whole plan, sawn in the order of `batches`."""
    return len(batches(plan))


def distinct_settings(plan: Plan) -> int:
    """How many settings the plan has: no order of its cuts can do with fewer."""
    return len({each.setting for each in _cuts(plan)})


def setting_of(region: Region) -> Setting:
    """What a cut is set to: the part before the blade lies against fence or stop; where the blade
    leaves nothing there, the part behind it is measured. Of a trim, what is taken off.
    """
    assert region.cut is not None
    if region.is_trim and any(_goes(side) for side in (region.low, region.high)):
        gone = region.low if _goes(region.low) else region.high
        return Setting(region.cut, snapped(_extent(region.cut, gone) + region.kerf), True)
    measured = region.low or region.high or region
    return Setting(region.cut, snapped(_extent(region.cut, measured)), False)


def _goes(side: Region | None) -> bool:
    return side is None or side.use == "waste"


def _extent(way: Way, part: Region | None) -> Mm:
    return 0.0 if part is None else part.width if way == "rip" else part.length


def grouped(
    kinds: Sequence[int], parents: Sequence[int], machines: Sequence[str]
) -> list[tuple[int, list[int]]]:
    """Cuts in batches of one kind each. `kinds` and `parents` say for each cut its kind and the
    cut that must be made before it (an earlier one, or -1); `machines` names each kind's machine,
    which is kept as long as that costs no setting.
    """
    freed: list[list[int]] = [[] for _ in kinds]
    ready: dict[int, list[int]] = {}
    left = [0] * len(machines)
    for cut, (kind, parent) in enumerate(zip(kinds, parents, strict=True)):
        left[kind] += 1
        (freed[parent] if parent >= 0 else ready.setdefault(kind, [])).append(cut)
    made: list[tuple[int, list[int]]] = []
    machine = ""
    while ready:
        reach = {kind: _reached(kind, ready[kind], kinds, freed) for kind in sorted(ready)}
        kind = min(reach, key=_preference(reach, left, machines, machine))
        members = sorted(reach[kind])
        del ready[kind]
        for cut in members:
            for child in freed[cut]:
                if kinds[child] != kind:
                    ready.setdefault(kinds[child], []).append(child)
        left[kind] -= len(members)
        machine = machines[kind]
        made.append((kind, members))
    return made


def _preference(
    reach: dict[int, list[int]], left: Sequence[int], machines: Sequence[str], machine: str
) -> Callable[[int], Key]:
    """The kind that is made next has the least of this."""

    def key(kind: int) -> Key:
        is_last = len(reach[kind]) == left[kind]
        moved = machines[kind] != machine
        return (0, moved, kind) if is_last else (1, -len(reach[kind]), moved, kind)

    return key


def _reached(
    kind: int, ready: list[int], kinds: Sequence[int], freed: Sequence[list[int]]
) -> list[int]:
    """The cuts of a kind that can be made now, with those that they set free."""
    reached = list(ready)
    for cut in reached:
        reached += [child for child in freed[cut] if kinds[child] == kind]
    return reached


def _rank(setting: Setting) -> tuple[bool, bool, Mm]:
    """Trims first, then rips before crosscuts, the widest first, while the panel is heavy."""
    return not setting.is_trim, setting.way != "rip", -setting.distance


def _cuts(plan: Plan) -> Iterator[Cut]:
    """The cuts of a plan, a parent before what it sets free."""
    count = 0
    for layout in plan.layouts:
        waiting = [(layout.tree, -1)]
        while waiting:
            region, parent = waiting.pop()
            if region.cut is None or region.stays_whole:
                continue
            yield Cut(layout.number, region, setting_of(region), parent)
            waiting += [(part, count) for part in reversed(region.parts)]
            count += 1
