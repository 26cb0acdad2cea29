"""Do slides and runners carry the full drawer, and their screws? Asked of every row."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.drawer_weights import drawer_weight
from model.checks.strength.screw_lines import enough_screws, steel_to_wood
from model.dimensions.drawer_load import GRAVITY
from model.dimensions.slide_places import PLATE
from model.materials import Material, Slide
from model.materials.row_allowable import allowed_of
from model.mechanics.duration import LoadTime
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.together import screws_in_line
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Count, Kg, Mm, Newton

SPARE = 1.25  # of a slide's load class, for the knocks it gets; common practice, no source
ON_SKIDS = 0.5  # of a drawer's weight, where skids bear its back; common practice, no source
OPEN: LoadTime = "ten minutes"  # all the time that a drawer stands open; common practice, no source


def contents_borne(slide: Slide, has_skids: bool, empty: Kg) -> Kg:
    """What a pair of slides leaves for contents, its spare and an `empty` drawer off its class."""
    return max(slide.load_kg / SPARE / (ON_SKIDS if has_skids else 1.0) - empty, 0.0)


@check(
    "strength",
    "Slides carry the full drawer",
    source=(
        "load class of the slide: its row in the table of slides; clothes of 8.5 lb/ft3: "
        "16 CFR 1261; a quarter to spare: common practice"
    ),
    remedies=("slide", "depth"),
)
def slides_carry(
    drawer_count: Count,
    slide: Slide,
    has_skids: bool,
    drawer_clothes: Kg,
    pieces: Pieces,
    masses: Floats,
    row_name: str,
) -> Finding | None:
    """The load class of a slide counts box, front and all that lies in it."""
    if not drawer_count:
        return None
    empty = drawer_weight(pieces, masses, row_name)
    share = ON_SKIDS if has_skids else 1.0
    limit = slide.load_kg / SPARE
    return replace(
        at_most((empty + drawer_clothes) * share, limit, tight=limit / 10, unit="kg"),
        reason=(
            f"Box and front weigh {empty:.1f} kg, what fills them {drawer_clothes:.1f} kg"
            f"{', of which skids take half' if has_skids else ''}; a pair is made for "
            f"{slide.load_kg:.0f} kg, a quarter of it to spare."
        ),
    )


@check(
    "strength",
    "Slides under the load of a kitchen drawer's test",
    source=(
        "ANSI/KCMA A161.1: 15 lb/ft2 on the bottom, opened 25 000 times; load class of the slide: "
        "its row in the table of slides"
    ),
    remedies=("slide", "depth"),
)
def slides_tested(
    drawer_count: Count,
    slide: Slide,
    has_skids: bool,
    drawer_contents: Kg,
    pieces: Pieces,
    masses: Floats,
    row_name: str,
) -> Finding | None:
    """A bed's drawer is larger than a kitchen's: filled as densely it outweighs its slides."""
    if not drawer_count:
        return None
    empty = drawer_weight(pieces, masses, row_name)
    share = ON_SKIDS if has_skids else 1.0
    return replace(
        advice(at_most((empty + drawer_contents) * share, slide.load_kg, unit="kg")),
        reason=(
            f"Filled as densely as kitchen drawers are tested, this one weighs "
            f"{empty + drawer_contents:.0f} kg; a pair of its slides is made for "
            f"{slide.load_kg:.0f} kg: fill it with no more than the care sheet tells."
        ),
    )


@check(
    "strength",
    "Screws of the slides hold the open drawer",
    source=(
        "steel to wood: NDS 2018, 12.3.1, from memory, ten-minute load; the drawer full of clothes "
        "and open: 16 CFR 1261"
    ),
    remedies=("bearer_stock", "bearer_wood", "box_stock"),
)
def slide_screws_hold(
    drawer_count: Count,
    is_side_mount: bool,
    has_skids: bool,
    travel: Mm,
    box_depth: Mm,
    drawer_clothes: Kg,
    pieces: Pieces,
    masses: Floats,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Iterator[Finding]:
    """An open drawer hangs from its slides as a lever: it bends them off the bearer in front."""
    if not drawer_count or not is_side_mount:
        return
    full = (drawer_weight(pieces, masses, row_name) + drawer_clothes) * GRAVITY
    load = full / 2 * (ON_SKIDS if has_skids else 1.0)
    middle = box_depth / 2
    members = (
        ("slide_holders", middle - travel, "outer members to the bearers"),
        ("slide_movers", middle, "inner members to the box sides"),
    )
    for rule, at, called in members:
        points = [p for p in screw_points if p.rules[0] == f"{row_name}.{rule}" and p.into >= 0]
        if points:
            yield replace(
                _screws(points, _gravity(points, pieces, materials), load, at, called), id=rule
            )


def _screws(points: list[ScrewPoint], gravity: float, load: Newton, at: Mm, called: str) -> Finding:
    """One member's screws under half the drawer, whose middle is `at` from the box front's place
    when shut; outside it is below zero.
    """
    worst = min(points, key=lambda p: p.bite)
    places = sorted(p.screw.at[0] for p in points if p.piece == worst.piece)
    moment = load * (at - sum(places) / len(places))
    held = steel_to_wood(worst.screw.diameter, worst.bite, PLATE, gravity, OPEN)
    force = max(screws_in_line(load, 0.0, moment, places))
    found = at_most(force, held, tight=held / 10, unit="N")
    return replace(
        found,
        title=f"Screws of the slides' {called}",
        reason=(
            f"Open and full, the drawer bears on its slides as a lever: {force:.0f} N on the worst "
            f"of {len(places)} screws in each member."
            + _proposed(found, load, moment, places, held)
        ),
        pieces=(worst.piece, worst.into),
    )


def _gravity(points: list[ScrewPoint], pieces: Pieces, materials: Mapping[str, Material]) -> float:
    """Specific gravity of the wood that the first screw bites into; all bite into alike pieces."""
    return allowed_of(
        materials[pieces.parts[pieces.part[points[0].into]].material]
    ).specific_gravity


def _proposed(found: Finding, load: Newton, moment: float, places: list[Mm], held: Design) -> str:
    """What would do, where the screws do not."""
    if found.margin >= 0:
        return ""
    count = enough_screws(load, moment, places, held)
    return f" {count} would do, evenly spread." if count else " Longer or thicker ones are needed."
