"""The strength view's part of the picture: which load is shown, how far the frame is bent, and
what is written over it. Nothing of one bed is ever shown on another.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QPainter

from app.view.camera import Camera, Picture
from app.view.scale_plate import Told, paint_told
from app.view.stage import Stage
from app.view.strain import Strain
from app.view.strength_marks import StrengthMarks
from model.structure.bent import Body
from model.structure.record import Carried
from model.structure.worst import ALL, cases_of, drawn_times, greatest_move, worst_place

WORST_TITLE = "The worst of all loads"
LATE = "Working out what it carries …"
STILL = 0.0  # times that sag is drawn: not at all
AS_SUITS = -1.0  # as often as lets it be seen


MOST = 3  # plates at once; more say less


class StrengthLook:
    """Holds what was chosen to be shown, and shows it of whatever bed is known."""

    def __init__(self, stage: Stage) -> None:
        self.load, self.times = ALL, AS_SUITS
        self.note = LATE
        self.say: Callable[[str], str] = str  # sentences with their lengths in the maker's unit
        self._stage = stage
        self._known: tuple[Carried, Body] | None = None

    def know(self, carried: Carried, body: Body) -> None:
        """What the bed on the stage carries."""
        self._known, self.note = (carried, body), ""
        self._show()

    def forget(self, note: str = LATE) -> None:
        """Nothing is known of the bed on the stage, and why."""
        self._known, self.note = None, note
        self._stage.show_strain(None)

    def choose(self, load: str | None = None, times: float | None = None) -> None:
        """Show another load (its key), or its sag drawn another number of times."""
        self.load = self.load if load is None else load
        self.times = self.times if times is None else times
        self._show()

    def _show(self) -> None:
        if self._known is None:
            return
        carried, body = self._known
        cases = () if self.load == ALL else cases_of(carried, self.load)
        if not cases or not len(carried.at):  # all of them, or a load that this bed does not have
            strain = Strain(carried=carried, body=body, cases=cases_of(carried))
        else:
            shape = worst_place(carried, cases).case
            times = self._times(carried, shape)
            strain = Strain(carried=carried, body=body, cases=cases, shape=shape, times=times)
        self._stage.show_strain(strain)

    def _times(self, carried: Carried, shape: int) -> float:
        """How many times the sag of a load case is drawn."""
        if self.times >= 0:
            return self.times
        low, high = self._stage.bounds
        return drawn_times(greatest_move(carried, shape), high[1] - low[1])

    # ------------------------------------------------------------ over the picture

    @property
    def told(self) -> Told:
        """What is written beside the scale."""
        strain = self._stage.strain
        if strain is None:
            return Told(self.note, has_scale=False)
        if strain.shape is None:
            return Told(WORST_TITLE, "Glass: no part of the frame")
        places = f", the worst of {len(strain.cases)} places" if len(strain.cases) > 1 else ""
        title = self.say(strain.carried.cases[strain.shape].title)
        return Told(title, _movement(strain.times) + places)

    def paint(self, painter: QPainter, picture: Picture, camera: Camera, scale: float) -> None:
        """Mark what is picked, and explain the colours."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        strain, style = self._stage.strain, self._stage.style
        if strain is not None:
            marks = StrengthMarks(painter, picture, camera, scale)
            body, worked = strain.body, self._stage.worked
            for piece in {*style.selected, style.hovered}:
                marks.outline(worked.ends[body.edge_piece == piece], piece in style.selected)
            for piece in list(style.selected)[:MOST]:
                mine = body.piece == piece
                marks.share(worked.triangles[mine], strain.use[mine])
        paint_told(painter, picture, scale, self.told)


def _movement(times: float) -> str:
    if not times:
        return "Movement not drawn"
    return f"Movement drawn {times:g} times" if times > 1 else "Movement at its true size"
