"""The ways in which the bed is loaded, one after the other."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from model.dimensions.loads import Handling
from model.materials import published_load
from model.mechanics.line_loads import EVERY
from model.parts.pieces import Bools, Floats, Pieces
from model.structure.joints import FRICTION, STANDS
from model.structure.lattice import Lattice
from model.structure.loading import GRAVITY, Deck, Loading, bodies
from model.structure.record import Case
from model.units import Mm, Newton

_SPAN: Mm = 250.0  # a shorter stretch between supports is not knelt on as a span
_FROM_END: Mm = 150.0  # the outermost place where one sits on the edge
_APART: Mm = 250.0  # two people on the edge, each from the middle; common practice, no source
KNELT_ON = 5  # slats from foot to head that are knelt on: alike slats differ by what carries them
SITTERS = 5  # places along each side at which one sits down


@dataclass(frozen=True, kw_only=True)
class Situation:
    """One load case with what the frame's solver and the limits need to know of it.

    `lifted` names joints that do not act, `raised` joints to the floor and how far a foot's is
    raised, mm; `deck_piece` is the piece of the frame that it presses
    on, -1 where it is no single one.
    """

    case: Case
    lifted: tuple[int, ...] = ()
    raised: tuple[tuple[int, Mm], ...] = ()
    deck_piece: int = -1


@dataclass
class Situations:
    """All load cases, as they are added."""

    frame: Lattice
    loading: Loading
    listed: list[Situation] = field(default_factory=list)

    def add(self, situation: Situation) -> int:
        self.listed.append(situation)
        return len(self.listed) - 1

    @property
    def raised(self) -> Floats:
        """(j, 3, c): how far the floor under a foot is raised in a case, mm."""
        found = np.zeros((len(self.frame.joints.one), 3, len(self.listed)))
        for case, situation in enumerate(self.listed):
            for joint, high in situation.raised:
                found[joint, 2, case] = high
        return found

    @property
    def released(self) -> Bools:
        """(j, c): joints that do not act in a case."""
        found = np.zeros((len(self.frame.joints.one), len(self.listed)), bool)
        for case, situation in enumerate(self.listed):
            found[list(situation.lifted), case] = True
        return found


def situations(frame: Lattice, loading: Loading, pieces: Pieces, handling: Handling) -> Situations:
    """Every load case; `loading` already holds what the bed itself weighs, drawers full."""
    found = Situations(frame, loading)
    deck = Deck(frame, *pieces.bounds)
    _resting(found, deck, handling)
    _lying(found, deck, handling)
    _kneeling(found, deck)
    _sitting(found, handling)
    _leaning(found, pieces, handling)
    _pushed(found, handling)
    _lifted_and_dragged(found, pieces, handling)
    falls = published_load("impact")
    found.add(Situation(case=Case(key="drop", title=falls.name, reason="", time=falls.time)))
    return found


def _resting(found: Situations, deck: Deck, handling: Handling) -> None:
    found.add(
        Situation(
            case=Case(
                key="rest", title="Nobody in bed, drawers full",
                reason="Mattress, bedding and full drawers weigh on the bed as long as it stands.",
                choices=("mattress_weight", "drawer_fill", "drawer_floor_load"),
                time="permanent",
            )
        )
    )  # fmt: skip
    spread = deck.spread(np.array([handling.well]), np.array([handling.mattress * GRAVITY]))
    found.loading.on(EVERY, *spread[1:])


def _lying(found: Situations, deck: Deck, handling: Handling) -> None:
    who, areas, force = bodies(handling.lying, handling.well)
    spread = deck.spread(areas, force)
    both = "Both sleepers lying" if len(handling.lying) > 1 else "Sleeper lying"
    alone = [
        (f"Only the sleeper on the {side} lying", i) for i, side in enumerate(("left", "right"))
    ]
    for title, only in [(both, None), *(alone if len(handling.lying) > 1 else [])]:
        case = found.add(
            Situation(
                case=Case(
                    key="lying", title=title,
                    reason="Nearly half of a sleeper's weight lies under the hips; the mattress "
                    "spreads it over the slats below.",
                    choices=("first_sleeper", "second_sleeper", "sleepers"),
                    time="ten years",
                )
            )
        )  # fmt: skip
        lies = np.isin(who[spread.load], np.arange(len(handling.lying)) if only is None else only)
        found.loading.on(case, *spread.only(lies)[1:])


def _kneeling(found: Situations, deck: Deck) -> None:
    """On the outermost slats and some between, in the middle of every span."""
    load, frame = published_load("base"), found.frame
    rows = []
    some = np.unique(np.linspace(0, len(deck.piece) - 1, KNELT_ON).round().astype(np.intp))
    for piece in deck.piece[some].tolist():
        nodes = slice(int(frame.first_node[piece]), int(frame.first_node[piece + 1]))
        at = frame.node_at[nodes]
        spans = np.flatnonzero(np.diff(at) > _SPAN)
        rows += [(piece, float(at[k] + at[k + 1]) / 2) for k in spans.tolist()]
    if not rows:
        return
    piece, along = np.array([row[0] for row in rows]), np.array([row[1] for row in rows])
    point = frame.bones.start[piece] + frame.bones.axes[piece, 0] * along[:, None]
    half = load.across_mm / 2
    areas = np.stack(
        [point[:, 0] - half, point[:, 0] + half, point[:, 1] - half, point[:, 1] + half], 1
    )
    spread = deck.spread(areas, np.full(len(rows), load.force_n), touching=True)
    order = {each: i + 1 for i, each in enumerate(deck.piece.tolist())}
    first = len(found.listed)
    for on, x in zip(piece.tolist(), point[:, 0].tolist(), strict=True):
        side = "left" if x < 0 else "right"
        where = "in the middle" if abs(x) < half else f"{abs(x):.0f} mm {side} of the middle"
        found.add(
            Situation(
                case=Case(
                    key="kneel",
                    title=f"Kneeling on {frame.bones.role[on]} {order[on]} from the foot, {where}",
                    reason=f"{load.name}: {load.force_n:g} N on a round pad of "
                    f"{load.across_mm:g} mm. Tried on the outermost and some between.",
                    source=load.source,
                    time=load.time,
                ),
                deck_piece=on,
            )
        )  # fmt: skip
    found.loading.on(first + spread.load, *spread[1:])


def _sitting(found: Situations, handling: Handling) -> None:
    load, bones = published_load("edge"), found.frame.bones
    heaviest = max(max(handling.lying) * GRAVITY, load.force_n)
    for rail in bones.of_role("side rail").tolist():
        side, long = ("left" if bones.start[rail, 0] < 0 else "right"), bones.size[rail, 0]
        half, reason = load.across_mm / 2, f"{load.name}: {load.force_n:g} N each."
        case = Case(
            key="edge",
            title=f"Two sitting on the {side} edge",
            reason=reason,
            source=load.source,
            time=load.time,
        )
        at = found.add(Situation(case=case))
        middles = np.array([long / 2 - _APART, long / 2 + _APART])
        found.loading.on(at, rail, middles - half, middles + half, (0.0, 0.0, -load.force_n))
        for middle in np.linspace(_FROM_END, long - _FROM_END, SITTERS).tolist():
            case = Case(
                key="sit",
                title=f"One sitting on the {side} edge, {middle:.0f} mm from its foot end",
                reason="Whoever sits down anywhere on the edge loads the rail and what holds it: "
                f"{heaviest:.0f} N, the heaviest sleeper, or what beds are tested with.",
                choices=("first_sleeper", "second_sleeper"),
                time=load.time,
            )
            at = found.add(Situation(case=case))
            found.loading.on(at, rail, middle - half, middle + half, (0.0, 0.0, -heaviest))


def _posts(found: Situations, pieces: Pieces, end: str) -> list[int]:
    """The posts of an end, as pieces of the frame."""
    bones = found.frame.bones
    return [
        i
        for i in bones.of_role("post").tolist()
        if pieces.rules[pieces.rule[bones.piece[i]]].startswith(end)
    ]


def _leaning(found: Situations, pieces: Pieces, handling: Handling) -> None:
    bones = found.frame.bones
    posts = _posts(found, pieces, "head.")
    tops = [float(bones.start[post, 2] + bones.size[post, 0]) for post in posts]
    if not posts or not handling.lean or min(tops) <= handling.mattress_top:
        return
    count = len(handling.lying)
    who = "Two sleepers leaning" if count > 1 else "Sleeper leaning"
    case = Case(
        key="lean", title=f"{who} back on the headboard",
        reason=f"Each leans back with {handling.lean:g} N, shoulder high: an assumption.",
        choices=("lean_force", "lean_height"), time="seven days",
    )  # fmt: skip
    at = found.add(Situation(case=case))
    for post in posts:
        height = min(handling.lean_z - float(bones.start[post, 2]), float(bones.size[post, 0]))
        back = (0.0, count * handling.lean / len(posts), 0.0)
        found.loading.on(at, post, height, height, back)


def _pushed(found: Situations, handling: Handling) -> None:
    bones = found.frame.bones
    rails = bones.of_role("side rail").tolist()
    if not rails or not handling.push:
        return
    rail = rails[0]
    for key, title, way in (
        ("push along", "Pushed lengthwise at a side rail", (0.0, handling.push, 0.0)),
        ("push across", "Pushed sideways at the foot of a side rail", (handling.push, 0.0, 0.0)),
    ):
        case = Case(
            key=key, title=title,
            reason=f"{handling.push:g} N at a rail shows how much the bed wobbles: an assumption.",
            choices=("push_force",), time="seven days",
        )  # fmt: skip
        at = found.add(Situation(case=case))
        found.loading.on(at, rail, 0.0, 0.0, way)


def _lifted_and_dragged(found: Situations, pieces: Pieces, handling: Handling) -> None:
    for end in ("foot", "head") if handling.lift else ():
        for post, side in zip(_posts(found, pieces, f"{end}."), ("left", "right"), strict=True):
            _lifted(found, post, f"{end} {side}", handling)
    weight = found.loading.always()
    for post in _posts(found, pieces, "foot.")[:1] if handling.drag else []:
        _dragged(found, post, handling, weight)


def _lifted(found: Situations, post: int, where: str, handling: Handling) -> None:
    joints = found.frame.joints
    foot = np.flatnonzero((joints.one == post) & (joints.kind == STANDS))
    case = Case(
        key="lift", title=f"Lifted at the {where} corner",
        reason=f"One foot stands {handling.lift:g} mm higher, on a block or in the hand: an "
        "assumption.",
        choices=("lift_height",), time="ten minutes",
    )  # fmt: skip
    raised = tuple((joint, handling.lift) for joint in foot.tolist())
    found.add(Situation(case=case, raised=raised))


def _dragged(found: Situations, post: int, handling: Handling, weight: Newton) -> None:
    joints = found.frame.joints
    foot = np.flatnonzero((joints.one == post) & (joints.kind == FRICTION))
    force = handling.drag * weight
    for title, way in (("lengthwise", (0.0, -force, 0.0)), ("sideways", (-force, 0.0, 0.0))):
        case = Case(
            key="drag", title=f"Dragged {title} at the left foot",
            reason=f"Dragged by one foot, {handling.drag:.0%} of the weight pulls at it and the "
            "others stick: an assumption.",
            choices=("drag_share", "mattress_weight"), time="ten minutes",
        )  # fmt: skip
        at = found.add(Situation(case=case, lifted=tuple(foot.tolist())))
        found.loading.on(at, post, 0.0, 0.0, way)
