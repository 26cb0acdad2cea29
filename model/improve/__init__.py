"""What would make a failed or tight check hold: one change, found by building."""

from model.improve.answers import NOTHING, Answer, improvement, improvements
from model.improve.record import Improvement

__all__ = ["NOTHING", "Answer", "Improvement", "improvement", "improvements"]
