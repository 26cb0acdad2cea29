"""The strength view: coloured, bent and explained; never in the colours of another bed."""

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.view.bed_view import BedView
from app.view.scene import scene_of
from app.view.strength_look import AS_SUITS, LATE, STILL, WORST_TITLE
from app.view.use_scale import PAST, STEPS, STRIPE, STRIPE_WIDTH
from model.structure.bent import Body, body
from model.structure.record import Carried
from tests.app.sample_carried import sample_carried
from tests.app.view.sample_bed import SampleBed, sample_mesh
from tests.app.view.test_bed_view import changed_share, middle_of, piece_named, pixels

FLAT = (0.91, 1.0)  # how dark and how bright the lamp makes a colour of the scale


def strength(bed: Any, most: float = 1.3) -> tuple[Carried, Body]:
    carried = sample_carried(bed, most)
    mesh = sample_mesh(bed)
    # one normal per triangle, as the model's mesh has them
    return carried, body(SimpleNamespace(**vars(mesh)), carried)  # type: ignore[arg-type]


def strength_at(bed: Any, piece: int, use: float) -> tuple[Carried, Body]:
    """Such that a piece works at this share of its limit, lying."""
    at_one = sample_carried(bed, 1.0).curve(piece, 0).use.max()
    return strength(bed, use / at_one)


def share_of(image: QImage, colour: tuple[float, float, float]) -> float:
    """How much of the picture has a colour of the scale, lit by the lamp or less so."""
    seen = pixels(image).reshape(-1, 3) / 255
    low, high = (np.array(colour) * lit for lit in FLAT)
    return float(((seen >= low - 0.012) & (seen <= high + 0.012)).all(1).mean())


@pytest.fixture
def by_strength(view: BedView, bed: SampleBed) -> BedView:
    view.show_dimensions(False)
    view.colour_by("strength")
    view.show_strength(bed, *strength(bed))  # type: ignore[arg-type]
    return view


def slat_of(view: BedView) -> int:
    return piece_named(view, "slat")


# ---------------------------------------------------------------- colours


@pytest.mark.gl
def test_each_step_of_the_scale_is_what_a_slat_is_drawn_in(
    by_strength: BedView, bed: SampleBed
) -> None:
    slat = slat_of(by_strength)
    by_strength.show_load("lying", STILL)
    by_strength.canvas.look(by_strength.canvas.camera.turned_to("above"))
    place = middle_of(by_strength, slat)
    for use, step in zip((0.22, 0.4, 0.6, 0.9), STEPS, strict=True):
        by_strength.show_strength(bed, *strength_at(bed, slat, use))  # type: ignore[arg-type]

        middle = by_strength.render_image(1000, 700).copy(place.x() - 2, place.y() - 1, 5, 3)

        assert share_of(middle, step.colour) == 1.0


@pytest.mark.gl
def test_a_side_that_is_turned_from_the_lamp_keeps_its_step(
    by_strength: BedView, bed: SampleBed
) -> None:
    """From the corner at the foot, the right side is seen edgeways to the lamp."""
    looks = by_strength.stage.scene.looks
    rail = next(k for k, look in enumerate(looks) if look[:2] == ("top rail", "right side"))
    by_strength.show_load("lying", STILL)
    by_strength.show_strength(bed, *strength_at(bed, rail, 0.6))  # type: ignore[arg-type]
    low, high = (corner[rail] for corner in by_strength.stage.boxes)
    outer = np.array([(high[0], (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)])
    x, y, _ = by_strength.canvas.camera.project(outer, by_strength.canvas.picture)[0].round()

    middle = by_strength.render_image(1000, 700).copy(int(x) - 2, int(y) - 2, 5, 5)

    assert share_of(middle, STEPS[2].colour) == 1.0


@pytest.mark.gl
def test_past_the_limit_there_are_stripes(by_strength: BedView, bed: SampleBed) -> None:
    slat = slat_of(by_strength)
    by_strength.show_load("lying", STILL)
    by_strength.canvas.look(by_strength.canvas.camera.turned_to("above"))
    place = middle_of(by_strength, slat)
    by_strength.show_strength(bed, *strength_at(bed, slat, 1.2))  # type: ignore[arg-type]

    middle = by_strength.render_image(1000, 700, samples=0)
    middle = middle.copy(place.x() - 28, place.y() - 3, 56, 7)  # 8 stripes and what is between

    dark, light = share_of(middle, PAST), share_of(middle, STRIPE)
    assert dark + light == pytest.approx(1.0)
    assert light == pytest.approx(0.5, abs=0.08)


@pytest.mark.gl
def test_stripes_are_as_wide_for_their_picture_in_a_large_one(
    by_strength: BedView, bed: SampleBed
) -> None:
    slat = slat_of(by_strength)
    by_strength.show_load("lying", STILL)
    by_strength.show_strength(bed, *strength_at(bed, slat, 1.2))  # type: ignore[arg-type]

    picture = by_strength.render_image(3000, 2100, samples=0, view="above")

    along = pixels(picture.copy(1300, 0, 400, 2100))
    dark = abs(along / 255 - np.array(PAST) * 0.98).max(2) < 0.05
    row = dark[dark.sum(1).argmax()]  # through the middle of a slat
    runs = np.diff(np.flatnonzero(np.diff(row.astype(int))))
    assert np.median(runs) == pytest.approx(3 * STRIPE_WIDTH, abs=1)


@pytest.mark.gl
def test_nothing_is_striped_that_holds(by_strength: BedView, bed: SampleBed) -> None:
    carried, made = strength(bed, 0.9)
    by_strength.show_strength(bed, carried, made)  # type: ignore[arg-type]
    by_strength.show_load("lying", STILL)

    picture = pixels(by_strength.render_image(1000, 700, view="above"))[:560]  # above the scale

    seen = picture.reshape(-1, 3) / 255
    assert float((abs(seen - np.array(PAST)).max(1) < 0.02).mean()) < 0.0005


@pytest.mark.gl
def test_what_is_no_part_of_the_frame_stays_grey(by_strength: BedView) -> None:
    by_strength.canvas.look(by_strength.canvas.camera.turned_to("head"))
    panel = middle_of(by_strength, piece_named(by_strength, "panel"))

    picture = pixels(by_strength.render_image(1000, 700))

    red, green, blue = picture[panel.y(), panel.x()]
    assert max(red, green, blue) - min(red, green, blue) < 16


@pytest.mark.gl
def test_the_mattress_is_put_aside_and_comes_back(by_strength: BedView) -> None:
    assert not by_strength.stage.style.shows_mattress

    by_strength.colour_by("wood")

    assert by_strength.stage.style.shows_mattress


@pytest.mark.gl
def test_a_click_goes_through_the_glass_to_the_frame(by_strength: BedView, qtbot: QtBot) -> None:
    by_strength.canvas.look(by_strength.canvas.camera.turned_to("foot"))
    slat = slat_of(by_strength)
    place = middle_of(by_strength, slat)  # the footboard stands before it

    origin, direction = by_strength.canvas.camera.ray(
        place.x(), place.y(), by_strength.canvas.picture
    )

    by_strength.render_image(200, 140)  # the frame is sent
    assert by_strength.stage.piece_on(origin, direction) == slat


@pytest.mark.gl
def test_a_chosen_piece_keeps_its_colour_and_gets_an_outline(by_strength: BedView) -> None:
    before = by_strength.render_image(1000, 700)
    slat = slat_of(by_strength)

    by_strength.select([slat])
    after = by_strength.render_image(1000, 700)

    assert 0.0005 < changed_share(before, after) < 0.03
    assert by_strength.stage.style.worked >= {slat}


# ---------------------------------------------------------------- bent


@pytest.mark.gl
def test_the_frame_sinks_by_the_drawn_sag(by_strength: BedView, bed: SampleBed) -> None:
    carried, made = strength(bed)
    slat = slat_of(by_strength)
    deepest = float(-carried.curve(slat, 1).moved[:, 2].min())

    by_strength.show_load("kneeling", 7.0)

    drawn = by_strength.stage.strain.triangles[made.piece == slat]
    still = made.triangles[made.piece == slat]
    assert (still - drawn)[..., 2].max() == pytest.approx(7.0 * deepest, rel=1e-5)
    assert by_strength.strength.told.foot == "Movement drawn 7 times"


@pytest.mark.gl
def test_a_factor_that_suits_draws_a_twentieth_of_the_bed_at_most(by_strength: BedView) -> None:
    by_strength.show_load("kneeling", AS_SUITS)

    strain = by_strength.stage.strain
    drawn = abs(strain.triangles - strain.body.triangles).max()
    length = by_strength.stage.bounds[1][1] - by_strength.stage.bounds[0][1]
    assert 0.02 * length < drawn <= 0.0501 * length


@pytest.mark.gl
def test_the_worst_of_all_has_no_shape(by_strength: BedView) -> None:
    """Each piece is at its worst in another load case: there is no such shape."""
    by_strength.show_load("", 50.0)

    assert not by_strength.stage.strain.is_bent
    assert by_strength.strength.told.title == WORST_TITLE


@pytest.mark.gl
def test_a_load_of_many_places_is_bent_in_the_worst_and_coloured_by_all(
    by_strength: BedView, bed: SampleBed
) -> None:
    carried, made = strength(bed)
    places = replace(carried, cases=(carried.cases[1], carried.cases[1]))
    by_strength.show_strength(bed, places, made)  # type: ignore[arg-type]

    by_strength.show_load("kneeling", 10.0)

    strain = by_strength.stage.strain
    assert (strain.cases, strain.shape) == ((0, 1), 1)
    assert by_strength.strength.told.foot == "Movement drawn 10 times, the worst of 2 places"


@pytest.mark.gl
def test_the_unloaded_outline_stays_behind_the_bent_frame(by_strength: BedView) -> None:
    by_strength.show_load("kneeling", STILL)
    by_strength.render_image(200, 140)
    assert by_strength.stage.worked.still.corners == 0

    by_strength.show_load("kneeling", 20.0)
    by_strength.render_image(200, 140)

    assert by_strength.stage.worked.still.corners == by_strength.stage.worked.edges.corners > 0


@pytest.mark.gl
def test_the_frame_comes_along_when_the_bed_is_pulled_apart(by_strength: BedView) -> None:
    by_strength.render_image(200, 140)
    before = by_strength.stage.worked.triangles.copy()

    by_strength.pull_apart(1.0)
    by_strength.render_image(200, 140)

    assert abs(by_strength.stage.worked.triangles - before).max() > 100


# ---------------------------------------------------------------- written over it


@pytest.mark.gl
def test_the_scale_is_in_the_picture_with_every_step(by_strength: BedView) -> None:
    picture = by_strength.render_image(1600, 1000).copy(0, 700, 480, 300)

    for colour in (*(step.colour for step in STEPS), PAST, STRIPE):
        seen = pixels(picture).reshape(-1, 3) / 255
        assert (abs(seen - np.array(colour)).max(1) < 0.008).sum() > 50


@pytest.mark.gl
def test_the_title_names_the_load_case(by_strength: BedView) -> None:
    by_strength.show_load("lying", AS_SUITS)

    assert by_strength.strength.told.title == "Two sleepers lying"
    assert "times" in by_strength.strength.told.foot
    assert by_strength.accessibleDescription().startswith("Two sleepers lying. Movement drawn ")
    by_strength.colour_by("wood")
    assert by_strength.accessibleDescription() == ""


@pytest.mark.gl
def test_the_window_and_an_export_show_the_same_strength(by_strength: BedView) -> None:
    by_strength.show_load("kneeling")
    on_screen = by_strength.canvas.grabFramebuffer()

    exported = by_strength.render_image(on_screen.width(), on_screen.height(), samples=0)

    assert changed_share(on_screen, exported) < 0.02  # text is smoothed otherwise


# ---------------------------------------------------------------- which bed


@pytest.mark.gl
def test_the_last_bed_stays_until_the_next_one_is_worked_out(
    by_strength: BedView, bed: SampleBed
) -> None:
    wider = SampleBed(width=1700)
    by_strength.show_bed(wider, sample_mesh(wider))  # type: ignore[arg-type]
    assert by_strength.bed is bed

    by_strength.show_strength(wider, *strength(wider))  # type: ignore[arg-type]

    assert by_strength.bed is wider
    assert by_strength.stage.strain is not None


@pytest.mark.gl
def test_another_scene_knows_nothing_of_the_last_one_s_strength(by_strength: BedView) -> None:
    wider = SampleBed(width=1700)

    by_strength.stage.show(scene_of(wider, sample_mesh(wider)))  # type: ignore[arg-type]

    assert by_strength.stage.strain is None


@pytest.mark.gl
def test_after_some_patience_the_next_bed_is_shown_without_colours(
    by_strength: BedView, qtbot: QtBot
) -> None:
    wider = SampleBed(width=1700)

    by_strength.show_bed(wider, sample_mesh(wider))  # type: ignore[arg-type]
    qtbot.waitUntil(lambda: by_strength.bed is wider, timeout=2000)

    assert by_strength.stage.strain is None
    assert by_strength.strength.told.title == LATE
    picture = pixels(by_strength.render_image(1000, 700)).reshape(-1, 3)
    assert float((picture.max(1) - picture.min(1) > 40).mean()) < 0.001  # all of it is grey


@pytest.mark.gl
def test_a_late_answer_for_another_bed_is_dropped(by_strength: BedView, bed: SampleBed) -> None:
    wider = SampleBed(width=1700)
    by_strength.show_bed(wider, sample_mesh(wider))  # type: ignore[arg-type]
    by_strength.show_strength(wider, *strength(wider))  # type: ignore[arg-type]
    shown = by_strength.stage.strain

    by_strength.show_strength(bed, *strength(bed))  # type: ignore[arg-type]

    assert by_strength.stage.strain is shown


@pytest.mark.gl
def test_a_bed_that_cannot_be_reckoned_says_why(by_strength: BedView, bed: SampleBed) -> None:
    by_strength.show_no_strength(bed, "The beam stands on nothing.")  # type: ignore[arg-type]

    assert by_strength.stage.strain is None
    assert by_strength.strength.told.title == "The beam stands on nothing."


@pytest.mark.gl
def test_a_load_case_stays_chosen_by_its_key(by_strength: BedView, bed: SampleBed) -> None:
    by_strength.show_load("kneeling")
    wider = SampleBed(width=1700)

    by_strength.show_bed(wider, sample_mesh(wider))  # type: ignore[arg-type]
    by_strength.show_strength(wider, *strength(wider))  # type: ignore[arg-type]

    assert by_strength.stage.strain.shape == 1


def test_without_opengl_the_strength_is_kept_all_the_same(
    monkeypatch: pytest.MonkeyPatch, bed: SampleBed, shown: Callable[[QWidget], QWidget]
) -> None:
    monkeypatch.setattr("app.view.bed_view.renderer", lambda: "")
    view = BedView()
    shown(view)

    view.colour_by("strength")
    view.show_bed(bed, sample_mesh(bed))  # type: ignore[arg-type]
    view.show_strength(bed, *strength(bed))  # type: ignore[arg-type]
    view.show_load("lying")

    assert view.strength.told.title == "Two sleepers lying"
