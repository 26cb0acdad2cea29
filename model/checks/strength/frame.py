"""Does every piece of the frame bear what is asked of it, and sag little enough?"""

from dataclasses import replace

from model.checks.record import Finding, Verdict, at_most, check
from model.parts.pieces import Pieces
from model.structure.record import Carried, Effect, EffectKind, Strength, Unjudged
from model.structure.spans import SAG_LIMITS
from model.units import Share

STRESS = (
    "stress: Wood Handbook 2021 (FPL-GTR-282), equations 9-13 and 9-14, in one elastic frame; "
    "allowable stress derived step by step from the wood's figures"
)
TIGHT = 0.1  # of the limit: nearer to it is tight; common practice, no source
BREAKING: tuple[EffectKind, ...] = ("bending", "shear", "bearing")
_SAID = {"bending": "Bending", "shear": "Shear", "bearing": "Pressure", "sag": "Sag"}


@check("strength", "Strength can be judged", source="equilibrium; the tables of materials")
def frame_judged(strength: Strength) -> Finding | None:
    """The frame must stand, and every material must have its figures, before it can be judged."""
    if isinstance(strength, Carried):
        return None
    pieces = (strength.piece,) if strength.piece >= 0 else ()
    return Finding(
        value=0, limit=1, unit="", margin=-1, verdict=Verdict.FAILS,
        reason=strength.sentence, pieces=pieces,
    )  # fmt: skip


SLAT_REMEDIES = ("slat_stock", "slat_width", "beam", "slat_wood")


@check("strength", "Slats bear who lies, kneels or drops on them", source=STRESS,
       remedies=SLAT_REMEDIES)  # fmt: skip
def slats_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """A slat breaks at its lower edge, under a knee half way between what carries it."""
    return _breaking(strength, pieces, "slat")


@check("strength", "Slats sag little under the sleepers",
       remedies=("slat_stock", "slat_gap_most", "slat_count", "slat_width", "beam",
                 "slat_wood"))  # fmt: skip
def slats_sag(strength: Strength, pieces: Pieces) -> Finding | None:
    """Under the hips a mattress dips with its slats."""
    return _sagging(strength, pieces, "slat")


@check("strength", "Deck panels and battens bear the sleepers", source=STRESS,
       remedies=("deck_stock", "deck_panels", "frame_stock", "slat_width"))  # fmt: skip
def panels_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Panels hand the sleepers' weight to cleats, beam and battens."""
    return _breaking(strength, pieces, "deck panel", "deck batten")


@check("strength", "Deck panels and battens sag little",
       remedies=("deck_stock", "deck_panels", "frame_stock", "beam"))  # fmt: skip
def panels_sag(strength: Strength, pieces: Pieces) -> Finding | None:
    """Under the hips a mattress dips with its deck."""
    return _sagging(strength, pieces, "deck panel", "deck batten")


@check("strength", "Centre beam bears its share", source=STRESS,
       remedies=("beam_height", "beam_stock", "beam_legs", "beam", "slat_wood"))  # fmt: skip
def beam_bears(strength: Strength, pieces: Pieces) -> Finding | None:
    """The beam carries more than half of all that lies on the slats."""
    return _breaking(strength, pieces, "centre beam")


@check("strength", "Centre beam sags little",
       remedies=("beam_height", "beam_stock", "beam_legs", "beam", "slat_wood"))  # fmt: skip
def beam_sags(strength: Strength, pieces: Pieces) -> Finding | None:
    """A beam that sags makes the valley that it is there to prevent."""
    return _sagging(strength, pieces, "centre beam")


@check("strength", "Legs and packers bear what stands on them", source=STRESS,
       remedies=("beam_legs", "beam_stock", "beam_leg_width", "bearer_stock"))  # fmt: skip
def props_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Legs and packers take the beam's and the bearers' load to the floor."""
    return _breaking(strength, pieces, "leg", "packer")


@check("strength", "Bearers and dividers bear drawers and beam", source=STRESS,
       remedies=("bearer_height", "bearer_stock", "bearer_leg_span", "bearer_wood"))  # fmt: skip
def bearers_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Full drawers hang on the bearers, and a centre beam may stand on them."""
    return _breaking(strength, pieces, "bearer", "divider")


@check("strength", "Bearers and dividers hardly sag",
       remedies=("bearer_height", "bearer_leg_span", "bearer_stock", "divider_stock"))  # fmt: skip
def bearers_sag(strength: Strength, pieces: Pieces) -> Finding | None:
    """A bearer that sags, or a divider that bearers end on, closes reveals and binds slides."""
    return _sagging(strength, pieces, "bearer", "divider")


@check("strength", "Side rails bear the slats and who sits on the edge", source=STRESS,
       remedies=("frame_stock", "rail_width", "top_rail_width", "frame_wood"))  # fmt: skip
def rails_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Everybody sits down on the edge before lying down: the rail takes all of it."""
    return _breaking(strength, pieces, "side rail", "bottom rail")


@check("strength", "Side rails stay straight under the sleepers",
       remedies=("frame_stock", "rail_width", "top_rail_width", "frame_wood"))  # fmt: skip
def rails_sag(strength: Strength, pieces: Pieces) -> Finding | None:
    """A rail that sags opens its knock-down joints and closes the reveals of the fronts."""
    return _sagging(strength, pieces, "side rail", "bottom rail")


@check("strength", "Stiles of the face frames bear", source=STRESS,
       remedies=("mid_stile", "end_stile_least", "frame_stock", "frame_wood"))  # fmt: skip
def stiles_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Stiles tie the two rails of a face frame, and carry the bearers."""
    return _breaking(strength, pieces, "stile")


@check("strength", "Posts bear leaning, lifting and dragging", source=STRESS,
       remedies=("post_width", "post_depth", "post_layers", "frame_stock",
                 "frame_wood"))  # fmt: skip
def posts_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """Sleepers leaning back bend the posts over the side rails; a dragged bed bends its feet."""
    return _breaking(strength, pieces, "post")


@check("strength", "Rails of head and foot bear", source=STRESS,
       remedies=("end_rail_width", "frame_stock", "frame_wood"))  # fmt: skip
def ends_bear(strength: Strength, pieces: Pieces) -> Finding | None:
    """The rails of headboard and footboard keep the posts upright."""
    return _breaking(strength, pieces, "end rail", "panel stile")


# ---------------------------------------------------------------- from effects to findings


def _breaking(strength: Strength, pieces: Pieces, *roles: str) -> Finding | None:
    return _worst(strength, pieces, roles, BREAKING)


def _sagging(strength: Strength, pieces: Pieces, *roles: str) -> Finding | None:
    return _worst(strength, pieces, roles, ("sag",))


def _worst(
    strength: Strength, pieces: Pieces, roles: tuple[str, ...], kinds: tuple[EffectKind, ...]
) -> Finding | None:
    if isinstance(strength, Unjudged):
        return None
    keys = [(role, kind) for role in roles for kind in kinds]
    found = [(e, key[0]) for key in keys if (e := strength.hardest.get(key)) is not None]
    if not found:
        return None
    effect, role = max(found, key=lambda each: each[0].use)
    tight = 1 - SAG_LIMITS[role].tight if effect.kind == "sag" else TIGHT
    return _finding(strength, pieces, effect, tight)


def _finding(strength: Carried, pieces: Pieces, effect: Effect, tight: Share) -> Finding:
    case = strength.cases[effect.case]
    return replace(
        at_most(effect.value, effect.limit, tight=effect.limit * tight, unit=effect.unit),
        reason=(
            f"{_SAID[effect.kind]} of {pieces.labels[effect.piece]}, {effect.at:.0f} mm from its "
            f"end: {case.title[:1].lower()}{case.title[1:]}. {case.reason}"
        ),
        pieces=(effect.piece,),
        source=effect.source if effect.kind == "sag" else "",
    )
