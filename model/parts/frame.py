"""Frames, where parts are laid out."""

from model.frame import BED, Frame, end_frame_at, side_frame_at

__all__ = ["BED", "Frame", "end_frame_at", "side_frame_at"]
