"""The care sheet: what the people who sleep in the bed are told, with this bed's own numbers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from model.bed import Bed
from model.brief.words import in_unit
from model.building.coating import PRACTICE
from model.building.joined import Joined
from model.building.record import Step
from model.building.sequence import FINAL
from model.building.words import capital, weight, weight_or_less
from model.checks.safety.weights import lifters, many
from model.checks.strength.drawer_slides import contents_borne
from model.checks.strength.drawer_weights import drawer_weight
from model.shop.order import say
from model.solids.carried import MATTRESS, Assembly
from model.units import Kg

_CORNERS = 4  # where a bed is lifted: more people find no hold; common practice, no source
_CLEANED = {
    "painted": "Dust with a dry cloth; wipe with a damp one and a little mild soap, and dry at "
    "once. No solvent, no scouring powder, nothing with silicone: no later coat holds on it.",
    "clear": "Dust with a dry cloth; wipe with a damp one, and dry at once. No solvent, no "
    "scouring powder, nothing with silicone: no later coat holds on it.",
    "oil": "Dust with a dry cloth. Once a year, or where it looks dry, rub in a little of the same "
    "oil and wipe all of it off. Dry the rags flat outdoors: they heat by themselves.",
    "none": "Dust with a dry cloth. Bare wood takes stains for good: wipe up spills at once.",
}


@dataclass(frozen=True, kw_only=True)
class CareLine:
    """One thing to know: a heading, a sentence or two, and where it comes from."""

    key: str
    title: str
    text: str
    source: str = PRACTICE


def care_sheet(bed: Bed, steps: tuple[Step, ...]) -> tuple[CareLine, ...]:
    """The lines of the sheet; `steps` are those of the bed, which is taken apart the other way."""
    lines = (
        *_loads(bed),
        *_mattress(bed),
        *_tightened(bed),
        *_deck(bed),
        *_drawers(bed),
        *_house(bed),
        _cleaned(bed),
        *_moved(bed, steps),
    )
    unit = bed["shown_unit"]
    return tuple(
        CareLine(key=each.key, title=each.title, text=in_unit(each.text, unit), source=each.source)
        for each in lines
    )


def _loads(bed: Bed) -> Iterator[CareLine]:
    unit = bed["shown_unit"]
    lying = [weight(float(kg), unit) for kg in bed["lying"]]
    each = lying[0] if len(set(lying)) == 1 else say.listed(lying)
    who = f"{len(lying)} sleepers of {each} each" if len(lying) > 1 else f"one sleeper of {each}"
    yield CareLine(
        key="loads",
        title="What it bears",
        text=f"The bed is reckoned for {who}, a mattress of "
        f"{weight(float(bed['mattress_mass']), unit)}, and somebody who sits on its edge. It is "
        "not built for jumping.",
        source="what was entered for this bed, and its checks bear out",
    )


def _mattress(bed: Bed) -> Iterator[CareLine]:
    unit = bed["shown_unit"]
    wide, long, high = (
        say.size(float(bed[name]), unit)
        for name in ("mattress_across", "mattress_along", "mattress_high")
    )
    yield CareLine(
        key="mattress",
        title="Mattress",
        text=f"{wide} wide, {long} long and {high} thick. A thinner one opens gaps, a thicker one "
        "hides the headboard and lifts its edge. Air it, and turn it as its maker says.",
    )


def _tightened(bed: Bed) -> Iterator[CareLine]:
    codes = {each.code for each in bed.hardware}
    bolts = any("BOLT" in code for code in codes)
    what = (
        "Draw up the bolts between sides and ends"
        if bolts
        else "Press the sides down in their hooks, and drive the plates' screws tight"
    )
    yield CareLine(
        key="tighten",
        title="After the first month, then every half year",
        text=f"{what}{_screwed(bed)}. Wood dries and moves in its "
        "first heated winter: look then above all. A bed that creaks or sways is loose.",
    )


def _screwed(bed: Bed) -> str:
    """What else is held by screws that a maker can reach."""
    codes = {each.code for each in bed.hardware}
    known = {
        "slats": bed["deck"] == "slats" and bed["slat_fixing"] == "screws",
        "bearers": any(code.startswith("BRACKET") for code in codes),
        "pulls": any(code.startswith("PULL-") for code in codes),
    }
    found = [name for name, there in known.items() if there]
    return f"; look at the screws of {say.listed(found)}" if found else ""


def _deck(bed: Bed) -> Iterator[CareLine]:
    if bed["deck"] == "slats":
        screwed = bed["slat_fixing"] == "screws"
        fixed = "their screws keep them there" if screwed else "their straps keep them there"
        yield CareLine(
            key="slats",
            title="Slats",
            text=f"They lie centred, both ends on their cleats, {fixed}. Replace a cracked one "
            "before the bed is slept in again.",
        )
    else:
        yield CareLine(
            key="panels",
            title="Deck panels",
            text="Keep their holes free: the mattress dries through them. Stand it on its edge for "
            "an hour when the sheets are changed.",
        )


def _drawers(bed: Bed) -> Iterator[CareLine]:
    rows = [row for row in ("left", "right", "foot") if bed.dimensions.values.get(f"{row}.bays")]
    if not rows or not bed.dimensions.values.get("has_drawers"):
        return
    rows = [row for row in rows if bed[f"{row}.drawer_count"]]
    full = weight_or_less(min(may_hold(bed, row) for row in rows), bed["shown_unit"])
    slides = (
        "Wipe the slides and give them a drop of light oil once a year"
        if bed.dimensions.values.get("is_side_mount")
        else "Rub the runners with paraffin wax once a year"
    )
    carriers = "slides" if bed.dimensions.values.get("is_side_mount") else "runners"
    skids = ", with skids under its back" if bed["has_skids"] else ""
    yield CareLine(
        key="drawers",
        title="Drawers",
        text=f"Each takes up to {full} of contents, spread over its bottom: bottom, box and "
        f"{carriers} bear that{skids}. Close them by the pull, open one heavy drawer at a time, "
        f"and let nobody stand, sit or ride in them. {slides}.",
        source="ANSI/KCMA A161.1 (drawer bottoms), load class of the slides, as in the checks",
    )


def may_hold(bed: Bed, row: str) -> Kg:
    """What a drawer of a row may be filled with: the least of what its bottom is reckoned for, of
    what its slides leave with their spare, and of what they leave of their load class with pull and
    steel on. Skids may give that spare, but no more: once they are worn, all hangs on the slides.
    """
    empty = drawer_weight(bed.pieces, bed.masses, row)
    left = contents_borne(bed["slide"], bool(bed["has_skids"]), empty)
    if bed.dimensions.values.get("is_side_mount"):
        drawer = bed.pieces.group == bed.pieces.groups.index(f"{row}-1")
        left = min(left, max(bed["slide"].load_kg - float(bed.weights[drawer].sum()), 0.0))
    return min(float(bed[f"{row}.drawer_contents"]), left)


def _house(bed: Bed) -> Iterator[CareLine]:
    dry, damp = float(bed["driest_air"]), float(bed["dampest_air"])
    yield CareLine(
        key="humidity",
        title="Air",
        text=f"The wood's movement is reckoned for air between {dry:g} and {damp:g} % of relative "
        "humidity. Drier air opens joints and gaps, damper air makes drawers bind. Keep the bed "
        "off radiators and damp outer walls, with a hand's breadth of air behind it.",
    )


def _cleaned(bed: Bed) -> CareLine:
    return CareLine(key="clean", title="Cleaning", text=_CLEANED[bed["finish"]])


def _moved(bed: Bed, steps: tuple[Step, ...]) -> Iterator[CareLine]:
    yield CareLine(
        key="drag",
        title="Never drag it",
        text=f"Dragged, a bed pulls at its joints and tears them. {_shifted(bed)} To move it to "
        "another room, take it apart.",
    )
    yield CareLine(
        key="apart",
        title="How it comes apart",
        text=f"The other way round as it was put together: {say.listed(_undone(steps))}. Drawers "
        "keep their fronts, and glued joints stay as they are. Keep screws and bolts in a bag that "
        "is marked."
        if any(step.chapter == "Drawers" for step in steps)
        else f"The other way round as it was put together: {say.listed(_undone(steps))}. Glued "
        "joints stay as they are. Keep screws and bolts in a bag that is marked.",
    )
    yield CareLine(
        key="carried", title="What is carried", text=f"{'; '.join(_carried(bed, steps))}.",
        source="weights by the density of what it is made of",
    )  # fmt: skip


def _shifted(bed: Bed) -> str:
    """How many lift the bed when mattress and drawers are out."""
    pieces = bed.pieces
    stays = [
        piece
        for piece in range(len(pieces))
        if not pieces.groups[pieces.group[piece]]
        and pieces.parts[pieces.part[piece]].hardware != MATTRESS
    ]
    kg = float(bed.weights[stays].sum())
    out = "its mattress and drawers" if len(pieces.groups) > 1 else "its mattress"
    told = f"Without {out} it weighs {weight(kg, bed['shown_unit'])}"
    number = lifters(kg, bed["bed_length"])
    if number > _CORNERS:
        return f"{told}: too much to be shifted whole, even across its room."
    return f"{told}: {many(number)} lift it to shift it."


def _undone(steps: tuple[Step, ...]) -> list[str]:
    """What is lifted off or out, in its order: the final assembly backwards."""
    titles = [step.title for step in reversed(steps) if step.chapter == FINAL]
    things = [title.partition(" the ")[2].partition(" to ")[0] for title in titles]
    return [f"the {thing}" for thing in things if "front" not in thing]


def _carried(bed: Bed, steps: tuple[Step, ...]) -> Iterator[str]:
    """The assemblies that take two, and their sizes, with the fronts and fittings they keep."""
    joined = Joined(bed)
    told: list[Assembly] = []
    for each in bed.carried:
        if not any(set(each.pieces) <= set(one.pieces) for one in told):  # it hangs on another
            told.append(_with_all(joined, each, steps))
    for each in sorted(told, key=lambda one: -one.kg):
        if lifters(each.kg) > 1 or each.size[2] > 1000.0:
            yield _assembly(each, bed["shown_unit"])


def _with_all(joined: Joined, each: Assembly, steps: tuple[Step, ...]) -> Assembly:
    """An assembly as it is lifted in one in the steps, with what is screwed to it by then; as it is
    where no step brings it.
    """
    bed = joined.bed
    brought = next((set(s.brought) for s in steps if set(each.pieces) <= set(s.brought)), set())
    if not brought or bed.pieces.group[each.pieces[0]]:
        return each  # a drawer is lifted out with its front
    own = sorted(brought if each.count == 1 else _linked(joined, each.pieces, brought))
    low, high = (bound[own] for bound in bed.pieces.bounds)
    small, middle, large = sorted((high.max(axis=0) - low.min(axis=0)).tolist())
    kg = float(bed.weights[own].sum())
    return replace(each, pieces=tuple(own), kg=kg, size=(small, middle, large))


def _linked(joined: Joined, first: Iterable[int], brought: set[int]) -> set[int]:
    """What hangs together with some pieces, of all that is brought."""
    found: set[int] = set()
    new = set(first)
    while new:
        found |= new
        new = {other for piece in new for other in joined.partners(piece)} & brought - found
    return found


def _assembly(each: Assembly, unit: str) -> str:
    sides = " x ".join(say.rough(side, unit) for side in reversed(each.size))
    count = f"{each.count} x " if each.count > 1 else ""
    number = lifters(each.kg, each.size[2])
    two = f", by {many(number)}" if number > 1 else ""
    return f"{count}{capital(each.name)}: {sides}, {weight(each.kg, unit)}{two}"
