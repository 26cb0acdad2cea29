import numpy as np
import numpy.typing as npt
import pytest

from app.view.camera import VIEWS, Camera, Picture, corners
from app.view.clearance_lines import clearance_lines, lines_to_draw
from app.view.dimension_lines import dimension_lines
from app.view.line_choice import Drawn, chosen
from app.view.scene import Scene
from tests.app.view.sample_bed import SampleBed

PICTURE = Picture(1000, 700)


def seen_by(
    camera: Camera, bed: SampleBed, scene: Scene
) -> tuple[dict[str, Drawn], npt.NDArray[np.float64]]:
    """The lines by their group, and the corners of the bed, as a fitted camera sees them."""
    box = corners(scene.bounds)  # type: ignore[arg-type]
    fitted = camera.fitted(box, PICTURE, 1.3)
    lines = chosen(dimension_lines(bed), fitted, PICTURE, scene.bounds)  # type: ignore[arg-type]
    return {each.dimension.group: each for each in lines}, fitted.project(box, PICTURE)


def drawn_from(view: str, bed: SampleBed, scene: Scene) -> dict[str, Drawn]:
    return seen_by(Camera().turned_to(view), bed, scene)[0]


def test_every_line_is_as_long_as_its_number_says(bed: SampleBed) -> None:
    everything = range(len(bed.pieces))
    for line in (*dimension_lines(bed), *clearance_lines(bed, everything)):  # type: ignore[arg-type]
        assert np.linalg.norm(np.subtract(line.end, line.start)) == pytest.approx(line.value)


def test_every_number_carries_the_full_name_of_its_dimension(bed: SampleBed) -> None:
    everything = range(len(bed.pieces))
    for line in (*dimension_lines(bed), *clearance_lines(bed, everything)):  # type: ignore[arg-type]
        assert bed[line.name] == line.value


def test_each_dimension_is_drawn_once(bed: SampleBed, scene: Scene) -> None:
    assert set(drawn_from("corner", bed, scene)) == {
        *("bed_width", "bed_length", "rail_top", "sleeping_height", "head.end_height_built"),
        *("opening", "opening_height"),
    }


@pytest.mark.parametrize("azimuth", range(-170, 181, 25))
def test_heights_stand_beside_the_bed_from_wherever_it_is_seen(
    azimuth: int, bed: SampleBed, scene: Scene
) -> None:
    camera = Camera(azimuth=azimuth, elevation=20)

    drawn, outline = seen_by(camera, bed, scene)

    for name in ("rail_top", "sleeping_height", "head.end_height_built"):
        x = drawn[name].line[:, 0]
        assert x.max() < outline[:, 0].min() or x.min() > outline[:, 0].max()


def test_width_and_length_are_written_on_the_near_sides(bed: SampleBed, scene: Scene) -> None:
    drawn, _ = seen_by(Camera(azimuth=130, elevation=20), bed, scene)  # from the head, on the left

    assert drawn["bed_width"].dimension.start[1] == bed["bed_length"]
    assert drawn["bed_length"].dimension.start[0] < 0


def test_a_line_that_runs_away_from_the_eye_is_left_out(bed: SampleBed, scene: Scene) -> None:
    assert "bed_length" not in drawn_from("foot", bed, scene)
    assert "bed_width" not in drawn_from("left", bed, scene)
    assert "rail_top" not in drawn_from("above", bed, scene)


def test_openings_are_measured_on_the_side_that_is_seen(bed: SampleBed, scene: Scene) -> None:
    assert drawn_from("left", bed, scene)["opening"].dimension.name == "left.opening_width"
    assert drawn_from("right", bed, scene)["opening"].dimension.name == "right.opening_width"
    assert "opening" not in drawn_from("foot", bed, scene)


def test_a_selected_drawer_shows_its_clearances_instead_of_its_opening(bed: SampleBed) -> None:
    front = [part.name for part in bed.pieces.parts].index("front")

    lines = lines_to_draw(bed, [front], {})  # type: ignore[arg-type]

    assert {each.word for each in lines if each.is_clearance} == {"side", "above", "below", "floor"}
    assert not [each for each in lines if each.group.startswith("opening")]


def test_a_selected_slat_shows_the_gaps_on_both_sides(bed: SampleBed) -> None:
    first = [part.name for part in bed.pieces.parts].index("slat")

    names = [each.name for each in clearance_lines(bed, [first])]  # type: ignore[arg-type]

    assert names == ["slat_end_gap", "slat_spacer"]


def test_a_gap_between_two_selected_slats_is_measured_once(bed: SampleBed, scene: Scene) -> None:
    first = [part.name for part in bed.pieces.parts].index("slat")
    lines = clearance_lines(bed, [first + 3, first + 4])  # type: ignore[arg-type]

    drawn = chosen(lines, Camera().turned_to(next(iter(VIEWS))), PICTURE, scene.bounds)

    assert len(lines) == 4
    assert len(drawn) == 3


def test_the_length_runs_beyond_open_drawers(bed: SampleBed) -> None:
    def far(reach: dict[str, float], side: int) -> float:
        lines = lines_to_draw(bed, [], reach)  # type: ignore[arg-type]
        runs = (line.line[0][0] for line in lines if line.name == "bed_length")
        return next(x for x in runs if x * side > 0)

    assert far({"right": 700.0}, 1) == far({}, 1) + 700.0
    assert far({"right": 700.0}, -1) == far({}, -1)
    assert far({"left": 700.0}, -1) == far({}, -1) - 700.0
