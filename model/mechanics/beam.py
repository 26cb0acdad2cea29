"""What a slender beam leaves out."""

from __future__ import annotations

from model.units import Mm, Mpa, Newton, Share


def shear_sag(
    load: Newton, span: Mm, share: Share, width: Mm, height: Mm, shear_modulus: Mpa
) -> Mm:
    """What shear adds to the sag of a rectangular beam: ks W L / (G A'), A' = 5/6 b h.

    `share` is ks: on two supports 1/8 for an even load and 1/4 for one in the middle, for a
    cantilever 1/2 and, with the load at its end, 1. E from bending tests over 14 depths already
    contains this sag: with it, take E a tenth higher. Of a slat forty times as long as it is thick
    it is a hundredth of the sag by bending, so that frames leave it out.
    Source: Wood Handbook 2021 (FPL-GTR-282), eq 9-2 and 9-4, table 9-1; the tenth from memory
    """
    return share * load * span / (shear_modulus * 5 / 6 * width * height)
