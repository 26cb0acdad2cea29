"""What bought parts must measure, as the drawings take them: for somebody who stands in a shop.

Every figure is read off the bed or its tables; a part that differs asks for changes, which are told
with it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from model.bed import Bed
from model.building.washers import WasherRoom, washer_room
from model.building.words import capital, load_class, weight
from model.cost.sizes import at_least, at_most, sold_size
from model.dimensions.brackets import HOLES
from model.dimensions.drawer_load import GRAVITY
from model.joints.connector import plate_screws
from model.materials import Connector, bolt_drives, wood_screw
from model.parts.marks import HardwareCount
from model.shop.order import say
from model.units import Mm

_THREAD: Mm = 3.0  # of a thread on either side of its nut; common practice, no source
_BEARS: Mm = 2.0  # of a washer's width on wood beyond its hole; common practice, no source
_WIDE: Mm = 20.0  # washers of wood screws are no wider; common practice, no source
_SAME: Mm = 0.01
_BEFORE: Mm = 1.0  # of thread before a pull screw's end; common practice, no source
_ROWS = ("left", "right", "foot")
_CARRY = "connectors_carry"  # the check that tells what hangs on one connector


class Fitting(NamedTuple):
    """A bought part, and what it must measure and bear."""

    key: str
    name: str
    text: str


Teller = Callable[[Bed, HardwareCount], Iterator[str]]


def fittings(bed: Bed) -> tuple[Fitting, ...]:
    """The parts of which more than a name is to be told, in the order of the buying list."""
    found: dict[str, Fitting] = {}
    for each in bed.hardware:
        for begins, (name, tell) in _TOLD.items():
            if each.code.startswith(begins) and name not in found:
                text = " ".join(tell(bed, each))
                if text:
                    found[name] = Fitting(begins.rstrip("-").lower(), name, text)
    return (*found.values(), *_washers(bed))


# ---------------------------------------------------------------- what holds sides to posts


def _plates(bed: Bed, each: HardwareCount) -> Iterator[str]:
    row, unit = bed["connector"], bed["shown_unit"]
    long, wide, thick = (
        say.size(size, unit)
        for size in (row.plate_length_mm, row.plate_width_mm, row.plate_thickness_mm)
    )
    places = plate_screws(row.plate_length_mm, row.screws_per_plate)
    spots = say.listed([say.size(at, unit) for at in places])
    deep = at_most(row.pocket_depth_mm, unit)
    yield (
        f"Each half {long} long, {wide} wide and {thick} thick: its recess is cut to that. "
        f"{row.screws_per_plate} sunk holes for No. {row.screw_gauge} screws, {spots} from its "
        "lower end. Hooks or slots keep to the middle half of the plate, are no wider than "
        f"{at_most(row.plate_width_mm / 2, unit)}, reach no more than {deep} behind the post's "
        f"plate, and let go when the side is lifted by {say.size(row.lift_mm, unit)} or less."
    )
    yield from _borne(bed, "a pair")
    yield "Where yours differ, cut recesses, pockets and pilot holes to them."


def _bolts(bed: Bed, each: HardwareCount) -> Iterator[str]:
    row, unit = bed["connector"], bed["shown_unit"]
    if each.code.endswith("-NUT"):
        return
    in_rail = float(bed["bolt_in_rail"])
    before_nut = row.nut_from_end_mm - row.nut_diameter_mm / 2 - _THREAD
    thread = at_least(in_rail - before_nut, unit)
    bore = at_most(row.counterbore_diameter_mm, unit)
    yield (
        f"Bolt {sold_size(row.bolt_diameter_mm, unit)} thick and "
        f"{sold_size(bed['bolt_length'], unit)} long under its head, threaded over the last "
        f"{thread} or more. Head and washer lie in a hole {bore} wide: take a socket head, or a "
        f"hexagon head and a socket wrench that still turns in that hole.{_driven_by(row)}"
    )
    nut = sold_size(row.nut_diameter_mm, unit)
    if row.kind == "cross bolt":
        yield (
            f"Nut: a round bar {nut} thick, with the bolt's thread through its middle, "
            f"{sold_size(row.nut_length_mm, unit)} long and no longer than its rail is thick, with "
            "a slot at one end to turn it by."
        )
    else:
        yield (
            f"Nut: one that goes into a hole {nut} wide and "
            f"{say.size(row.nut_length_mm, unit)} deep, and can be held there while the bolt is "
            "turned."
        )
    yield from _borne(bed, "one")
    yield "Where yours differ, bore to them."


def _driven_by(row: Connector) -> str:
    """What turns the bolt: ` Hex key 5 mm, wrench 10 mm.`; nothing for a thread of no table."""
    for each in bolt_drives().values():
        if abs(each.diameter_mm - row.bolt_diameter_mm) < _SAME:
            return f" Hex key {each.hex_key}, wrench {each.hexagon}."
    return ""


def _borne(bed: Bed, one: str) -> Iterator[str]:
    """What the frame hangs on each; nothing where no frame could be judged."""
    loads = [each.value for each in bed.findings if each.id.endswith(_CARRY)]
    if loads:
        kg = max(loads) / GRAVITY
        yield (
            f"Up to {weight(kg, bed['shown_unit'])} hangs straight down on {one}: ask what its "
            "maker gives."
        )


# ---------------------------------------------------------------- drawers


def _slides(bed: Bed, each: HardwareCount) -> Iterator[str]:
    row, unit = bed["slide"], bed["shown_unit"]
    if not row.holds_the_drawer or each.code.endswith("-inner"):
        return
    travel = say.size(max(each.size) * row.travel_share, unit)
    yield (
        f"{capital(row.kind)}, {say.size(max(each.size), unit)} long when closed, drawer out by "
        f"{travel}; made for {load_class(row.load_kg, unit)} or more a pair; closed, "
        f"{say.size(row.thickness_mm, unit)} thick, for {say.size(bed['slide_side_space'], unit)} "
        "of room at each side of the box, and no higher than "
        f"{at_most(row.section_height_mm, unit)}. A stop at full travel, and inner members that "
        "come off, so that the box can be lifted out. Their screws go through their own holes, "
        "three to a member; the line that these lie on stands in the steps that fit the slides."
    )


def _pull(bed: Bed, each: HardwareCount) -> Iterator[str]:
    row, unit = bed["pull"], bed["shown_unit"]
    screw = bed["left.pull_screw"] or bed["right.pull_screw"] or bed["foot.pull_screw"]
    if not row.holes or screw is None:
        return
    thread, deep = screw.name.partition(" ")[0], at_least(_thread_depth(bed), unit)
    spacing = sold_size(row.hole_spacing_mm, unit)
    apart = f"two holes {spacing} apart" if row.holes == 2 else "one hole"
    yield (
        f"{capital(apart)}, threaded {thread} and {deep} deep or more, or the screws meet "
        f"its bottom before they draw tight; about {say.rough(row.length_mm, unit)} long, standing "
        f"{say.rough(row.projection_mm, unit)} out. Finish as you like. The screws listed reach "
        "through front and box: those that come with a pull are for a front alone."
    )


def _thread_depth(bed: Bed) -> Mm:
    """What the longest end of a pull's screw fills, with a little room before it; never less than
    holds.
    """
    screws = [(bed[f"{row}.pull_screw"], bed[f"{row}.pull_grip"]) for row in _ROWS]
    reached = [float(screw.length_mm - grip) + _BEFORE for screw, grip in screws if screw]
    return max(float(bed["pull"].least_thread_mm), *reached, 0.0)


def _bracket(bed: Bed, each: HardwareCount) -> Iterator[str]:
    unit, leaf = bed["shown_unit"], float(bed["bracket_leaf"])
    spots = say.listed([say.rough(leaf * share, unit) for share in HOLES])
    rows = [row for row in _ROWS if bed[f"{row}.drawer_count"]]
    bearer = float(bed["bearer_across"])
    gauges = dict.fromkeys(
        bed[f"{row}.{name}"].screw.key
        for row in rows
        for name in ("bracket_screw_up", "bracket_screw_near")
    )  # fmt: skip
    thickest = max(gauges, key=lambda key: wood_screw(key).shank_mm)
    yield (
        f"Of steel, two leaves {say.size(leaf, unit)} long, about "
        f"{say.rough(bed['bracket_width'], unit)} wide and never wider than the bearer, "
        f"{say.size(bearer, unit)}; {say.size(bed['bracket_plate'], unit)} thick, two holes in "
        f"each for No. {thickest} screws, about {spots} from the bend."
    )


def _glide(bed: Bed, each: HardwareCount) -> Iterator[str]:
    unit = bed["shown_unit"]
    foot = min(float(bed[f"{end}.post_foot"]) for end in ("head", "foot"))
    yield (
        f"One for each post, {say.size(min(each.size), unit)} high: all heights count with that. "
        f"No wider than the post's foot, {say.size(foot, unit)}. With a nail or a screw in its "
        "middle; drill for it first, or the end grain splits. Felt under it for a hard floor."
    )


def _dowel(bed: Bed, each: HardwareCount) -> Iterator[str]:
    yield "Fluted, dry hardwood, chamfered at both ends; in mm, since their holes are bored in mm."


# ---------------------------------------------------------------- washers


def _washers(bed: Bed) -> Iterator[Fitting]:
    unit = bed["shown_unit"]
    row = bed["connector"]
    if any(each.code in ("CROSS-BOLT", "BED-BOLT") for each in bed.hardware):
        yield Fitting(
            "washer bolt",
            "Washer, to lock",
            f"For a bolt {sold_size(row.bolt_diameter_mm, unit)} thick, no wider outside than the "
            f"hole for its head, {at_most(row.counterbore_diameter_mm, unit)}.",
        )
    room = washer_room(bed)
    if room is not None:
        yield Fitting(
            "washer flat",
            "Washer, flat",
            f"For No. {room.gauge} screws: its hole wider than the shank, "
            f"{say.size(room.shank, unit)}, and narrower than the head; "
            f"{_outside(room, unit)} wide outside: it bears on the wood round a hole of "
            f"{say.size(room.hole, unit)}, and lies flat.",
        )


def _outside(room: WasherRoom, unit: str) -> str:
    """How wide it may be; the widest is told only where washers of such screws come as wide."""
    least, most = at_least(room.hole + _BEARS, unit), at_most(room.most, unit)
    if room.most > _WIDE:
        return f"{least} or more"
    return least if least == most else f"{least} to {most}"


_TOLD: dict[str, tuple[str, Teller]] = {
    "HOOK-PLATE": ("Hook plates", _plates),
    "KEYHOLE-PLATE": ("Keyhole plates", _plates),
    "CROSS-BOLT": ("Bolts and nuts", _bolts),
    "BED-BOLT": ("Bolts and nuts", _bolts),
    "DOWEL-": ("Dowels", _dowel),
    "BRACKET": ("Angle brackets", _bracket),
    "SLIDE-": ("Slides", _slides),
    "PULL-": ("Pulls", _pull),
    "GLIDE-BUTTON": ("Glide buttons", lambda bed, each: iter(())),
    "GLIDE": ("Glides", _glide),
}
