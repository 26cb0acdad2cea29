"""What a bed carries, by textbook beams: for tests of what is shown, not of what is reckoned.

Every slat, rail and centre beam is a beam on two supports at its ends under an even load, the rest
of the bed is no part of the frame. Two load cases: `lying`, and `kneeling` at three times the load.
"""

from typing import Any

import numpy as np

from model.structure.record import Carried, Case, Effect

NAMES = ("slat", "top rail", "side rail", "centre beam")
STATIONS = 9
LOADS = (1.0, 3.0)
SAG_LIMIT = 1 / 240  # of the span
CASES = (
    Case(key="lying", title="Two sleepers lying", reason="Weights spread by the mattress.",
         choices=("left.drawers", "mattress_width")),
    Case(key="kneeling", title="One kneeling on the worst slat", reason="On two knees.",
         source="A standard, clause 1"),
)  # fmt: skip


def sample_carried(bed: Any, most: float = 1.3) -> Carried:
    """The frame of any bed. `most`: the share of its limit at which the hardest piece works."""
    low, high = bed.pieces.bounds
    names = [bed.pieces.parts[k].name for k in bed.pieces.part]
    pieces = np.array([k for k, name in enumerate(names) if name in NAMES], np.intp)
    size = high[pieces] - low[pieces]
    axis = size.argmax(axis=1)
    rows = np.arange(len(pieces))
    span, deep = size[rows, axis], size[:, 2]
    share = np.linspace(0, 1, STATIONS)
    at = span[:, None] * share
    middle = (low[pieces] + high[pieces]) / 2
    point = np.repeat(middle[:, None], STATIONS, axis=1)
    for i in rows:
        point[i, :, axis[i]] = low[pieces[i], axis[i]] + at[i]
    # An even load bends as w (l^3 x - 2 l x^3 + x^4), its moment is w (l x - x^2) / 2.
    shape = (share - 2 * share**3 + share**4) / 0.3125
    bow = (share - share**2) * 4
    one = (span / span.max()) ** 2 / deep * deep.min()
    use = np.stack([load / max(LOADS) * most * one[:, None] * bow for load in LOADS])
    sag = np.stack([load * span[:, None] / 1200 * shape for load in LOADS])
    moved = np.zeros((*sag.shape, 3))
    moved[..., 2] = -sag
    flat = (len(LOADS), -1)
    return Carried(
        cases=CASES,
        pieces=pieces,
        first=np.arange(len(pieces) + 1) * STATIONS,
        at=at.ravel(),
        point=point.reshape(-1, 3),
        moved=moved.reshape(len(LOADS), -1, 3),
        sag=sag.reshape(flat),
        use=use.reshape(flat),
        sag_limit=SAG_LIMIT * span,
        effects={
            int(p): _effects(int(p), use[:, i], sag[:, i], span[i]) for i, p in enumerate(pieces)
        },
    )


def _effects(piece: int, use: Any, sag: Any, span: float) -> tuple[Effect, ...]:
    middle = float(span) / 2
    made = (
        Effect(piece=piece, kind="bending", value=10 * float(use[1].max()), limit=10.0, unit="MPa",
               case=1, at=middle, source="A handbook, table 5"),
        Effect(piece=piece, kind="sag", value=float(sag[1].max()), limit=float(SAG_LIMIT * span),
               unit="mm", case=1, at=middle, source="common practice, no source"),
        Effect(piece=piece, kind="joint", value=200.0, limit=1000.0, unit="N", case=0, at=0.0,
               source="A handbook, chapter 8"),
    )  # fmt: skip
    return tuple(sorted(made, key=lambda effect: -effect.use))
