"""The words for what is laid on a face and screwed, nailed or glued there, and for fittings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from model.building.hanging import fixed_front_places
from model.building.joined import Link
from model.building.joints import KNOWN, LOOSE
from model.building.record import Step
from model.building.said import Said, Shop, Texts
from model.building.slide_lines import slide_lines
from model.building.words import capital, plural
from model.shop.order import say
from model.shop.order.aids import slides_lie_on_skids, spacers

# How a thing is fixed by each joint, {face} where the glue goes; common practice, no source.
_HOW = {
    "glued and screwed": "Spread glue on the {face}, clamp it to its line and drive the screws",
    "screwed and glued": "Spread glue on the {face}, clamp it to its line and drive the screws",
    "glued on top": "Spread glue on the {face}, clamp all along with a board under the clamps, and "
    "let it set",
    "glued": "Spread glue on the {face}, clamp it down and let it set",
    "screwed": "Clamp it to its line, without glue, and drive the screws",
    "nailed": "Hold it to its line, without glue, and drive the pins",
    "screwed from behind": "Clamp it in its place, without glue, and drive the screws from behind",
    "bolted": "Put the screws of the pulls through from behind and draw them up by hand",
}
_FIXED = KNOWN - LOOSE | {"stands"}


class Laying:
    """Tells what is laid on, piece by piece."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop

    def faced(self, step: Step, what: str) -> Said:
        """What is glued or screwed on a face of the same unit."""
        shop, words = self._shop, self._shop.words
        base = self._base(step)
        new = [piece for piece in shop.wood(step.shown) if piece not in base]
        return Said(
            title=f"{capital(what)}: {words.names(new)}",
            sentences=(
                *dict.fromkeys(shop.reason(piece) for piece in new),
                *self._laid(base),
                *self._places(new, [*step.there, *base], step.times),
                *self._fix(new, [*step.there, *base], step),
                *shop.driving(step),
                *shop.copies(step),
            ),
        )

    def fixed(self, step: Step, what: str) -> Said:
        """A unit of wood that is screwed on and can come off again."""
        said = self.faced(step, what)
        return said if step.glue else said._replace(keep_dry=("No glue: it comes off again.",))

    def fitted(self, step: Step, what: str) -> Said:
        """Fittings, and fixed fronts with their pulls."""
        shop, words = self._shop, self._shop.words
        base = self._base(step)
        placed = [*step.there, *base]
        wood = [piece for piece in shop.wood(step.shown) if piece not in base]
        bought = [piece for piece in step.shown if not shop.joined.is_wood(piece)]
        return Said(
            title=f"{capital(what)}: fit {words.names(wood or bought)}",
            sentences=(
                *dict.fromkeys(shop.reason(piece) for piece in (*wood, *bought)),
                *self._laid(base),
                *(self._fronts(wood, placed) or self._places(wood, placed, step.times)),
                *self._places(bought, [*placed, *wood], step.times),
                *self._sold(bought),
                *self._on_skids(step),
                *slide_lines(shop, bought, lambda each: self._host(each, placed)),
                *self._fix(wood, placed, step),
                *shop.driving(step),
                *shop.copies(step),
            ),
            settings=tuple(self._spacers(step)),
        )

    def _base(self, step: Step) -> list[int]:
        """What lies on the bench first, where nothing is there yet."""
        still = [each.piece for each in step.comes if not any(each.along)]
        return [] if step.there else self._shop.wood(still)[:1]

    def _laid(self, base: Sequence[int]) -> Texts:
        return (f"Lay {self._shop.words.called(base)} on the bench.",) if base else ()

    def _sold(self, bought: Sequence[int]) -> Iterator[str]:
        """What has no screws of its own in the drawings."""
        codes = {self._shop.joined.hardware[piece] for piece in bought}
        if any(code.startswith("GLIDE") for code in codes):
            yield "Knock or screw glides in as they are sold; drill first, end grain splits."
        if any("PLATE" in code for code in codes):
            yield "Set each plate in its recess, flush, hooks or slots the right way up."

    def _fronts(self, wood: Sequence[int], placed: Sequence[int]) -> Texts:
        """Fixed fronts stand to their openings as the drawers' fronts do."""
        fronts = [p for p in wood if self._shop.joined.part(p).assembly == "fronts"]
        if not fronts:
            return ()
        row = self._shop.joined.pieces.made_by(fronts[0])[0].partition(".")[0]
        gaps = fixed_front_places(self._shop, row, fronts, placed)
        return (f"{capital(self._shop.words.called(fronts))}: {gaps}.",)

    # ------------------------------------------------------------ where and how

    def _places(self, new: Sequence[int], placed: Sequence[int], times: int) -> Iterator[str]:
        """Where each kind of piece lies on what it is fixed to; alike places are told once."""
        shop, words = self._shop, self._shop.words
        told: dict[tuple[str, str], tuple[list[int], list[int]]] = {}
        for piece in new:
            host = self._host(piece, placed)
            if host is None or shop.joined.is_dowel(piece):
                continue
            place = shop.where.on(piece, host, looks=times == 1)
            key = (str(shop.where.face_of(piece, host)), place)
            own, hosts = told.setdefault(key, ([], []))
            own.append(piece)
            hosts.append(host)
        for (face, place), (own, hosts) in told.items():
            on = plural(face) if len(set(hosts)) > 1 else face
            yield f"{capital(words.called(own))} on the {on} of {words.marks(hosts)}: {place}."

    def _host(self, piece: int, placed: Iterable[int]) -> int | None:
        """What a piece is fixed to, of those in their places."""
        hosts = self._shop.hosts([piece], placed, _FIXED)
        wood = self._shop.wood(hosts)
        return next(iter(wood or hosts), None)

    def _fix(self, new: Sequence[int], placed: Sequence[int], step: Step) -> Iterator[str]:
        """How each joint is made; what has no screws of its own is clamped until the glue holds."""
        links = [link for link in self._shop.between(new, placed) if link.joint in _HOW]
        for joint in dict.fromkeys(link.joint for link in links):
            is_glue_alone = step.glue and "screwed" in joint and not step.screws
            how = _HOW["glued" if is_glue_alone else joint]
            face = self._glued_faces(new, [link for link in links if link.joint == joint])
            yield f"{how.format(face=face)}."

    def _glued_faces(self, new: Sequence[int], links: Sequence[Link]) -> str:
        """`back of S3`: the side that each new piece turns to what it is glued to."""
        shop, own = self._shop, set(new)
        found: dict[str, list[int]] = {}
        for link in links:
            piece, host = (link.one, link.other) if link.one in own else (link.other, link.one)
            side = shop.where.face_of(host, piece)
            found.setdefault(side, []).append(piece)
        told = [f"{side} of {shop.words.marks(pieces)}" for side, pieces in found.items()]
        return say.listed(told)

    def _on_skids(self, step: Step) -> Iterator[str]:
        """Slides on bearers whose skids are in their places already."""
        shop = self._shop
        is_slide = any("slide" in shop.words.name(piece) for piece in step.shown)
        skids = [piece for piece in step.there if shop.words.name(piece) == "skid"]
        if is_slide and skids and slides_lie_on_skids(shop.bed):
            yield f"Its lower edge rests on skid {shop.words.marks(skids)}: no spacer is needed."

    def _spacers(self, step: Step) -> Iterator[str]:
        """The spacers that the shop has made for what is fitted here."""
        shop = self._shop
        if not any("slide" in shop.words.name(piece) for piece in step.shown):
            return
        on_box = any(shop.joined.group(piece) for piece in step.there)
        for each in spacers(shop.bed):
            if each.name.startswith("slide spacer") and each.name.endswith(
                "box" if on_box else "bearer"
            ):
                yield f"{capital(each.name)}, {shop.words.size(each.size)} wide: {each.use}"
