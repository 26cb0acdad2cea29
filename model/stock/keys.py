"""What bought stock is called in a price list; the same for every bed, so that a list lasts."""

from __future__ import annotations

from model.units import Mm


def sheet_key(material: str, length: Mm, width: Mm) -> str:
    """A sheet of one size: `sheet/birch_ply_12/2440x1220`."""
    return f"sheet/{material}/{length:.0f}x{width:.0f}"


def lumber_key(material: str, thickness: Mm) -> str:
    """Boards that are billed by their measure, by rough thickness: `boards/red_maple/31.75`."""
    return f"boards/{material}/{round(thickness, 2):g}"


def board_key(material: str, thickness: Mm, length: Mm, width: Mm) -> str:
    """Boards of one size, billed by the piece: `boards/red_maple/38.1/2438x139.7`."""
    return f"{lumber_key(material, thickness)}/{length:.0f}x{round(width, 1):g}"
