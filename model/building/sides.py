"""The words for sides and footboard where the bed stands: hung in or bolted, squared, levelled."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from model.building.alike import Alike
from model.building.brackets import bracket_places
from model.building.record import Step
from model.building.said import Said, Shop, Texts
from model.building.sequence import Planned
from model.building.units import Units
from model.building.words import HAIR, square_check
from model.checks.safety.weights import lifters, many

_BOLT, _HOOK = "bolt hole", "hooked in"
_TOP_RAILS = ("top rail", "side rail")
_APART = "No glue on any joint between sides and ends: here the bed comes apart."


class Sides:
    """Tells how sides and ends are joined."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop

    def side(self, step: Step, planned: Planned) -> Said:
        """A side that comes to the headboard, or to both ends."""
        shop = self._shop
        name = shop.joined.part(planned.brought[0].unit.main).assembly
        is_first = planned.role == "first side"
        return Said(
            title=f"{self._verb()} the {name} to {'the headboard' if is_first else 'both ends'}",
            sentences=(
                *shop.lifting(step.brought or step.shown, f"The {name}"),
                *self._ends(step),
                *self._connected(step, planned.role),
                *self._brackets(step),
                *shop.driving(step),
                *(() if is_first else self._drawn_up()),
                *(() if is_first else self._to_its_place(step)),
            ),
            checks=() if is_first else self._bed_square(),
            keep_dry=(_APART,),
        )

    def footboard(self, step: Step, planned: Planned) -> Said:
        """The footboard that comes to the side that stands."""
        name = self._shop.joined.part(planned.brought[0].unit.main).assembly
        return Said(
            title=f"{self._verb()} the {name} to the side",
            sentences=(
                *self._shop.lifting(step.brought or step.shown, f"The {name}"),
                f"Bring the {name} to the end of the side that stands, and let a helper hold it.",
                *self._connected(step, planned.role),
                *self._shop.driving(step),
            ),
            keep_dry=(_APART,),
        )

    def _ends(self, step: Step) -> Iterator[str]:
        """Which end of a side goes to the foot, and which edge is up, by the names that its rail
        had on the bench: of two sides made alike the second is the first, turned about.
        """
        shop = self._shop
        own = next((p for p in shop.wood(step.shown) if self._is_top_rail(p)), None)
        if own is None:
            return
        first = next(p for p in range(len(shop.joined.pieces)) if self._is_top_rail(p))
        is_turned = own != first and self._are_alike
        told = shop.where.own_sides(first if is_turned else own)
        foot, up = told[1][is_turned], told[2][1]
        yield f"The {foot} of {shop.words.marks([own])} goes to the foot of the bed, its {up} up."

    def _is_top_rail(self, piece: int) -> bool:
        shop = self._shop
        is_side = shop.joined.part(piece).assembly in ("left side", "right side")
        return is_side and shop.words.name(piece) in _TOP_RAILS

    @cached_property
    def _are_alike(self) -> bool:
        """Whether one side can be turned so that it lies on the other: then both are made in the
        same steps.
        """
        joined = self._shop.joined
        units = Units(joined)
        sides = [
            unit
            for unit in units.roots
            if joined.part(unit.main).assembly in ("left side", "right side")
            and joined.is_wood(unit.main)
        ]
        return len(Alike(joined, units).groups(sides)) == 1

    def _connected(self, step: Step, role: str) -> Iterator[str]:
        """How ends hang in each other or are bolted in this step."""
        new, known = set(step.shown), {*step.there, *step.shown}
        joints = {
            link.joint
            for link in self._shop.joined.links
            if {link.one, link.other} <= known and {link.one, link.other} & new
        }
        if _HOOK in joints:
            yield from self._hooked(role)
        if _BOLT in joints:
            yield from self._bolted(step, role)

    def _hooked(self, role: str) -> Iterator[str]:
        """A side is lifted, hung in and pressed down: at one end, then at the other, or at both."""
        lift = self._shop.words.size(self._shop.bed["connector_lift"])
        prop = self._prop()
        if role == "first side":
            yield (
                f"Lift the side {lift} higher than it will sit, set its plates against those of "
                "the post, and press it down until they are seated; a few blows with a soft mallet "
                f"drive them home. {prop}".strip()
            )
        elif role == "footboard":
            off = " off its block" if prop else ""
            yield (
                f"Raise the foot end of the side {lift}{off}, set the plates of the footboard's "
                "post against those of the side, and let the side down until they are seated; then "
                "use the mallet."
            )
        else:
            yield (
                f"Hold the side level, {lift} higher than it will sit, and set its plates against "
                "those of both posts at once. Let both ends down together, then drive each home "
                f"with a soft mallet.{self._past_slides()}"
            )

    def _past_slides(self) -> str:
        known = self._shop.bed.dimensions.values
        if not (known.get("has_drawers") and known.get("is_side_mount")):
            return ""
        return " Its bottom rail passes close under the slides of the bearers: do not tilt it."

    def _bolted(self, step: Step, role: str) -> Iterator[str]:
        if role == "first side":
            yield (
                "Lay the nuts in their holes, threads towards the bolts; put a washer on each bolt "
                "and turn it in by hand. Leave all of them a turn loose until the whole frame "
                f"stands. {self._prop()}".strip()
            )
        else:
            yield "Bolt it in the same way, every bolt a turn loose."

    def _prop(self) -> str:
        """What bears the free end of the first side; nothing where it reaches the floor."""
        shop = self._shop
        own = [
            piece
            for piece in range(len(shop.joined.pieces))
            if shop.joined.is_wood(piece) and shop.joined.part(piece).assembly == "left side"
        ]
        high = min(shop.where.low(piece, 2) for piece in own)
        if high <= HAIR:
            return ""
        return (
            f"A block {shop.words.size(high)} high bears the foot end of the side until the "
            "footboard is on."
        )

    def _to_its_place(self, step: Step) -> Texts:
        """The frame is lifted to where it will stay while it is light."""
        shop = self._shop
        pieces = [*step.there, *step.shown]
        kg = shop.kg(pieces)
        number = many(max(2, lifters(kg, shop.span(pieces))))
        return (
            f"Lift the frame to where it will stay while it is light: {shop.words.kg(kg)}, "
            f"{number} lift it. Never drag it.",
        )

    def _brackets(self, step: Step) -> Iterator[str]:
        """Bearers that stand already are fixed to a side when it comes."""
        if any(each.code.startswith("BRACKET") for each in step.hardware) or step.screws:
            yield "Set the bearers' ends to their places on this side too, and fix them."
        yield from bracket_places(self._shop, step)

    def _has_bolts(self) -> bool:
        return any(link.joint == _BOLT for link in self._shop.joined.links)

    def _verb(self) -> str:
        return "Bolt" if self._has_bolts() else "Hook"

    def _drawn_up(self) -> Texts:
        return ("Draw up all bolts, a little at each in turn.",) if self._has_bolts() else ()

    def _bed_square(self) -> Texts:
        shop = self._shop
        square = shop.frames.of_bed(shop.made_by("post_left", "post_right"))
        return (
            square_check(square, shop.words),
            f"All four posts stand on the floor: {self._levelled()} until the frame does not rock.",
        )

    def _levelled(self) -> str:
        """What is bought under the posts: none of it can be turned."""
        glides = any(each.code == "GLIDE" for each in self._shop.bed.hardware)
        return f"put a shim under {'a glide' if glides else 'a post'}"
