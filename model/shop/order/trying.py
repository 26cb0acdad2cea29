"""What to do before a batch is run: measure what goes in, try the cut on a piece that is waste.

A slot is tried with what goes into it as it is, a sheet or a board. A tongue or tenon is not cut
yet, for it is fitted to the slot: then the slot is measured, and the tongue is tried in it later.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from model.parts.marks import Mark
from model.shop.order import say
from model.shop.order.jobs import Job
from model.shop.order.mates import Mates
from model.shop.order.record import Spot
from model.units import Mm

_SLACK: Mm = 0.3  # what goes in as it is may be this much thicker than the slot, as for mates
_HAIR: Mm = 1e-6
_FLOATS = ("groove", "floats in grooves")
# How a joint should go together dry; common practice, no source.
_FITS = {
    "groove": "it slides in by hand, without play",
    "rabbet": "faces flush",
    "dado": "it goes in by hand, without play",
    "mortise": "the push of a hand seats it",
    "tenon": "the push of a hand seats it",
    "tongue": "it slides in by hand, without play",
    "dovetail": "light taps close it",
    "recess": "the plate lies flush",
}
_HOLES = {
    "dowel hole": "Drill one joint in waste and close it dry: flush faces, no gap",
    "pocket hole": "Drill one in waste of the same thickness and drive its screw: the point stays "
    "inside",
}
_AT_THE_END = "its outer face lies flush with the end"
# What is cut later than the slot that it goes into.
_LATER = {"groove": "tongues", "mortise": "tenons"}
_ROUND_ENDS = (
    "A router leaves round ends: square them with a chisel, for what goes in has square corners."
)
_MOST_NAMED = 6


def before(
    operation: str,
    first: Job,
    own: Sequence[Mark],
    spots: Mapping[str, Sequence[Spot]],
    mates: Mates,
    unit: str,
) -> tuple[str, ...]:
    """Sentences for a batch: the measure that drives it, and the test cut with its mate."""
    tried = _tried(operation, first, own, spots, mates, unit)
    return (*tried, _ROUND_ENDS) if _ends_inside(operation, own, spots) else tried


def _tried(
    operation: str,
    first: Job,
    own: Sequence[Mark],
    spots: Mapping[str, Sequence[Spot]],
    mates: Mates,
    unit: str,
) -> tuple[str, ...]:
    if operation in _HOLES:
        return (f"{_HOLES[operation]}.",)
    if operation not in _FITS:
        return ()
    met = _met(operation, own, spots, mates)
    waste = _waste(own, unit)
    if operation == "recess":
        return (f"Cut one in {waste} and try the plate: {_FITS[operation]}.",)
    later = _later(operation, first, met, mates)
    ready = tuple(name for name in met if name not in later)
    if not ready:
        fitted = f": the {_LATER[operation]} of {_named(later)} are fitted to it" if later else ""
        return (f"Cut one in {waste} and measure it{fitted}.",)
    grooves = _grooves(operation, own, ready, mates)
    tried = f"try it in the grooves of {_named(grooves)}: {_FITS['tongue']}"
    if not grooves:
        fits = _AT_THE_END if operation == "rabbet" and first.spot.against.axis == 0 else None
        tried = f"try it with {_named(ready)}: {fits or _FITS[operation]}"
    return (*_measures(operation, () if grooves else ready, mates, unit),
            f"Cut one in {waste} and {tried}.")  # fmt: skip


def _ends_inside(operation: str, own: Sequence[Mark], spots: Mapping[str, Sequence[Spot]]) -> bool:
    """Whether a slot that a piece goes into ends inside the wood."""
    return operation in ("groove", "mortise", "dado") and any(
        spot.start > _HAIR or spot.stop < mark.part.size[spot.end.axis] - _HAIR
        for mark in own
        for spot in spots[mark.mark]
    )


def _later(operation: str, first: Job, met: Sequence[str], mates: Mates) -> tuple[str, ...]:
    """The parts that go into a slot by a tongue or tenon, which is cut when the slot is."""
    if operation not in _LATER:
        return ()
    width = next(each.size for each in first.figures if each.what == "width")
    return tuple(name for name in met if float(mates.marks[name].thickness) > width + _SLACK)


def _grooves(
    operation: str, own: Sequence[Mark], met: Sequence[str], mates: Mates
) -> tuple[str, ...]:
    """The parts in whose grooves a panel goes by its rabbets."""
    floats = all(any(hold.joint in _FLOATS for hold in mark.part.held) for mark in own)
    if operation != "rabbet" or not floats:
        return ()
    return tuple(
        name
        for name in met
        if any(feature.kind == "groove" for feature in mates.marks[name].features)
    )


def _met(
    operation: str, own: Sequence[Mark], spots: Mapping[str, Sequence[Spot]], mates: Mates
) -> tuple[str, ...]:
    found: set[str] = set()
    for mark in own:
        meeting = mates.at(mark, spots[mark.mark])
        wanted = [name for name in meeting if _goes_in(operation, mark, mates.marks[name])]
        found.update(wanted or meeting)
    return tuple(name for name in mates.marks if name in found)


def _goes_in(operation: str, own: Mark, other: Mark) -> bool:
    """Whether two parts that meet at a cut meet in this joint, and not in another one beside it."""
    ours, theirs = ({feature.kind for feature in mark.features} for mark in (own, other))
    if operation == "groove":
        tenons = "tenon cheek" in ours and "mortise" in theirs
        return not tenons and not ("mortise" in ours and "tenon cheek" in theirs)
    if operation == "mortise":
        return "tenon cheek" in theirs
    if operation == "tenon":
        return "mortise" in theirs
    return operation != "tongue" or "groove" in theirs


def _named(met: Sequence[str]) -> str:
    more = len(met) - _MOST_NAMED
    if more > 1:
        return f"{', '.join(met[:_MOST_NAMED])} and {more} more"
    return say.listed(met)


def _waste(own: Sequence[Mark], unit: str) -> str:
    thick = sorted({round(float(mark.thickness), 3) for mark in own})
    if len(thick) > 2:
        return "waste of the same thickness"
    return f"waste {say.listed([say.size(each, unit) for each in thick], 'or')} thick"


def _measures(operation: str, met: Sequence[str], mates: Mates, unit: str) -> tuple[str, ...]:
    """A sheet is seldom as thick as it is called: the slot follows the caliper."""
    if operation not in ("groove", "dado", "rabbet"):
        return ()
    flat: dict[float, list[str]] = {}
    for name in met:
        mark = mates.marks[name]
        if mark.made_of is not None and mark.made_of.kind == "sheet":
            flat.setdefault(round(float(mark.thickness), 3), []).append(name)
    return tuple(
        f"Measure {_named(names)}: reckoned {say.size(thick, unit)} thick."
        for thick, names in flat.items()
    )
