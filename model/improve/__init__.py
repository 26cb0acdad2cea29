"""What would make a failed or tight check hold: one change, found by building."""

from model.improve.record import Improvement
from model.improve.search import NOTHING, Answer, improvement, improvements

__all__ = ["NOTHING", "Answer", "Improvement", "improvement", "improvements"]
