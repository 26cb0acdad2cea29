"""The strength view's part of the picture: which load is shown, how far the frame is bent, and
what is written over it. Nothing of one bed is ever shown on another.
"""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.view.camera import Camera, Picture
from app.view.palette import ACCENT
from app.view.plates import draw_plate, plate_font, plate_size
from app.view.scale_plate import Told
from app.view.stage import Stage
from app.view.strain import Strain
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
        places = f", at the worst of {len(strain.cases)} places" if len(strain.cases) > 1 else ""
        return Told(strain.carried.cases[strain.shape].title, _movement(strain.times) + places)

    def paint(
        self, painter: QPainter, picture: Picture, camera: Camera, scale: float
    ) -> tuple[QRectF, ...]:
        """Outline and share of what is selected; gives the places that are taken."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        taken: list[QRectF] = []
        strain, worked = self._stage.strain, self._stage.worked
        if strain is None:
            return tuple(taken)
        style = self._stage.style
        chosen = [*style.selected] + ([style.hovered] if style.hovered >= 0 else [])
        for piece in chosen:
            ends = worked.ends[strain.body.edge_piece == piece]
            self._outline(painter, camera, picture, ends, scale, piece in style.selected)
        for piece in list(style.selected)[:MOST]:
            plate = self._share(painter, camera, picture, scale, strain, piece)
            taken += [plate] if plate is not None else []
        return tuple(taken)

    @staticmethod
    def _outline(
        painter: QPainter, camera: Camera, picture: Picture, ends: np.ndarray, scale: float,
        is_chosen: bool,
    ) -> None:  # fmt: skip
        """Its edges, drawn over all: a line of the card has no width to stand out by."""
        seen = camera.project(ends.reshape(-1, 3), picture).reshape(-1, 2, 3)
        lines = [
            (QPointF(*a[:2]), QPointF(*b[:2])) for a, b in seen.tolist() if min(a[2], b[2]) > 0
        ]
        width = (1.5 if is_chosen else 1.0) * scale
        halo = QColor(255, 255, 255, 170)
        for colour, wide in ((halo, width + 1.6 * scale), (QColor.fromRgbF(*ACCENT), width)):
            painter.setPen(QPen(colour, wide, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
            for start, end in lines:
                painter.drawLine(start, end)

    def _share(
        self, painter: QPainter, camera: Camera, picture: Picture, scale: float, strain: Strain,
        piece: int,
    ) -> QRectF | None:  # fmt: skip
        """How hard a piece works, on a plate where it works hardest."""
        mine = np.flatnonzero(strain.body.piece == piece)
        if not len(mine):
            return None
        use = strain.use[mine].reshape(-1)
        worst = float(use.max())
        points = self._stage.worked.triangles[mine].reshape(-1, 3)[use >= worst - 1e-4]
        x, y, depth = camera.project(points.mean(0)[None].astype(float), picture)[0].tolist()
        if depth <= 0:
            return None
        words = f"{worst:.0%}"
        font = plate_font(painter.font(), scale)
        size = plate_size(words, font, scale)
        corner = QPointF(round(x - size.width() / 2), round(y - size.height() - 8 * scale))
        plate = QRectF(corner, size)
        draw_plate(painter, plate, words, font, scale, is_clearance=True)
        return plate


def _movement(times: float) -> str:
    if not times:
        return "Movement not drawn"
    return f"Movement drawn {times:g} times" if times > 1 else "Movement at its true size"
