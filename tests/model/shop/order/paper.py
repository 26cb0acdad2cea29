"""The printed work order read back, as somebody at the bench reads it: no keys, no records."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from model.part import Cut, Face, Hole
from model.read_length import parse_length

BATCH = re.compile(r"^ {0,2}(\d+)  (\S.*)$")
TOLD = re.compile(r"^     (Set|Before|Stops|Take care): (.*)$")
LINE = re.compile(r"^     \[([ x])\] (.*)$")
MARKED = re.compile(r"^(\S+) +(\d+) x (.*)$")
BIT = re.compile(
    r"^Bit (.+?)(?: \(reckoned (.+?)\))?, (?:(.+) deep from the (.+)|through); "
    r"centre (.+) from the (?:\w+ or )?\w+$"
)
WHERE = re.compile(r"^(.*?), (fence|stop|at)(?: at)? (?:the )?(.*?): (.*)$")
BOTH = {
    "both ends": "near end and far end",
    "both edges": "lower edge and upper edge",
    "both faces": "back and face",
}
ENDS = {0: (Face.NEAR, Face.FAR), 1: (Face.LOWER, Face.UPPER), 2: (Face.BACK, Face.FACE)}
NAMES = "|".join([*(re.escape(str(face)) for face in Face), *BOTH])


@dataclass
class Setting:
    """One numbered setting as printed."""

    number: int
    head: str
    set_to: str = ""
    lines: list[str] = field(default_factory=list)


def read(text: str) -> list[Setting]:
    """All settings of a printed order; what goes on below belongs to the line above it."""
    found: list[Setting] = []
    into = ""
    for line in text.splitlines():
        if match := BATCH.match(line):
            found.append(Setting(int(match[1]), match[2]))
            into = "head"
        elif match := TOLD.match(line):
            into = match[1]
            if into == "Set":
                found[-1].set_to = match[2]
        elif match := LINE.match(line):
            found[-1].lines.append(match[2])
            into = "line"
        elif found and line.startswith("      ") and into == "Set":
            found[-1].set_to += " " + line.strip()
        elif found and line.startswith("      ") and into == "line":
            found[-1].lines[-1] += " " + line.strip()
    return found


def marked(line: str, names: dict[str, str]) -> tuple[str, int, str]:
    """Mark, quantity and place of a line; `names` are the parts' names by mark."""
    match = MARKED.match(line)
    assert match is not None, line
    name = names[match[1].partition("/")[0]]
    assert match[3].startswith(name), line
    return match[1], int(match[2]), match[3].removeprefix(name).strip()


def size(text: str) -> float:
    return parse_length(text.strip().lstrip("~"), "mm")


def faces(text: str) -> list[Face]:
    text = BOTH.get(text, text)
    return [Face(each) for each in re.split(r", | and ", text)]


# ---------------------------------------------------------------- cuts and holes


def slots(set_to: str, where: str, part: tuple[float, ...]) -> list[Cut]:
    """The box cuts that a line of a groove, rabbet, tenon … asks for."""
    depth, width, fence = slot_figures(set_to)
    made = []
    for place in where.split("; "):
        match = WHERE.match(place)
        assert match is not None, place
        for face in faces(match[1]):
            for against in faces(match[3]):
                along = 3 - face.axis - against.axis
                for start, stop in runs(match[4], along, part[along]):
                    made.append(box(part, face, depth, against, fence, width, along, start, stop))
    return made


def slot_figures(set_to: str) -> tuple[float, float, float]:
    """Depth, width and distance from the fence."""
    if match := re.match(r"^(.+?) deep, stop for (.+) from the end$", set_to):
        return size(match[1]), size(match[2]), 0.0
    if match := re.match(r"^(.+?) in from the end, (.+) wide, (.+) from the edge$", set_to):
        return size(match[1]), size(match[2]), size(match[3])
    match = re.match(r"^(.+?) wide, (.+?) deep, (?:along the \w+|(.+) from the \w+)$", set_to)
    assert match is not None, set_to
    return size(match[2]), size(match[1]), size(match[3]) if match[3] else 0.0


def runs(text: str, axis: int, side: float) -> list[tuple[float, float]]:
    """From and to along an axis, from its low end."""
    found = []
    for run in re.split(r", (?=right|from|~?\d)", text):
        if run == "right through":
            found.append((0.0, side))
        elif match := re.match(rf"^from the ({NAMES}), stopped at (.+)$", run):
            found.append(turned(Face(match[1]), 0.0, size(match[2]), side))
        elif match := re.match(rf"^(.+?) to (.+) from the ({NAMES})$", run):
            found.append(turned(Face(match[3]), size(match[1]), size(match[2]), side))
        else:
            raise AssertionError(run)
    return found


def turned(end: Face, start: float, stop: float, side: float) -> tuple[float, float]:
    return (side - stop, side - start) if end.is_high else (start, stop)


def box(
    part: tuple[float, ...], face: Face, depth: float, against: Face, fence: float, width: float,
    along: int, start: float, stop: float,
) -> Cut:  # fmt: skip
    low, high = [0.0] * 3, [0.0] * 3
    low[face.axis], high[face.axis] = turned(face, 0.0, depth, part[face.axis])
    low[against.axis], high[against.axis] = turned(
        against, fence, fence + width, part[against.axis]
    )
    low[along], high[along] = start, stop
    return Cut("", face, (low[0], low[1], low[2]), (high[0], high[1], high[2]))


def holes(set_to: str, where: str, part: tuple[float, ...]) -> list[Hole]:
    """The straight holes that a line asks for, each from its face."""
    match = BIT.match(set_to)
    assert match is not None, set_to
    diameter, fence = size(match[2] or match[1]), size(match[5])
    assert abs(diameter - size(match[1])) < 1.0, "the next bit that is sold is no farther"
    made = []
    for place in where.split("; "):
        told = WHERE.match(place)
        assert told is not None, place
        for face in faces(told[1]):
            depth = size(match[3]) if match[3] else part[face.axis]
            own = ("end", "edge", "face")[face.axis]
            assert match[4] is None or own in match[4].split(" or "), "deep from what it is in"
            for against in faces(told[3]):
                for end, start in centres(told[4]):
                    made.append(bored(part, face, against, fence, end, start, diameter, depth))
    return made


def centres(text: str) -> list[tuple[Face, float]]:
    """`40 mm and 80 mm from both ends, 12 mm from the lower edge`."""
    found = []
    for match in re.finditer(rf"(.+?) from (?:the )?({NAMES})(?:, |$)", text):
        starts = [size(each) for each in re.split(r", | and ", match[1])]
        found += [(end, start) for end in faces(match[2]) for start in starts]
    return found


def bored(
    part: tuple[float, ...], face: Face, against: Face, fence: float, end: Face, start: float,
    diameter: float, depth: float,
) -> Hole:  # fmt: skip
    at, toward = [0.0] * 3, [0.0] * 3
    at[face.axis] = part[face.axis] if face.is_high else 0.0
    toward[face.axis] = -1.0 if face.is_high else 1.0
    for side, distance in ((against, fence), (end, start)):
        at[side.axis] = part[side.axis] - distance if side.is_high else distance
    return Hole("", face, (at[0], at[1], at[2]), (toward[0], toward[1], toward[2]), diameter, depth)
