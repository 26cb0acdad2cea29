"""What is said in a step, and what the words are made from."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from typing import NamedTuple

from model.bed import Bed
from model.book import open_book
from model.building.frames import Frames
from model.building.joined import Joined, Link
from model.building.record import Driving, Slant, Spread, Step
from model.building.where import Where
from model.building.words import Words, called, capital, counted
from model.checks.safety.weights import lifters, many
from model.shop.order import say
from model.shop.order.heads import takes_washers

Texts = tuple[str, ...]

OUT_AGAIN = "No glue: it comes out again when the bed is moved."


class Said(NamedTuple):
    """The words of a step."""

    title: str
    sentences: Texts
    settings: Texts = ()
    checks: Texts = ()
    keep_dry: Texts = ()
    cautions: Texts = ()


def with_mirror(said: Said, other: Said) -> Said:
    """The words of a step, and where those of its mirror image differ these too."""

    def both(own: Texts, its: Texts) -> Texts:
        if len(own) != len(its):
            return (*own, *(f"In the mirror images: {each}" for each in its if each not in own))
        pairs = zip(own, its, strict=True)
        return tuple(a if a == b else f"{a} In the mirror images: {b}" for a, b in pairs)

    return Said(said.title, *(both(a, b) for a, b in zip(said[1:], other[1:], strict=True)))


class Shop:
    """What every teller of a step asks: the joints, words and places of a bed."""

    def __init__(self, joined: Joined, frames: Frames) -> None:
        self.joined, self.frames = joined, frames
        self.bed: Bed = joined.bed
        self.words = Words(joined)
        self.where = Where(joined, self.words)

    def wood(self, pieces: Iterable[int]) -> list[int]:
        """The pieces that are cut, in their order."""
        return [piece for piece in pieces if self.joined.is_wood(piece)]

    def between(self, new: Iterable[int], there: Iterable[int]) -> list[Link]:
        """The links between some pieces and others, in the order of the pieces."""
        own, others = set(new), set(there)
        links = {
            link: None
            for piece in sorted(own)
            for link in self.joined.of(piece)
            if (link.other if link.one == piece else link.one) in others
        }
        return list(links)

    def hosts(self, own: Iterable[int], placed: Iterable[int], joints: Container[str]) -> list[int]:
        """The pieces among those placed that some pieces are joined to by these joints, rising."""
        mine = set(own)
        links = (link for link in self.between(mine, placed) if link.joint in joints)
        return sorted({link.other if link.one in mine else link.one for link in links})

    def driving(self, step: Step) -> Iterator[str]:
        """A sentence for all screws alike; counted for one copy."""
        for each in step.screws:
            yield f"Drive {self.driven(each, step.times)}."

    def driven(self, each: Driving, times: int = 1) -> str:
        """`14 No. 8 x 2" wood screws through S3, pilot holes 7/64" in S1`."""
        number = each.number // times
        words = self.words
        screws = words.screw(each._replace(number=number))
        told = [f"{number} {screws} through {self._named(each.through)}"]
        if each.slant is not None:
            told.append(self._slanting(each, each.slant))
        elif each.spread is not None:
            told.append(self._spread_out(each.spread, number))
        if each.kind == "pocket screw" and not each.is_placed:
            told.append(self._pockets(each))
        if each.shank:
            told.append(f"shank holes {words.shank(each.shank)} in {self._named(each.through)}")
        if pilot := words.pilot(each):
            told.append(f"pilot holes {pilot} in {self._named(each.into)}")
        told += self._heads(each)
        return ", ".join(told)

    def _heads(self, each: Driving) -> Iterator[str]:
        """What the heads of wood screws through wood sit in."""
        own = [mark for mark in self.bed.marks if mark.mark in each.through]
        if each.kind == "pull screw" and any(takes_washers(mark) for mark in own):
            yield "a washer under each head"
        if each.kind != "wood screw" or len(own) < len(each.through):
            return
        if each.slant is not None:
            yield "heads countersunk at the same slant, below the surface"
            return
        washers = any(takes_washers(mark) for mark in own)
        yield "a washer under each head" if washers else "heads countersunk flush"

    def _spread_out(self, spread: Spread, number: int) -> str:
        """`4 in each joint, on the middle line of where both meet: the first 50 mm ...`."""
        near = self.words.near
        if spread.number == 1:
            return "in the middle of where both meet"
        many = f"{spread.number} in each joint, " if number > spread.number else ""
        return (
            f"{many}on the middle line of where both meet: the first {near(spread.first)} from its "
            f"end, then every {near(spread.apart)}"
        )

    def _pockets(self, each: Driving) -> str:
        """Pocket holes that no part has in the drawings."""
        thick = {float(m.thickness) for m in self.bed.marks if m.mark in each.through}
        sizes = say.listed([self.words.size(size) for size in sorted(thick)], "or")
        return f"pocket holes bored first, jig set for stock {sizes} thick"

    def _slanting(self, each: Driving, slant: Slant) -> str:
        """`at a slant into U1: from both ends of D3, started 21 mm from U1, at 30 degrees ...`."""
        into, words = self._named(each.into), self.words
        beside = f"in the middle of {into}"
        if slant.beside is not None:
            beside = f"{words.near(slant.beside)} in from the nearer {slant.beside_kind}"
        if slant.is_centred:
            between = "thickness" if slant.beside_kind == "face" else "width"
            beside = f"in the middle of the {between}"
        return (
            f"at a slant into {into}: from {slant.sides}, started {words.near(slant.start)} from "
            f"{into}, {beside}, at {slant.lean:g} degrees to the side they start in"
        )

    def _named(self, names: Iterable[str]) -> str:
        """Marks as they are; what is bought as it stands in a sentence."""
        marks = {mark.mark for mark in self.bed.marks}
        told = [name if name in marks else f"the {called(name, is_wood=False)}" for name in names]
        return say.listed(told)

    def copies(self, step: Step) -> Texts:
        """How many alike are made this way."""
        if step.times < 2:
            return ()
        many = capital(counted(step.times))
        if step.mirrors:
            turned = counted(step.mirrors)
            return (f"{many} are made this way, {turned} of them as mirror images.",)
        return (f"{many} alike are made this way.",)

    def made_by(self, *rules: str, scope: str = "") -> list[int]:
        """The pieces that some rules made, in a scope (`foot`) or anywhere."""
        names = self.joined.pieces
        found = []
        for piece in range(len(names)):
            owner, _, rule = names.made_by(piece)[0].rpartition(".")
            if rule in rules and scope in ("", owner):
                found.append(piece)
        return found

    def reason(self, piece: int) -> str:
        """Why a piece is made, in the words of its rule."""
        return open_book().reason(self.joined.pieces.made_by(piece)[0])

    def kg(self, pieces: Iterable[int]) -> float:
        """What some pieces weigh together."""
        return sum(self.joined.weights[piece] for piece in pieces)

    def span(self, pieces: Sequence[int]) -> float:
        """The longest side of what holds some pieces, mm."""
        where = self.where
        return max(
            max(where.high(p, k) for p in pieces) - min(where.low(p, k) for p in pieces)
            for k in range(3)
        )

    def lifting(self, pieces: Sequence[int], what: str) -> Texts:
        """How many carry it, where one is not enough."""
        kg = self.kg(pieces)
        number = lifters(kg, self.span(pieces))
        if number == 1:
            return ()
        return (f"{what}: {self.words.kg(kg)}. {capital(many(number))} carry and hold it.",)
