from collections.abc import Callable

import numpy as np
import numpy.typing as npt
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.view import bed_view
from app.view.bed_view import BedView
from app.view.camera import corners
from tests.app.view.sample_bed import SampleBed, sample_mesh

LEFT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton


def pixels(image: QImage) -> npt.NDArray[np.int16]:
    """(rows, columns, 3)"""
    plain = image.convertToFormat(QImage.Format.Format_RGBA8888)
    bytes_ = np.frombuffer(plain.constBits(), np.uint8).reshape(plain.height(), plain.width(), 4)
    return bytes_[:, :, :3].astype(np.int16)


def changed_share(one: QImage, other: QImage) -> float:
    return float((abs(pixels(one) - pixels(other)).max(2) > 8).mean())


def piece_named(view: BedView, name: str, drawer: str = "") -> int:
    looks = view.stage.scene.looks
    return next(k for k, look in enumerate(looks) if (look.label, look.drawer) == (name, drawer))


def middle_of(view: BedView, piece: int) -> QPoint:
    """Where the middle of a piece is in the picture."""
    low, high = (corner[piece] for corner in view.stage.boxes)
    x, y, _ = view.canvas.camera.project(((low + high) / 2)[None], view.canvas.picture)[0]
    return QPoint(round(x), round(y))


def drag(qtbot: QtBot, view: BedView, start: QPoint, way: QPoint, button: Qt.MouseButton) -> None:
    qtbot.mousePress(view.canvas, button, pos=start)
    for k in range(1, 6):
        qtbot.mouseMove(view.canvas, start + way * (k / 5))
    qtbot.mouseRelease(view.canvas, button, pos=start + way)


# ---------------------------------------------------------------- without OpenGL


def test_without_opengl_a_sentence_stands_in_for_the_picture(
    monkeypatch: pytest.MonkeyPatch, bed: SampleBed, shown: Callable[[QWidget], QWidget]
) -> None:
    monkeypatch.setattr(bed_view, "renderer", lambda: "")
    view = BedView()
    shown(view)

    view.show_bed(bed, sample_mesh(bed))
    view.select([3])
    view.pull_drawers(1.0)
    view.look_from("head")
    view.fit()

    assert view.selected == {3}
    assert view.drawers["left-1"] == 1.0
    assert view.render_image(100, 100).isNull()


# ---------------------------------------------------------------- pictures


@pytest.mark.gl
def test_the_picture_shows_the_bed_in_many_tones(view: BedView) -> None:
    image = pixels(view.render_image(1000, 700))

    assert len(np.unique(image.reshape(-1, 3), axis=0)) > 500


@pytest.mark.gl
def test_the_window_and_an_export_show_the_same(view: BedView) -> None:
    view.show_dimensions(False)  # text is smoothed otherwise on screen than in an image
    on_screen = view.canvas.grabFramebuffer()

    exported = view.render_image(on_screen.width(), on_screen.height(), samples=0)

    assert changed_share(on_screen, exported) < 0.01


@pytest.mark.gl
@pytest.mark.parametrize("size", [(640, 480), (1600, 900)])
def test_a_picture_has_the_size_that_was_asked_for(view: BedView, size: tuple[int, int]) -> None:
    image = view.render_image(*size, view="left")

    assert (image.width(), image.height()) == size


@pytest.mark.gl
@pytest.mark.parametrize(
    "change",
    [
        lambda view: view.show_mattress(False),
        lambda view: view.show_shadow(False),
        lambda view: view.show_dimensions(False),
        lambda view: view.see_through(True),
        lambda view: view.pull_apart(1.0),
        lambda view: view.pull_drawers(1.0),
        lambda view: view.select([piece_named(view, "front", "right-1")]),
        lambda view: view.colour_by("paint"),
        lambda view: view.look_parallel(True),
        lambda view: view.write_lengths(lambda mm: f"{mm / 25.4:.2f} inches"),
    ],
)
def test_every_switch_changes_the_picture(view: BedView, change: Callable[[BedView], None]) -> None:
    before = view.render_image(1000, 700)

    change(view)

    assert changed_share(before, view.render_image(1000, 700)) > 0.001


@pytest.mark.gl
def test_a_selected_piece_that_is_covered_shows_through(view: BedView) -> None:
    view.show_dimensions(False)
    before = view.render_image(1000, 700)

    view.select([piece_named(view, "slat")])

    assert 0.0001 < changed_share(before, view.render_image(1000, 700)) < 0.05


@pytest.mark.gl
def test_two_windows_can_show_beds_at_once(
    view: BedView, bed: SampleBed, shown: Callable[[QWidget], QWidget]
) -> None:
    second = BedView()
    second.resize(1000, 700)
    second.show_bed(bed, sample_mesh(bed))
    shown(second)

    first_picture, second_picture = (each.render_image(500, 350) for each in (view, second))

    assert changed_share(first_picture, second_picture) < 0.01


@pytest.mark.gl
def test_a_view_moved_into_another_window_still_draws(
    bed: SampleBed, shown: Callable[[QWidget], QWidget]
) -> None:
    """As happens when a pane is floated or docked."""
    first, second = QWidget(), QWidget()
    view = BedView(first)
    view.resize(500, 350)
    view.show_bed(bed, sample_mesh(bed))
    shown(first)
    before = view.render_image(500, 350)

    view.setParent(second)
    view.show()
    shown(second)

    assert changed_share(before, view.render_image(500, 350)) < 0.01


# ---------------------------------------------------------------- camera


@pytest.mark.gl
def test_another_bed_leaves_the_camera_alone(view: BedView) -> None:
    view.canvas.grabFramebuffer()
    camera = view.canvas.camera
    wider = SampleBed(width=1930)

    view.show_bed(wider, sample_mesh(wider))
    view.canvas.grabFramebuffer()

    assert view.canvas.camera == camera


@pytest.mark.gl
def test_dragging_turns_the_bed(view: BedView, qtbot: QtBot) -> None:
    before = view.canvas.camera

    drag(qtbot, view, QPoint(30, 30), QPoint(80, 40), LEFT)

    assert view.canvas.camera.azimuth < before.azimuth
    assert view.canvas.camera.elevation > before.elevation
    assert view.canvas.camera.centre == before.centre


@pytest.mark.gl
def test_dragging_with_the_middle_button_moves_the_bed(view: BedView, qtbot: QtBot) -> None:
    before = view.canvas.camera

    drag(qtbot, view, QPoint(30, 30), QPoint(80, 40), MIDDLE)

    seen = view.canvas.camera.project(np.array([before.centre]), view.canvas.picture)[0]
    assert seen[:2] == pytest.approx((580, 390), abs=5)  # the first few pixels start the drag
    assert view.canvas.camera.azimuth == before.azimuth


@pytest.mark.gl
def test_the_wheel_zooms(view: BedView) -> None:
    before = view.canvas.camera.distance
    at = QPointF(400, 300)
    turn = QWheelEvent(
        at, at, QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.ControlModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip

    QApplication.sendEvent(view.canvas, turn)

    assert view.canvas.camera.distance < before


@pytest.mark.gl
def test_keys_turn_zoom_and_fit(view: BedView, qtbot: QtBot) -> None:
    start = view.canvas.camera

    qtbot.keyClick(view.canvas, Qt.Key.Key_Right)
    turned = view.canvas.camera
    qtbot.keyClick(view.canvas, Qt.Key.Key_Plus)
    nearer = view.canvas.camera
    qtbot.keyClick(view.canvas, Qt.Key.Key_F)

    assert turned.azimuth != start.azimuth
    assert nearer.distance < turned.distance
    qtbot.waitUntil(lambda: view.canvas.camera.distance > nearer.distance)


@pytest.mark.gl
def test_a_fixed_view_is_reached(view: BedView, qtbot: QtBot) -> None:
    view.look_from("above")

    qtbot.waitUntil(lambda: view.canvas.camera.elevation == 90)


# ---------------------------------------------------------------- picking and drawers


@pytest.mark.gl
@pytest.mark.parametrize("name", ["front", "pull"])
def test_a_click_tells_the_piece_under_the_mouse(view: BedView, qtbot: QtBot, name: str) -> None:
    view.show_dimensions(False)
    piece = piece_named(view, name, "right-2")

    at = middle_of(view, piece)
    if name == "front":
        at += QPoint(18, -18)  # beside its pull

    with qtbot.waitSignal(view.picked) as told:
        qtbot.mouseClick(view.canvas, LEFT, pos=at)

    assert told.args == [piece]


@pytest.mark.gl
def test_a_click_beside_the_bed_tells_that_there_is_nothing(view: BedView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.picked) as told:
        qtbot.mouseClick(view.canvas, LEFT, pos=QPoint(20, 20))

    assert told.args == [-1]


@pytest.mark.gl
def test_a_moved_piece_is_picked_where_it_is_seen(view: BedView, qtbot: QtBot) -> None:
    view.show_dimensions(False)
    view.pull_drawers(1.0, ["right-2"])
    piece = piece_named(view, "pull", "right-2")

    with qtbot.waitSignal(view.picked) as told:
        qtbot.mouseClick(view.canvas, LEFT, pos=middle_of(view, piece))

    assert told.args == [piece]


@pytest.mark.gl
def test_the_hidden_mattress_lets_slats_be_picked(view: BedView, qtbot: QtBot) -> None:
    view.look_from("above")
    qtbot.waitUntil(lambda: view.canvas.camera.elevation == 90)
    slat = piece_named(view, "slat")
    at = middle_of(view, slat)

    told = []
    view.picked.connect(told.append)
    qtbot.mouseClick(view.canvas, LEFT, pos=at)
    view.show_mattress(False)
    qtbot.mouseClick(view.canvas, LEFT, pos=at)

    assert told == [piece_named(view, "mattress"), slat]


@pytest.mark.gl
def test_turning_the_bed_picks_nothing(view: BedView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(view.picked):
        drag(qtbot, view, QPoint(400, 200), QPoint(60, 0), LEFT)


@pytest.mark.gl
def test_a_front_dragged_outwards_opens_its_drawer(view: BedView, qtbot: QtBot) -> None:
    camera = view.canvas.camera
    front = piece_named(view, "pull", "right-1")

    with qtbot.waitSignal(view.drawer_moved) as told:
        drag(qtbot, view, middle_of(view, front), QPoint(40, 14), LEFT)

    assert told.args[0] == "right-1"
    assert 0.1 < view.drawers["right-1"] < 1.0
    assert view.drawers["right-2"] == 0.0
    assert view.canvas.camera == camera


@pytest.mark.gl
def test_a_double_click_opens_a_drawer_and_closes_it_again(view: BedView, qtbot: QtBot) -> None:
    front = piece_named(view, "pull", "right-1")
    qtbot.mouseDClick(view.canvas, LEFT, pos=middle_of(view, front))
    qtbot.waitUntil(lambda: view.drawers["right-1"] == 1.0)

    qtbot.mouseDClick(view.canvas, LEFT, pos=middle_of(view, front))

    qtbot.waitUntil(lambda: view.drawers["right-1"] == 0.0)


@pytest.mark.gl
def test_an_open_drawer_stays_open_when_the_bed_changes(view: BedView) -> None:
    view.pull_drawers(0.6, ["left-1"])
    wider = SampleBed(width=1930)

    view.show_bed(wider, sample_mesh(wider))

    assert view.drawers == {"left-1": 0.6, "left-2": 0.0, "right-1": 0.0, "right-2": 0.0}


@pytest.mark.gl
def test_a_click_on_a_number_asks_for_its_dimension(view: BedView, qtbot: QtBot) -> None:
    view.canvas.grabFramebuffer()
    plates = {name: plate for plate, name in view._hand.plates}
    at = plates["bed_width"].center().toPoint()

    with qtbot.waitSignal(view.dimension_picked) as told, qtbot.assertNotEmitted(view.picked):
        qtbot.mouseClick(view.canvas, LEFT, pos=at)

    assert told.args == ["bed_width"]


@pytest.mark.gl
def test_the_piece_under_the_mouse_is_told(view: BedView, qtbot: QtBot) -> None:
    piece = piece_named(view, "pull", "right-1")

    with qtbot.waitSignal(view.hovered) as told:
        qtbot.mouseMove(view.canvas, middle_of(view, piece))

    assert told.args == [piece]


@pytest.mark.gl
def test_an_export_leaves_the_numbers_on_screen_where_they_are(view: BedView) -> None:
    view.canvas.grabFramebuffer()
    on_screen = view._hand.plates

    view.render_image(1600, 1200, view="head")

    assert view._hand.plates == on_screen != ()


# ---------------------------------------------------------------- the whole bed


def is_whole(view: BedView) -> bool:
    points = corners(view.stage.bounds)
    x, y, _ = view.canvas.camera.project(points, view.canvas.picture).T
    picture = view.canvas.picture
    return bool(((x >= 0) & (x <= picture.width) & (y >= 0) & (y <= picture.height)).all())


@pytest.mark.gl
def test_the_bed_stays_whole_when_a_banner_takes_room(view: BedView, qtbot: QtBot) -> None:
    view.canvas.grabFramebuffer()
    before = view.canvas.camera

    view.window().resize(1000, 320)
    qtbot.waitUntil(lambda: view.canvas.picture.height < 400)
    view.canvas.grabFramebuffer()
    assert is_whole(view)

    view.window().resize(1000, 700)
    qtbot.waitUntil(lambda: view.canvas.picture.height > 600)
    view.canvas.grabFramebuffer()
    assert view.canvas.camera == before


@pytest.mark.gl
@pytest.mark.parametrize(
    "change", [lambda view: view.pull_apart(1.0), lambda view: view.pull_drawers(1.0)]
)
def test_the_bed_stays_whole_when_it_is_opened(
    view: BedView, change: Callable[[BedView], None]
) -> None:
    view.canvas.grabFramebuffer()

    change(view)
    view.canvas.grabFramebuffer()

    assert is_whole(view)
