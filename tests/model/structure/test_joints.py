"""Joints are taken out and put together without being changed."""

from __future__ import annotations

import numpy as np

from model.structure.joints import FLOOR, Contacts, joined
from tests.model.structure.frames_of_beds import demo


def test_some_and_the_others_are_all_of_them() -> None:
    joints = demo("loft_single").joints
    to_floor = joints.other == FLOOR

    again = joined(joints.only(to_floor), joints.only(~to_floor))

    order = np.argsort(~to_floor, kind="stable")
    for name in Contacts.__annotations__:
        assert (getattr(again, name) == getattr(joints, name)[order]).all(), name
