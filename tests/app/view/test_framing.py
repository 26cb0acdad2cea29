import pytest

from app.view.camera import Array, Camera, Picture, corners
from app.view.framing import Frame, Framing

WIDE, LOW = Picture(1000, 400), Picture(1000, 300)


def frame(picture: Picture, length: float = 2000.0) -> Frame:
    bed = corners(((-800.0, 0.0, 0.0), (800.0, length, 1200.0)))
    room: Array = bed + (260.0, 220.0, 0.0) * (2 * (bed > 100) - 1)
    return Frame(picture, (room, bed))


def framed(camera: Camera, start: Frame) -> Framing:
    made = Framing()
    made.kept(camera, start)
    return made


def test_a_bed_that_was_whole_stays_whole_in_a_lower_picture() -> None:
    wide, low = frame(WIDE), frame(LOW)
    camera = wide.fitted(Camera())
    assert not low.shows(camera, 0)

    kept = framed(camera, wide).kept(camera, low)

    assert low.shows(kept, 0)


def test_the_eye_comes_back_to_where_the_maker_had_put_it() -> None:
    wide, low = frame(WIDE), frame(LOW)
    camera = wide.fitted(Camera(azimuth=20.0))
    framing = framed(camera, wide)

    stepped_back = framing.kept(camera, low)

    assert framing.kept(stepped_back, wide) is camera


def test_a_near_look_stays_near() -> None:
    wide, low = frame(WIDE), frame(LOW)
    camera = Camera(centre=(0.0, 1000.0, 300.0), distance=800.0)

    assert framed(camera, wide).kept(camera, low) is camera


def test_a_near_look_that_the_maker_took_after_stepping_back_stays_near() -> None:
    wide, low = frame(WIDE), frame(LOW)
    camera = wide.fitted(Camera())
    framing = framed(camera, wide)
    framing.kept(camera, low)
    near = Camera(distance=800.0)

    assert framing.kept(near, wide) is near


@pytest.mark.parametrize("length", [1900.0, 4000.0])
def test_a_bed_that_grows_stays_whole_and_one_that_shrinks_moves_nothing(length: float) -> None:
    camera = frame(WIDE).fitted(Camera())

    kept = framed(camera, frame(WIDE)).kept(camera, frame(WIDE, length))

    assert frame(WIDE, length).shows(kept, 0)
    assert (kept is camera) == (length < 2000)


def test_what_moves_under_the_hand_does_not_move_the_eye() -> None:
    camera = frame(WIDE).fitted(Camera())
    framing = framed(camera, frame(WIDE))

    framing.accept(frame(WIDE, 4000.0))

    assert framing.kept(camera, frame(WIDE, 4000.0)) is camera
