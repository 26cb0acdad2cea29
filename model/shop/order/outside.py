"""Which face of a part looks out of the bed. What lies in the middle of a thickness is made from
this face: then parts that meet agree there, however thick the stock has come out.
"""

from __future__ import annotations

from model.bed import Bed
from model.part import Face
from model.parts.marks import Mark
from model.shop.order.jobs import Job
from model.units import Mm

_SAME: Mm = 1e-3
_ALONG = 0.9  # of a unit vector: what lies along a bed axis and not at a slant


def from_outside(bed: Bed, mark: Mark, job: Job) -> Job:
    """The same cut or hole, counted from the outer face where it is as far from both."""
    spot = job.spot
    outer = outer_face(bed, mark) if spot.against.axis == Face.FACE.axis else None
    if outer is None or not _is_centred(job, float(mark.thickness)):
        return job
    return job._replace(spot=spot._replace(against=outer))


def outer_face(bed: Bed, mark: Mark) -> Face | None:
    """The face or back of a mark's first piece, whichever looks away from the middle of the bed;
    None for what lies flat or is not told.
    """
    matrix, size = mark.matrices[0], mark.part.size
    middle = (0.0, bed["bed_length"] / 2)
    centre = matrix[:3, :3] @ [side / 2 for side in size] + matrix[:3, 3]
    for axis in (0, 1):
        way, off = float(matrix[axis, 2]), float(centre[axis]) - middle[axis]
        if abs(way) > _ALONG and abs(off) > size[2]:
            return Face.FACE if way * off > 0 else Face.BACK
    return None


def _is_centred(job: Job, thickness: Mm) -> bool:
    told = {each.what: each.size for each in job.figures}
    return "fence" in told and (abs(2 * told["fence"] + told.get("width", 0.0) - thickness) < _SAME)
