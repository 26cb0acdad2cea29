"""The finishing schedule: what is sanded, sealed, primed and coated, in order, and what stays bare.

Amounts come from the same reckoning as the buying list's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.bed import Bed
from model.brief.words import in_unit
from model.building.coating import SEALER, Pass, amount_of, coat_passes, cured, sealed
from model.building.joints import FLOATING
from model.building.words import capital, counted, plural
from model.checks.safety.cautions import cautions
from model.cost.coats import Coat, Grit, abrasive_needs, coats, grits
from model.cost.faces import fixed
from model.cost.surfaces import is_finished, sanded, surfaces
from model.parts.marks import Mark
from model.shop.order import say


@dataclass(frozen=True, kw_only=True)
class Schedule:
    """All passes in order; `on_solid` tells what goes on solid wood, which takes no sealer. `marks`
    get the finish, `plain` marks are left as they are sanded or sawn; `bare` tells which places of
    finished parts stay bare.
    """

    what: str
    on_solid: str
    marks: tuple[str, ...]
    plain: tuple[str, ...]
    passes: tuple[Pass, ...]
    bare: tuple[str, ...]
    cautions: tuple[str, ...]


def finishing_schedule(bed: Bed) -> Schedule:
    """The schedule of a bed, by its finish and by what the maker chose to finish."""
    met = fixed(bed)
    areas = surfaces(bed, met)
    on = coats(bed, areas)
    by_grit = grits(bed, areas, on, sanded(bed, met))
    done = [mark for mark in bed.marks if is_finished(mark.part, bed["finished"])]
    left = [mark for mark in bed.marks if mark not in done]
    passes = (
        *_sanding(bed, by_grit),
        *sealed(bed, done, on, by_grit),
        *_first_on_panels(done, on),
        *_touched_up(bed, on),
        *_masked(on),
        *coat_passes(bed, done, on, by_grit),
        *cured(on),
    )
    return Schedule(
        what=_what(bed, on),
        on_solid=_what(bed, tuple(coat for coat in on if coat.coating.key != SEALER)),
        marks=tuple(mark.mark for mark in done) if on else (),
        plain=tuple(mark.mark for mark in (left if on else bed.marks)),
        passes=passes,
        bare=tuple(_bare(bed)) if on else (),
        cautions=tuple(
            f"{each.title}. {in_unit(each.text, bed['shown_unit'])}"
            for each in cautions(bed.pieces, bed.materials)
            if each.key == "finish"
        ),
    )


def _what(bed: Bed, on: tuple[Coat, ...]) -> str:
    if not on:
        return "No finish: the wood is sanded and left as it is."
    names = say.listed(
        [
            f"{counted(each.coats)} {plural('coat', each.coats)} of {_first_words(each)}"
            for each in on
        ]
    )
    return f"{capital(str(bed['finish']))}, on {bed['finished']}: {names}."


def _first_words(coat: Coat) -> str:
    """`paint` for `Paint, hard enamel for trim and furniture`."""
    return coat.coating.name.partition(",")[0].lower()


# ---------------------------------------------------------------- sanding


def _sanding(bed: Bed, by_grit: tuple[Grit, ...]) -> Iterator[Pass]:
    needs = {need.key: need for need in abrasive_needs(by_grit, bed["shown_unit"])}
    for grit in by_grit:
        if grit.is_between:
            continue
        row = grit.abrasive
        on = _woods(row.on_solid == "yes", row.on_sheets == "yes")
        yield Pass(
            key=f"sand/{row.key}",
            title=f"Sand with {row.grit} grit",
            text=f"{capital(on)}, while parts are still single, along the grain; no grit is left "
            "out. Stay off joint faces, shoulders and tenons: sanded, they are loose.",
            amount=amount_of(needs[f"abrasives/{row.key}"]),
            source=row.source,
        )


def _woods(solid: bool, sheets: bool) -> str:
    if solid and sheets:
        return "solid wood and sheets"
    return "solid wood" if solid else "sheets"


def _touched_up(bed: Bed, on: tuple[Coat, ...]) -> Iterator[Pass]:
    """What clamps and glue left is taken off before the first coat."""
    last = bed["sanded_to"]
    then = "Vacuum the dust off, then wipe with a cloth that is barely damp." if on else ""
    yield Pass(
        key="clean",
        title="Clean up the assemblies",
        text="Scrape off every trace of glue: no finish takes on it. Fill nail and screw holes, "
        f"break sharp edges, and sand the places again by hand with {last} grit. {then}".strip(),
    )


# ---------------------------------------------------------------- before the first coat


def _first_on_panels(done: list[Mark], on: tuple[Coat, ...]) -> Iterator[Pass]:
    """A panel that shrinks shows a strip of what its groove covered."""
    own = [
        mark.mark
        for mark in done
        if any(hold.joint in FLOATING for hold in mark.part.held)
        and mark.made_of is not None
        and mark.made_of.kind == "solid"
    ]
    if own and on:
        yield Pass(
            key="panels",
            title="First coat on panels before they are let in",
            text=f"{say.listed(own)}: give them their first coats on both faces and all edges "
            "before the frame is glued round them. When they shrink, no bare strip shows.",
        )


def _masked(on: tuple[Coat, ...]) -> Iterator[Pass]:
    if on:
        yield Pass(
            key="mask",
            title="Keep bare what stays bare",
            text="Mask with tape what the list of bare places names. Take off all fittings that "
            "were tried in place; put them on again when the last coat is hard.",
        )


def _bare(bed: Bed) -> Iterator[str]:
    """Places where a finish would stick, bind, or keep glue from holding."""
    known = bed.dimensions.values
    yield "Glue faces, tenons, mortises and dowel holes: glue holds on bare wood alone."
    yield (
        "Where sides and ends meet: the ends of the side rails and the faces of the posts that "
        "they stand against. Painted, they stick and tear when the bed comes apart."
    )
    if any("PLATE" in each.code for each in bed.hardware):
        yield "Recesses and pockets of the bed plates: a coat makes them too shallow."
    if any("BOLT" in each.code for each in bed.hardware):
        yield "Bolt holes, nut holes and the seats of washers."
    if known.get("has_drawers") and known.get("is_side_mount"):
        yield "Where slides lie, on box sides and bearers: their room is reckoned on bare wood."
    elif known.get("has_drawers"):
        yield "Runners, shoes, guides and kickers, and what slides on them: wax them instead."
    if known.get("deck") == "slats":
        yield "Where slats rest on the cleats: wax or felt there keeps them quiet."
