"""What to have in the shop before the first step: machines, bits, cutters, clamps, abrasives.

All are read off the bed: the machines from its work order, bits and cutters from its holes and
slots, clamps from its glue-ups.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from model.bed import Bed
from model.building.finishing import finishing_schedule
from model.building.hanging import long_bit
from model.building.record import Clamping, Driving, Step
from model.building.words import capital, plural
from model.materials import wood_screw
from model.shop.order import say
from model.shop.order.bits import bit
from model.shop.order.heads import takes_washers
from model.shop.order.jobs import jobs
from model.units import Mm

# What slots of each kind are called, for the cutter that makes them.
_SLOTS = {
    "groove": "grooves", "rabbet": "rabbets", "dado": "dadoes", "mortise": "mortises",
    "plate recess": "recesses of bed plates", "hook pocket": "pockets of bed plates",
}  # fmt: skip
_MARKING = (
    "Tape measure, steel rule and a square",
    "Bar or tape that reaches over the longest diagonal",
    "Pencil, marking knife and marking gauge",
    "Straight edge as long as the bed is wide",
    "Spirit level",
    "Vernier caliper, for sheets and slots",
)
_ALWAYS = ("Dust mask or respirator, eye and ear protection", "Push blocks and a featherboard")
_OF_GLUE = ("Glue brush", "Soft mallet", "Scraper and a damp cloth")


_PLANE = "block plane or shoulder plane"
_GUIDE = "guide for slanting screws"


class Tools(NamedTuple):
    """A heading, and what stands under it."""

    title: str
    items: tuple[str, ...]


def tool_list(bed: Bed, steps: Sequence[Step]) -> tuple[Tools, ...]:
    """The tools that a bed's steps take."""
    machines = dict.fromkeys(
        tool for step in steps for tool in step.tools if step.chapter == "Mill"
    )
    groups = (
        Tools("To mark out and measure", _MARKING),
        Tools("Machines, or hand tools that do the same", tuple(map(capital, machines))),
        Tools("Drill bits", tuple(_bits(bed, steps))),
        Tools("Cutters, by the width of the slot", tuple(_cutters(bed))),
        Tools("Clamps", tuple(_clamps(steps, bed["shown_unit"]))),
        Tools("To drive and to glue", tuple(_drivers(steps, bed["shown_unit"]))),
        Tools("Abrasives and finish", tuple(_coats(bed))),
        Tools("To keep safe", _ALWAYS),
    )
    return tuple(group for group in groups if group.items)


def step_tools(step: Step, unit: str) -> Iterator[str]:
    """What a step at the bench or on the floor takes in hand, clamps apart."""
    drilled = dict.fromkeys(
        bit(kind, wide, unit)
        for each in step.screws
        for kind, wide in (("pilot hole", each.pilot), ("shank hole", each.shank))
        if wide
    )
    if drilled:
        yield f"drill with {plural('bit', len(drilled))} {say.listed(list(drilled))}"
    if _leans([step]):
        yield _GUIDE
    if any(each.kind != "pin" for each in step.screws):
        yield "screwdriver"
    if any(long_bit(unit) in said for said in step.sentences):
        yield long_bit(unit)
    if any("plane " in said for said in (*step.sentences, *step.keep_dry)):
        yield _PLANE
    if any(each.kind == "pin" for each in step.screws):
        yield "hammer and nail set"
    if step.glue:
        yield "glue brush, damp cloth"
    if step.squares:
        yield "tape or bar for the diagonals"
    if any("BOLT" in each.code for each in step.hardware):
        yield "wrench for the bolts"
    if "mallet" in " ".join(step.sentences):
        yield "soft mallet"
    if "straight edge" in " ".join(step.checks).lower():
        yield "straight edge"


# ---------------------------------------------------------------- bits and cutters


def _bits(bed: Bed, steps: Sequence[Step]) -> Iterator[str]:
    """Every bit once, thinnest first, with what it drills."""
    unit: str = bed["shown_unit"]
    found: dict[str, tuple[Mm, list[str]]] = {}
    holes = [
        (hole.kind, float(hole.diameter))
        for mark in bed.marks
        for hole in mark.part.holes
        if not hole.kind.startswith("pocket")
    ]
    pilots = [("pilot hole", each.pilot) for each in _driven(steps) if each.pilot]
    shanks = [("shank hole", each.shank) for each in _driven(steps) if each.shank]
    for kind, diameter in (*holes, *pilots, *shanks):
        _, kinds = found.setdefault(bit(kind, diameter, unit), (diameter, []))
        if plural(kind) not in kinds:
            kinds.append(plural(kind))
    for drill, (_, kinds) in sorted(found.items(), key=lambda each: each[1][0]):
        yield f"{drill}: {say.listed(kinds)}"
    if any(hole.kind == "pocket hole" for mark in bed.marks for hole in mark.part.holes):
        yield "Stepped bit of the pocket hole jig, with its stop collar"
    yield from _countersinks(bed, steps)


def _countersinks(bed: Bed, steps: Iterable[Step]) -> Iterator[str]:
    """One for the heads of all wood screws that are driven through wood; those of wide holes and of
    fittings lie on a washer or in the fitting.
    """
    marks = {mark.mark: mark for mark in bed.marks}
    heads = {
        float(wood_screw(each.gauge).head_mm)
        for each in _driven(steps)
        if each.kind == "wood screw"
        and any(name in marks and not takes_washers(marks[name]) for name in each.through)
    }  # fmt: skip
    if heads:
        yield f"Countersink, {say.size(max(heads), bed['shown_unit'])} wide or more: screw heads"


def _cutters(bed: Bed) -> Iterator[str]:
    unit: str = bed["shown_unit"]
    found: dict[str, tuple[Mm, list[str]]] = {}
    for mark in bed.marks:
        for job in jobs(mark.part):
            if job.kind in _SLOTS:
                width = next(each.size for each in job.figures if each.what == "width")
                _, kinds = found.setdefault(say.size(width, unit), (width, []))
                if _SLOTS[job.kind] not in kinds:
                    kinds.append(_SLOTS[job.kind])
    for told, (_, kinds) in sorted(found.items(), key=lambda each: each[1][0]):
        yield f"{told}: {say.listed(kinds)}"


# ---------------------------------------------------------------- clamps, drivers, abrasives


def _clamps(steps: Sequence[Step], unit: str) -> Iterator[str]:
    """The fewest clamps that serve every glue-up, one after the other, the longest first."""
    jobs_of = [step.clamps for step in steps if step.clamps]
    spans = sorted({each.span for own in jobs_of for each in own}, reverse=True)
    had = 0
    told: dict[str, int] = {}
    for span in spans:
        wanted = max(_longer(own, span) for own in jobs_of)
        if wanted > had:
            size = say.clamp_size(span, unit)
            told[size] = told.get(size, 0) + wanted - had
            had = wanted
    for size, count in told.items():
        opens = "opens" if count == 1 else "open"
        yield f"{count} {plural('clamp', count)} that {opens} {size} or more"
    for step in steps:
        if step.chapter == "Mill":
            yield from (each for each in step.settings if " clamp" in each)


def _longer(own: Iterable[Clamping], span: Mm) -> int:
    """How many clamps of a glue-up open as far as a span, or farther."""
    return sum(each.number for each in own if each.span >= span)


def _drivers(steps: Sequence[Step], unit: str) -> Iterator[str]:
    screws = list(_driven(steps))
    if screws:
        yield "Drill and screwdriver, with a depth stop for the bits"
        yield "Driver bits that fit the heads of the screws that you buy, one for each size"
    if any(long_bit(unit) in step.tools for step in steps):
        yield f"{capital(long_bit(unit))}, for screws low in a drawer"
    if leans := _leans(steps):
        yield (
            f"Block sawn at {say.listed(leans, 'or')} degrees, or a bevel gauge set to it, to "
            "guide the bit for slanting screws"
        )
    if any(_PLANE in step.tools for step in steps):
        yield capital(_PLANE)
    if any(each.kind == "pin" for each in screws):
        yield "Hammer and nail set"
    if any("BOLT" in each.code for step in steps for each in step.hardware):
        yield "Wrench that fits the bolts, and a screwdriver to turn the nuts"
    if any(step.glue for step in steps):
        yield from _OF_GLUE
        yield (
            f"Cauls up to {say.size(say.CAUL, unit)} thick, faced with tape: all clamps are "
            "reckoned to open far enough for one at each end"
        )


def _leans(steps: Iterable[Step]) -> list[str]:
    """How far slanting screws lean to the side that they start in, in degrees."""
    slants = [each.slant for each in _driven(steps) if each.slant is not None]
    return [f"{lean:g}" for lean in sorted({each.lean for each in slants})]


def _driven(steps: Iterable[Step]) -> Iterator[Driving]:
    return (each for step in steps for each in step.screws)


def _coats(bed: Bed) -> Iterator[str]:
    """What the finishing schedule uses up."""
    for each in finishing_schedule(bed).passes:
        if each.amount:
            yield f"{each.title}: {each.amount}"
