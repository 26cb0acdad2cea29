"""The words of a glue-up: members of a frame, and panels that float between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property
from itertools import groupby

from model.building.facing import Facing
from model.building.joints import FLOATING, FRAMED
from model.building.record import Coming, Step
from model.building.rows import Rows
from model.building.said import Said, Shop, Texts
from model.building.words import HAIR, capital, square_check
from model.checks.movement.glue import FREELY, Joint, glued_joints, glued_part
from model.checks.movement.rates import Season, rates
from model.part import Part
from model.shop.order import say
from model.units import Mm

# What is done with the glue at each joint; common practice, no source.
_GLUE = {
    "mortise and tenon": "glue on the walls of the mortises and a thin coat on the tenons; push "
    "together until the shoulders close",
    "stub tenon": "glue in the mortises and on the stub tenons; push together until the shoulders "
    "close",
    "stub tenon in groove": "glue on the stub tenons alone; the grooves between them stay dry",
    "dowel": "glue in the holes and a thin coat on the ends; push together until the faces close",
    "pocket screw": "a thin coat of glue on the ends; clamp the faces flush, then drive the screws",
    "pocket screws": "a thin coat of glue on the ends; clamp the edges flush, then drive the "
    "screws",
    "rabbet": "glue in the rabbets, edges flush",
    "dado": "glue in the dadoes, edges flush",
    "dovetails": "a thin coat of glue on the cheeks; tap home over a block of waste",
}
_IN_PART = ("mortise and tenon", "stub tenon", "dowel")  # can be glued over a part of it
_DEEPEST: Mm = 25.0  # no groove is deeper: what is farther off does not hold the panel
_READY = (
    "Have clamps, cauls, a mallet and a damp cloth at hand before you open the bottle: glue grabs "
    "within minutes."
)


class Gluing:
    """Tells glue-ups."""

    def __init__(self, shop: Shop) -> None:
        self._shop, self._rows, self._facing = shop, Rows(shop), Facing(shop)

    def frame(self, step: Step, what: str) -> Said:
        """A glue-up of members."""
        shop = self._shop
        new = shop.wood(each.piece for each in step.comes)
        return Said(
            title=self._title(what, new),
            sentences=(
                *self._in_part(step),
                *self._facing.told(self._members(step)),
                *self._dry_fit(step),
                *self._walk(step),
                *shop.driving(step),
                *self._clamped(step),
                *shop.copies(step),
            ),
            settings=tuple(self._rows.places(step)),
            checks=tuple(self._checks(step)),
            keep_dry=tuple(self._dry(new, (*new, *step.there))),
        )

    def floating(self, step: Step, what: str) -> Said:
        """A panel that slides in when the frame is glued."""
        shop, words = self._shop, self._shop.words
        new = shop.wood(step.shown)
        hosts = shop.hosts(new, step.there, FLOATING)
        return Said(
            title=f"{capital(what)}: slide in {words.names(new)}",
            sentences=(
                f"When the glue is hard, slide {words.called(new)} into the grooves of "
                f"{words.marks(hosts)}.",
                *shop.driving(step),
                *shop.copies(step),
            ),
            keep_dry=tuple(self._dry(new, step.there)),
        )

    def _members(self, step: Step) -> list[int]:
        """What is glued, of all copies."""
        wood = self._shop.wood(piece for copy in step.copies for piece in copy)
        return [piece for piece in wood if not self._floats(piece)]

    def _title(self, what: str, new: Sequence[int]) -> str:
        """`Headboard: glue posts; panels stay dry`."""
        names = self._shop.words.names
        dry = [piece for piece in new if self._floats(piece)]
        members = names([piece for piece in new if piece not in dry])
        stays = f"; {names(dry)} stay{'s' * (len(dry) == 1)} dry" if dry else ""
        return f"{capital(what)}: glue {members}{stays}"

    # ------------------------------------------------------------ in what order

    def _dry_fit(self, step: Step) -> Texts:
        clamps = say.listed(list(self._shop.words.clamps(step.clamps)))
        lay = f": {clamps}" if clamps else ""
        return (
            f"Put it together dry first, with all clamps on{lay}. Close joints need no force; "
            "number them with a pencil before you take it apart.",
            _READY,
        )

    def _walk(self, step: Step) -> Iterator[str]:
        """Piece after piece as they come; those that come the same way in one sentence."""
        placed = list(step.there)
        rows = [each for each in step.comes if self._shop.joined.is_wood(each.piece)]
        runs = [[each.piece for each in run] for _, run in groupby(rows, key=self._kind)]
        for k, run in enumerate(runs):
            is_last = k == len(runs) - 1 and len(runs) > 1
            yield from self._come(run, placed, step, is_last=is_last)
            placed += run

    def _kind(self, each: Coming) -> tuple[object, ...]:
        """What pieces that come together share; posts come from both ends at once."""
        floats = self._floats(each.piece)
        name = self._shop.words.name(each.piece)
        return (name, floats) if floats or name == "post" else ("", each.along, each.turn)

    def _come(
        self, run: Sequence[int], placed: list[int], step: Step, *, is_last: bool
    ) -> Iterator[str]:
        shop, words = self._shop, self._shop.words
        if self._floats(run[0]):
            hosts = shop.hosts(run, placed, FLOATING)
            into = f"into the grooves of {words.marks(hosts)}"
            yield (
                f"Slide {words.called(run)} {into}, dry."
                if hosts
                else (f"Lay {words.called(run)} ready.")
            )
            return
        joints = dict.fromkeys(
            link.joint for link in shop.between(run, placed) if link.joint in FRAMED
        )
        if not joints:
            yield f"Lay {words.called(run)} on the bench."
        for joint in joints:
            hosts = shop.hosts(run, placed, (joint,))
            own = [piece for piece in run if shop.hosts([piece], placed, (joint,))]
            yield from self._dowels(own, hosts, step)
            start = "Close with" if is_last else "Join"
            to = "" if is_last else f" to {words.marks(hosts)}"
            partly = self._exempt((*own, *hosts), step)
            yield f"{start} {words.called(own)}{to}: {_GLUE[joint]}{partly}."

    def _exempt(self, joined: Iterable[int], step: Step) -> str:
        """Refers to what is not glued all over, where it is among what is joined."""
        wide = [piece for own in self._partly(step).values() for piece in own]
        met = [piece for piece in joined if piece in wide]
        return f"; of {self._shop.words.marks(met)} only the part told above" if met else ""

    def _in_part(self, step: Step) -> Iterator[str]:
        """Which part of a wide joint is glued, so that the wood can move in the rest: told where
        the joint is closed.
        """
        for rest, own in self._partly(step).items():
            yield f"{self._shop.words.marks(own)}, wide across the grain: {rest}."

    def _partly(self, step: Step) -> dict[str, list[int]]:
        shop = self._shop
        new = shop.wood(each.piece for each in step.comes)
        told: dict[str, list[int]] = {}
        for link in shop.between(new, (*step.there, *new)):
            wide = self._wide.get((*self._key(link.one), *self._key(link.other), link.joint))
            if wide is not None:
                own = told.setdefault(self._part_glued(link.one, wide), [])
                own += [link.one] * (link.one not in own)
        return told

    def _key(self, piece: int) -> tuple[str, str]:
        part = self._shop.joined.part(piece)
        return part.assembly, part.name

    def _part_glued(self, piece: int, wide: Joint) -> str:
        words = self._shop.words
        lower, upper = self._shop.where.own_sides(piece)[2]
        glued, room = words.near(glued_part(wide)), words.size(_room(wide.by, words.unit))
        is_level = lower.endswith("edge")
        at = f"from the {upper}, which stays level" if is_level else "in the middle of the width"
        off = f"the {lower}" if is_level else "both edges"
        if wide.kind == "dowel":
            return f"glue only the dowels within {glued}, {at}; set the others dry, in longer holes"
        return (
            f"glue only {glued} of each tenon, {at}; first plane {room} off {off} of it, and leave "
            "the rest dry"
        )

    @cached_property
    def _wide(self) -> dict[tuple[str, ...], Joint]:
        """The joints that move more than glue gives, by the assemblies and names of both parts."""
        bed = self._shop.bed
        season = Season(
            bed["bench_moisture"], bed["wood_driest"], bed["wood_wettest"], bed["width_way"],
            bed["thickness_way"],
        )  # fmt: skip
        found = rates(bed.pieces, bed.materials, season)
        return {
            (
                joint.one.assembly, joint.one.name, joint.other.assembly, joint.other.name,
                joint.kind,
            ): joint
            for joint in glued_joints(bed.pieces, bed.proof.holding, found)
            if joint.by > FREELY and joint.kind in _IN_PART
        }  # fmt: skip

    def _dowels(self, own: Sequence[int], hosts: Sequence[int], step: Step) -> Iterator[str]:
        """The dowels that join some pieces to their hosts."""
        joined = self._shop.joined
        dowels = [
            piece
            for piece in step.shown
            if joined.is_dowel(piece)
            and joined.partners(piece) & set(hosts)
            and joined.partners(piece) & set(own)
        ]
        if dowels:
            size, marks = _dowel_size(joined.part(dowels[0])), self._shop.words.marks(hosts)
            yield (
                f"Glue {len(dowels)} dowels {size} half their length into {marks}; wipe off what "
                "runs out."
            )

    def _clamped(self, step: Step) -> Texts:
        several = "Clamp, compare the diagonals at once" if step.squares else "Clamp"
        return (
            f"{several}, wipe off the glue that is pressed out, and leave it clamped as long as "
            "the glue's maker says.",
        )

    # ------------------------------------------------------------ checks

    def _checks(self, step: Step) -> Iterator[str]:
        words = self._shop.words
        for square in step.squares:
            yield square_check(square, words)
        yield from self._between_planks(step)
        yield "Sight across it: it is not twisted. Sight again when the clamps are tight."

    def _between_planks(self, step: Step) -> Iterator[str]:
        """Planks are laid with gaps, in which they can swell."""
        shop = self._shop
        gap = float(shop.bed["plank_gap"])
        if gap > HAIR and any("plank" in shop.words.name(piece) for piece in step.shown):
            yield f"Planks {shop.words.size(gap)} apart, all gaps alike: there they swell."

    def _dry(self, new: Sequence[int], known: Sequence[int]) -> Iterator[str]:
        words = self._shop.words
        floats = [piece for piece in new if self._floats(piece)]
        if not floats:
            return
        made_of = self._shop.bed.materials.get(self._shop.joined.part(floats[0]).material)
        is_solid = made_of is not None and made_of.kind == "solid"
        why = (
            "solid wood that cannot move splits"
            if is_solid
            else "the grooves alone hold it, and a bead of glue there keeps joints from closing"
        )
        marks, room = words.marks(floats), self._room(floats, known)
        yield f"No glue on {marks} or in the grooves that hold it: {why}.{room}"

    def _room(self, floats: Sequence[int], known: Sequence[int]) -> str:
        """How far a panel is from the ground of its grooves when it is centred, each way."""
        shop = self._shop
        around = [piece for piece in known if piece not in set(floats)]
        found: dict[str, list[str]] = {}
        for piece in floats:
            for axis in range(3):
                kind = shop.where.own_sides(piece)[axis][0].split()[-1]
                room = sum(shop.frames.room(piece, around, axis, sign) for sign in (-1, 1)) / 2
                if kind in ("end", "edge") and HAIR < room < _DEEPEST:
                    kinds = found.setdefault(shop.words.size(room), [])
                    kinds += [f"{kind}s"] * (f"{kind}s" not in kinds)
        told = [f"{room} at its {say.listed(kinds)}" for room, kinds in found.items()]
        return f" Centre it, with room to move: {say.listed(told)}." if told else ""

    def _floats(self, piece: int) -> bool:
        links = [link for link in self._shop.joined.of(piece) if link.one == piece]
        return any(link.joint in FLOATING for link in links) and not any(
            link.joint in FRAMED for link in links
        )


def _room(by: Mm, unit: str) -> Mm:
    """What is planed off for wood that moves by so much: half a mm or a sixteenth at the least."""
    step = 1.5875 if unit == "inch" else 0.5
    return max(1, round(by / step)) * step


def _dowel_size(part: Part) -> str:
    """Dowels are sold by whole mm everywhere."""
    length, diameter = float(part.length), float(part.width)
    return f"{diameter:g} x {length:g} mm"
