"""The records of how a bed is put together: one `Step` for each picture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from model.part import Point
from model.units import Mm

STILL: Point = (0.0, 0.0, 0.0)


class Coming(NamedTuple):
    """How one piece comes to its place: along a unit vector in bed axes, or (0, 0, 0) for what lies
    on the bench already.

    An exploded picture draws it at its place less `along` times a distance that grows with `turn`:
    what must be in its place before another that comes the same way has a lower turn.
    """

    piece: int
    along: Point
    turn: int


class Marked(NamedTuple):
    """So many pieces of a mark; `mark` is `B1`, `name` what the part is called."""

    mark: str
    name: str
    quantity: int


class Fitting(NamedTuple):
    """So many of a bought thing; `code` is that of the hardware list."""

    code: str
    name: str
    quantity: int


class Slant(NamedTuple):
    """How a screw is driven from the side of a piece into what it stands on: from which `sides`
    (`both ends`), how far from the joint it starts, mm, and how far it leans to the side that it
    starts in, degrees. `beside` is how far in it starts from the nearer of the two `beside_kind`s
    (faces, edges), mm, and `is_centred` whether that is half of what lies between them; None for
    what starts in the middle of where both pieces meet.
    """

    sides: str
    start: Mm
    lean: float
    beside: Mm | None = None
    beside_kind: str = "face"
    is_centred: bool = False


class Spread(NamedTuple):
    """Where screws that have no place in the drawings are set out along a joint: `number` in each,
    the first `first` from the end of where the two pieces meet, the next `apart` from it, mm.
    """

    number: int
    first: Mm
    apart: Mm


class Driving(NamedTuple):
    """Screws or pins alike that are driven in a step: `kind` as `model.cost` tells them.

    `number` is that of all copies; `pilot` the diameter of the hole in the wood that takes the
    point, mm, 0 where none is drilled; `through` and `into` are marks, or names of what is bought.
    `is_placed`: their places are in the drawings; others are set out by their `spread`. `slant`
    where what they hold is too thick to go straight through. `shank` is the diameter of the hole
    that the step drills for the shank, mm, 0 where the work order has bored it or none is needed.
    """

    kind: str
    gauge: str
    length: Mm
    number: int
    pilot: Mm
    through: tuple[str, ...]
    into: tuple[str, ...]
    is_placed: bool
    slant: Slant | None = None
    spread: Spread | None = None
    shank: Mm = 0.0


class Clamping(NamedTuple):
    """So many clamps that open at least `span`, mm."""

    number: int
    span: Mm


class Square(NamedTuple):
    """A rectangle whose two diagonals are compared: what it is, its sides and diagonal, and by how
    much the two may differ, mm.
    """

    what: str
    length: Mm
    width: Mm
    diagonal: Mm
    most: Mm


@dataclass(frozen=True, kw_only=True)
class Step:
    """One thing that is done at the bench or on the floor, and what it takes.

    `key` is `chapter/number`. `copies` are the pieces that are seen for the first time, one tuple
    for each of the alike things that are made in this step (`times`), the last `mirrors` of them
    mirror images of the first; `brought` those of assemblies
    made before that are brought to the bed. `comes` tells how the pieces of the first copy, and
    those brought, come in; `there` what is shown with them: pieces joined before. All are indices
    into the bed's pieces; `assemblies` names what is brought (`headboard`, `4 slide bearers`);
    `marks` and `hardware` count the pieces of all copies. `settings` are
    stops, spacers and set-ups; `checks` sentences with numbers; `keep_dry` what no glue may touch.
    """

    key: str
    chapter: str
    title: str
    sentences: tuple[str, ...]
    copies: tuple[tuple[int, ...], ...] = ()
    mirrors: int = 0
    brought: tuple[int, ...] = ()
    comes: tuple[Coming, ...] = ()
    there: tuple[int, ...] = ()
    assemblies: tuple[str, ...] = ()
    marks: tuple[Marked, ...] = ()
    hardware: tuple[Fitting, ...] = ()
    screws: tuple[Driving, ...] = ()
    glue: bool = False
    clamps: tuple[Clamping, ...] = ()
    tools: tuple[str, ...] = ()
    settings: tuple[str, ...] = ()
    squares: tuple[Square, ...] = ()
    checks: tuple[str, ...] = ()
    keep_dry: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()

    @property
    def times(self) -> int:
        """How many alike are made."""
        return max(1, len(self.copies))

    @property
    def pieces(self) -> tuple[int, ...]:
        """All pieces that are seen for the first time, over all copies."""
        return tuple(piece for copy in self.copies for piece in copy)

    @property
    def shown(self) -> tuple[int, ...]:
        """What the picture shows coming in: the first copy, and what is brought."""
        return (*(self.copies[0] if self.copies else ()), *self.brought)

    @property
    def moved(self) -> Point:
        """The way most of them come in."""
        ways = [each.along for each in self.comes if each.along != STILL]
        return max(ways, key=ways.count) if ways else STILL

    @property
    def text(self) -> Iterator[str]:
        """Every sentence of the step, in the order in which they are read."""
        yield from self.settings
        yield from self.sentences
        yield from self.keep_dry
        yield from self.checks
        yield from self.cautions
