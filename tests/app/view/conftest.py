"""A sample bed, its scene, and the view that shows it in a window of 1000 x 700."""

from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QWidget

from app.view.bed_view import BedView
from app.view.scene import Scene, scene_of
from tests.app.view.sample_bed import SampleBed, sample_mesh


@pytest.fixture
def bed() -> SampleBed:
    return SampleBed()


@pytest.fixture
def scene(bed: SampleBed) -> Scene:
    return scene_of(bed, sample_mesh(bed))  # type: ignore[arg-type]


@pytest.fixture
def view(bed: SampleBed, shown: Callable[[QWidget], QWidget]) -> BedView:
    made = BedView()
    made.resize(1000, 700)
    made.show_bed(bed, sample_mesh(bed))  # type: ignore[arg-type]
    shown(made)
    return made
