"""One change that makes a check hold, and what else it does to the bed, in the maker's words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from model.bed import Bed
from model.book import ROWS
from model.brief import all_choices
from model.brief.stock_turns import SAME_THICKNESS, SHEET_OF
from model.brief.turn import Turn
from model.brief.words import full_label, value_text
from model.checks.record import HAIR, Finding, Verdict
from model.units import Mm, show_length

# What a maker looks at when a change is offered, and how it is called.
SIZES = {
    "bed_width": "overall width",
    "bed_length": "overall length",
    "sleeping_height": "sleeping height",
    "opening_height": "opening height",
    "drawer_inside_height": "drawer height inside",
}
ROW_SIZES = {
    "drawer_inside_width": "drawer width inside",
    "drawer_inside_depth": "drawer depth inside",
}
SEEN: Mm = 0.75  # a size that moves less, half a sixteenth, changes nothing for whoever sleeps
NAMED = 2  # other checks that a change mends and that are named; of more the number is told
BY_MORE = 0.05  # share of its limit by which a failed check gets worse before that is told
SAID = {
    Verdict.FAILS: "fails", Verdict.TIGHT: "is tight", Verdict.NOTE: "is a note",
    Verdict.HOLDS: "holds",
}  # fmt: skip
ORDER = list(Verdict)


@dataclass(frozen=True, kw_only=True)
class Improvement:
    """A change that was built and makes `finding` hold, or a failed one be tight; `then` is what
    the check says of that bed, None where it is not asked of it.

    `choice` is turned, `changes` are all values to take over (a sheet brings its thickness), `size`
    is as in `Turn`. `worse` and `better` are other checks of the changed bed whose verdict moved,
    or which fail by more. `cost` is the less the better: how many checks begin to fail, to be
    tight, to be a note, fail by more, and then the size. `change`, `result` and `effects` are the
    words, in the design's unit.
    """

    finding: Finding
    then: Finding | None
    choice: str
    changes: Mapping[str, Any]
    size: float
    worse: tuple[Finding, ...]
    better: tuple[Finding, ...]
    cost: tuple[float, ...]
    change: str
    result: str
    effects: str

    @property
    def sentence(self) -> str:
        """The whole offer: `Slat stock 7/8" in place of 3/4" would do: 5/16" of at most 3/8".`"""
        return f"{self.change} would do: {self.result}. {self.effects}".strip()


def improvement_of(
    bed: Bed, finding: Finding, turn: Turn, changed: Bed, then: Finding | None
) -> Improvement:
    """What a turn does to a bed, told."""
    own = {(each.id, each.place) for each in (finding, then) if each is not None}
    before = {(f.id, f.place): f for f in bed.findings}
    others = [f for f in changed.findings if (f.id, f.place) not in own]
    was = [(f, before.get((f.id, f.place))) for f in others]
    worse = [f for f, old in was if _rank(f) < _rank(old)]
    further = [f for f, old in was if _fails_by_more(old, f)]
    better = [f for f, old in was if _rank(f) > _rank(old)]
    unit = bed.design.value("shown_unit")
    told = _verdicts(worse, further, better), _sizes(bed, changed)
    counts = (sum(f.verdict is v for f in worse) for v in ORDER[:3])
    return Improvement(
        finding=finding, then=then, choice=turn.choice, changes=turn.changes, size=turn.size,
        worse=(*worse, *further), better=tuple(better), cost=(*counts, len(further), turn.size),
        change=_change(bed, turn), result=_result(finding, then, unit),
        effects=" ".join(filter(None, told)),
    )  # fmt: skip


def _rank(finding: Finding | None) -> int:
    """What is not asked is no trouble."""
    return ORDER.index(Verdict.HOLDS if finding is None else finding.verdict)


def _fails_by_more(before: Finding | None, now: Finding) -> bool:
    if before is None or not before.verdict is now.verdict is Verdict.FAILS:
        return False
    return now.margin < before.margin - max(HAIR, BY_MORE * abs(now.limit))


# ---------------------------------------------------------------- words


def _change(bed: Bed, turn: Turn) -> str:
    choice, unit = all_choices(bed.design.own)[turn.choice], bed.design.value("shown_unit")
    values = turn.changes[turn.choice], bed.design.value(turn.choice)
    texts = [value_text(choice, value, unit) for value in values]
    if len({text.lstrip("~") for text in texts}) == 1:  # too near for fractions of an inch
        texts = [value_text(choice, value, "mm") for value in values]
    return f"{full_label(choice)} {texts[0]} in place of {texts[1]}{_reckoned(bed, turn)}"


def _reckoned(bed: Bed, turn: Turn) -> str:
    """A sheet may be reckoned with a thickness that its name does not say."""
    for stock, sheet in SHEET_OF.items():
        if turn.changes.keys() == {stock, sheet}:
            nominal = bed.materials[bed.design.value(sheet)].nominal_mm
            thickness = bed.design.value(stock)
            if nominal is not None and abs(thickness - nominal) > SAME_THICKNESS:
                return f", taken as {show_length(thickness, bed.design.value('shown_unit'))}"
    return ""


def _result(finding: Finding, then: Finding | None, unit: str) -> str:
    """`5/16" of at most 3/8"`."""
    if then is None:
        return "this is not asked then"
    value, limit = (_figure(figure, then.unit, unit) for figure in (then.value, then.limit))
    if then.verdict is Verdict.NOTE:
        return f"a note is left, {value}, limit {limit}"
    way = _way(then) or _way(finding)
    told = f"{value} of {way} {limit}" if way else f"{value}, limit {limit}"
    return f"only just, {told}" if then.verdict is Verdict.TIGHT else told


def _way(finding: Finding) -> str:
    """Whether the limit is the least or the most; "" where it is neither, or just met."""
    way = finding.value - finding.limit
    if abs(way) <= HAIR or abs(abs(way) - abs(finding.margin)) > HAIR:
        return ""
    return "at least" if way * finding.margin > 0 else "at most"


def _figure(value: float, unit: str, shown_unit: str) -> str:
    return show_length(value, shown_unit) if unit == "mm" else f"{value:.4g} {unit}".strip()


def _verdicts(worse: list[Finding], further: list[Finding], better: list[Finding]) -> str:
    costs = [*_by_title(worse, SAID), *_by_title(further, {Verdict.FAILS: "fails by more"})]
    gains = [*_by_title(better, SAID)]
    helps = f": {', '.join(gains)}" if len(gains) <= NAMED else f" {len(better)} other checks"
    told = (costs and f"But then: {', '.join(costs)}.", gains and f"It also helps{helps}.")
    return " ".join(each for each in told if each)


def _by_title(findings: Iterable[Finding], said: Mapping[Verdict, str]) -> Iterator[str]:
    """Title and verdict, the places of one title together."""
    places: dict[tuple[str, str], list[str]] = {}
    for each in findings:
        places.setdefault((each.title, said[each.verdict]), []).append(each.place)
    for (title, word), where in places.items():
        yield f"“{_placed(title, where)}” {word}"


def _placed(title: str, places: Iterable[str]) -> str:
    where = ", ".join(dict.fromkeys(filter(None, places)))
    return f"{title} ({where})" if where else title


def _sizes(bed: Bed, changed: Bed) -> str:
    """The sizes that a maker looks at, where they move: `Opening height 8" in place of 8 1/4".`"""
    said = list(filter(None, (_moved(bed, changed, name, SIZES[name]) for name in SIZES)))
    for name, words in ROW_SIZES.items():
        rows: dict[str, list[str]] = {}
        for row in ROWS:
            if bed[f"{row}.drawer_count"]:
                rows.setdefault(_moved(bed, changed, f"{row}.{name}", words), []).append(row)
        alike = len(rows) == 1
        said += [text if alike else f"{_and(rows[text])} {text}" for text in rows if text]
    told = ", ".join(said)
    return f"{told[0].upper()}{told[1:]}." if told else ""


def _moved(bed: Bed, changed: Bed, name: str, words: str) -> str:
    """A size before and after; "" where it moves too little to be seen."""
    if abs(changed[name] - bed[name]) <= SEEN:
        return ""
    unit = bed.design.value("shown_unit")
    then, now = (show_length(each[name], unit) for each in (changed, bed))
    return f"{words} {then} in place of {now}"


def _and(words: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))
