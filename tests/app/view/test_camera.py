import numpy as np
import pytest

from app.view.camera import VIEWS, Camera, Picture, corners

PICTURE = Picture(1000, 700)
BED = corners(((-830.0, 0.0, 0.0), (830.0, 2180.0, 1150.0)))


def test_the_centre_is_in_the_middle_of_the_picture() -> None:
    camera = Camera(centre=(100.0, 200.0, 300.0))

    x, y, depth = camera.project(np.array([camera.centre]), PICTURE)[0]

    assert (x, y, depth) == pytest.approx((500, 350, camera.distance))


@pytest.mark.parametrize("is_parallel", [False, True])
def test_the_ray_through_a_point_of_the_picture_meets_the_point_of_the_bed(
    is_parallel: bool,
) -> None:
    camera = Camera(centre=(0.0, 900.0, 300.0), is_parallel=is_parallel)
    point = np.array((700.0, 300.0, 400.0))
    x, y, _ = camera.project(point[None], PICTURE)[0]

    origin, direction = camera.ray(x, y, PICTURE)

    beside = np.cross(direction, point - origin)
    assert np.linalg.norm(beside) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("is_parallel", [False, True])
def test_what_opengl_draws_lies_where_points_are_projected(is_parallel: bool) -> None:
    """Numbers are painted by the one, the bed by the other."""
    camera = Camera(centre=(0.0, 900.0, 300.0), is_parallel=is_parallel)
    matrix = camera.projection_matrix(PICTURE, 3000.0) @ camera.view_matrix()

    clip = np.column_stack((BED, np.ones(8))) @ matrix.T
    screen = (clip[:, :2] / clip[:, 3:] * (1, -1) + 1) / 2 * PICTURE

    assert screen == pytest.approx(camera.project(BED, PICTURE)[:, :2])
    assert (abs(clip[:, 2]) <= clip[:, 3]).all()


@pytest.mark.parametrize("is_parallel", [False, True])
@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("picture", [PICTURE, Picture(400, 900)])
def test_a_fitted_bed_fills_the_picture_and_stays_inside(
    view: str, is_parallel: bool, picture: Picture
) -> None:
    camera = Camera(is_parallel=is_parallel).turned_to(view).fitted(BED, picture, margin=1.1)

    seen = camera.project(BED, picture)[:, :2]
    used = (seen.max(0) - seen.min(0)) / picture

    assert (seen >= 0).all() and (seen <= picture).all()
    assert used.max() == pytest.approx(1 / 1.1, abs=0.03)  # perspective settles in steps


def test_what_lies_under_the_mouse_stays_there_while_zooming() -> None:
    camera = Camera(centre=(0.0, 900.0, 300.0))
    at = (800.0, 150.0)
    right, up, _ = camera.axes
    step = camera.mm_per_pixel(PICTURE)
    point = np.asarray(camera.centre) + (300 * right + 200 * up) * step

    nearer = camera.zoomed(0.5, at, PICTURE)

    assert nearer.distance == pytest.approx(camera.distance / 2)
    assert nearer.project(point[None], PICTURE)[0, :2] == pytest.approx(at)


def test_panning_takes_the_centre_along_with_the_mouse() -> None:
    camera = Camera(centre=(0.0, 900.0, 300.0))
    was = np.array([camera.centre])

    moved = camera.panned(40, -25, PICTURE)

    assert moved.project(was, PICTURE)[0, :2] == pytest.approx((540, 325))


def test_turning_stops_overhead() -> None:
    assert Camera().orbited(0, 500).elevation == 90
    assert Camera().orbited(0, -500).elevation < 0


def test_gliding_takes_the_short_way_round() -> None:
    start, end = Camera(azimuth=170.0), Camera(azimuth=-170.0)

    assert start.towards(end, 0.5).azimuth % 360 == pytest.approx(180)


def test_standing_at_the_foot_left_is_left() -> None:
    """Left and right are as seen from the foot, facing the head."""
    seen = Camera().turned_to("foot").project(np.array([(-500, 0, 0), (500, 0, 0)]), PICTURE)

    assert seen[0, 0] < seen[1, 0]
