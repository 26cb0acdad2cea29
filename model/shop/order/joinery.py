"""Joints and holes as batches: alike cuts of all parts together, each setting made once.

What runs along a part that is too short to hold is cut while the part is still long: its batch
comes before all is cut to length, and takes the other solid parts of the setting with it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from model.bed import Bed
from model.part import Cut, Face, Hole
from model.parts.marks import Mark
from model.shop.order import say
from model.shop.order.feeding import is_small, joinery_cautions
from model.shop.order.heads import head_for
from model.shop.order.horns import LAST, from_near, horned, squared_first, with_horns
from model.shop.order.jobs import HAIR, Alike, Job, alike, figure, jobs
from model.shop.order.keys import key_of, line_of
from model.shop.order.mates import Mates
from model.shop.order.operations import TAPER, Operation, operation, runs_along
from model.shop.order.outside import from_outside
from model.shop.order.record import Batch, Distance, Line, Spot
from model.shop.order.trying import before
from model.units import Mm

Figures = tuple[Distance, ...]
_WHILE_LONG = (
    "Cut it along the whole piece, before any part of it is cut to length: then some are too short "
    "to hold. Mark the ends of each part after, so that the cut lies as its line says."
)


_MOST_STOPS = 4  # more are marked on a stick
_STICK = ("Mark these places on a story stick, and all parts from it.",)


class _Group(NamedTuple):
    """All jobs that one setting makes, by mark; `across` are the marks of which some do not run
    along from end to end.
    """

    operation: Operation
    first: Job
    spots: dict[str, list[Spot]]
    across: set[str]


def joinery(bed: Bed, who: Mapping[str, str], cut_late: Sequence[Batch] = ()) -> tuple[Batch, ...]:
    """Every cut and hole of every part, in the order of the trade; tapers last. `cut_late` takes
    the horns off when all mortises are cut.
    """
    marks, long = _marks(bed), horned(bed)
    mates, unit = Mates(bed), bed.design.value("shown_unit")
    squared: set[str] = set()
    first: list[Batch] = []
    rest: list[Batch] = []
    for group in _groups(bed):
        early, rank = _early(group, marks), group.operation.rank
        spots = {name: own for name, own in group.spots.items() if name not in early}
        if spots:
            told = group._replace(spots=with_horns(spots, rank, marks, long))
            batch = _batch(told, marks, who, mates, unit)
            if rank <= LAST:
                before = squared_first(name for name in spots if name in long - squared)
                squared.update(spots)
                first.append(replace(batch, before=(*before, *batch.before)))
            else:
                rest.append(batch)
    return (*first, *cut_late, *rest, *_tapers(bed, who, unit))


def while_long(bed: Bed, who: Mapping[str, str]) -> tuple[Batch, ...]:
    """The cuts that are made before parts are cut to length, for these are too short after."""
    marks, mates, made = _marks(bed), Mates(bed), []
    unit: str = bed.design.value("shown_unit")
    for group in _groups(bed):
        early = _early(group, marks)
        spots = {name: own for name, own in group.spots.items() if name in early}
        if spots:
            batch = _batch(group._replace(spots=spots), marks, who, mates, unit)
            key = f"{batch.key} while long"
            made.append(
                replace(
                    batch,
                    key=key,
                    stage="trim",
                    lines=tuple(_relined(line, key, marks, who) for line in batch.lines),
                    before=(*batch.before, _WHILE_LONG),
                    aids=(),
                    cautions=(),
                )
            )
    return tuple(made)


def _relined(line: Line, key: str, marks: Mapping[str, Mark], who: Mapping[str, str]) -> Line:
    return line_of(key, marks[line.mark], who, line.detail, line.spots)


def _marks(bed: Bed) -> Mapping[str, Mark]:
    return {mark.mark: mark for mark in bed.marks}


def _groups(bed: Bed) -> list[_Group]:
    """All settings with what they are for, in the order of the trade."""
    groups: dict[tuple[Operation, str, Alike], _Group] = {}
    for mark in bed.marks:
        for made in jobs(mark.part):
            job = from_outside(bed, mark, made)
            at = operation(job, mark.part.size)
            group = groups.setdefault((at, job.way, alike(job.figures)), _Group(at, job, {}, set()))
            group.spots.setdefault(mark.mark, []).append(job.spot)
            if not runs_along(job, mark.part.size):
                group.across.add(mark.mark)
    ordered = sorted(groups, key=lambda key: (key[0].rank, key[0].machine, key[2]))
    return [groups[key] for key in ordered]


def _early(group: _Group, marks: Mapping[str, Mark]) -> set[str]:
    """The marks whose cuts a setting makes before they are cut to length: all solid ones that it
    runs along, if one of them is too short to hold after.
    """
    solid = {
        name
        for name in group.spots
        if name not in group.across
        and (made_of := marks[name].made_of) is not None
        and made_of.kind == "solid"
    }
    return solid if any(is_small(marks[name]) for name in solid) else set()


def _batch(
    group: _Group, marks: Mapping[str, Mark], who: Mapping[str, str], mates: Mates, unit: str
) -> Batch:
    first, figures = group.first, group.first.figures
    aids = _aids(group.spots, marks, unit)
    if aids == _STICK:  # one end for all of a stick's marks
        spots = {name: from_near(s, marks[name].part.size[0]) for name, s in group.spots.items()}
        group = group._replace(spots=spots)
    key = key_of(f"{group.operation.key} {group.operation.machine.split()[0]}", figures)
    lines = tuple(
        line_of(
            key, marks[name], who, say.places(marks[name].part, spots, first.way, unit),
            tuple(spots),
        )
        for name, spots in group.spots.items()
    )  # fmt: skip
    own = [marks[name] for name in group.spots]
    return Batch(
        key=key,
        stage="joinery",
        machine=group.operation.machine,
        operation=group.operation.title,
        way=first.way,
        lines=lines,
        distances=figures,
        setting=say.setting(
            first.kind, first.way, figures, [s for own in group.spots.values() for s in own], unit
        ),
        before=(
            *before(group.operation.key, first, own, group.spots, mates, unit),
            *_heads(own[0].features[first.spot.feature], unit),
        ),
        aids=aids,
        cautions=joinery_cautions(group.operation, own, unit),
    )


def _heads(feature: Cut | Hole, unit: str) -> tuple[str, ...]:
    """What the heads of the screws need that pass a shank hole."""
    row = head_for(feature) if isinstance(feature, Hole) else None
    if row is None:
        return ()
    wide = say.size(row.head_mm, unit)
    return (f"Countersink each hole on this side, {wide} wide: heads of No. {row.key} lie flush.",)


def _aids(
    spots: Mapping[str, Sequence[Spot]], marks: Mapping[str, Mark], unit: str
) -> tuple[str, ...]:
    """Stops that serve more than one cut: the places that several spots share. A slot that ends
    inside the wood has one where it begins and one where it ends.
    """
    starts: Counter[Mm] = Counter()
    stops: Counter[Mm] = Counter()
    for name, own in spots.items():
        size, quantity = marks[name].part.size, marks[name].quantity
        for start, stop in {(round(s.start, 3), round(s.stop, 3)) for s in own}:
            if start > HAIR:
                starts[start] += quantity
            if start < stop < min(size[s.end.axis] for s in own) - HAIR:
                stops[stop] += quantity
    begin, end = (_shared(each, unit) for each in (starts, stops))
    if not begin and not end:
        return ()
    if len(begin) + len(end) > _MOST_STOPS:
        return _STICK
    if not end:
        return (f"Stop block at {say.listed(begin)}.",)
    first = f"one at {say.listed(begin, 'or')} where it begins, " if begin else ""
    return (f"Stop blocks: {first}one at {say.listed(end, 'or')} where it ends.",)


def _shared(places: Counter[Mm], unit: str) -> list[str]:
    return [say.size(place, unit) for place, times in sorted(places.items()) if times > 1]


def _tapers(bed: Bed, who: Mapping[str, str], unit: str) -> tuple[Batch, ...]:
    """Tapers take the faces that mortises and holes were measured from, so they come last."""
    groups: dict[Figures, list[Mark]] = {}
    for mark in bed.marks:
        if mark.part.taper:
            figures = (
                figure("depth", mark.part.taper),
                figure("length", mark.part.taper_length),
            )
            groups.setdefault(figures, []).append(mark)
    return tuple(_taper(figures, own, who, unit) for figures, own in groups.items())


def _taper(figures: Figures, own: list[Mark], who: Mapping[str, str], unit: str) -> Batch:
    key = key_of(TAPER.key, figures)
    depth, length = (say.size(each.size, unit) for each in figures)
    return Batch(
        key=key,
        stage="joinery",
        machine=TAPER.machine,
        operation=TAPER.title,
        way="taper",
        distances=figures,
        setting=f"{depth} off each of the four sides at the {Face.NEAR}, to nothing at {length}",
        before=("Cut two sides that lie square to each other, then tape the offcuts back on.",),
        lines=tuple(line_of(key, mark, who) for mark in own),
        cautions=joinery_cautions(TAPER, own, unit),
    )
