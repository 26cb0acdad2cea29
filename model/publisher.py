"""Who publishes a plan set: the shop's name, a line below it, and its logo."""

from __future__ import annotations

import base64
import binascii
import io
import warnings
from dataclasses import dataclass, replace
from typing import Any

from model.errors import BadInput

LARGEST_FILE = 30_000_000  # bytes: a logo is no poster
LARGEST_SIDE = 1200  # px: 300 to the inch at 4 inches
MOST_PIXELS = 60_000_000  # a picture with more would fill the memory before it is made smaller
LONGEST_LINE = 120  # characters


@dataclass(frozen=True, kw_only=True)
class Publisher:
    """`logo` is a PNG file, or empty."""

    name: str = ""
    line: str = ""
    logo: bytes = b""

    def with_logo(self, file: bytes) -> Publisher:
        """The same with the picture in a file as its logo; refused as `logo_of` refuses."""
        return replace(self, logo=logo_of(file))


UNNAMED = Publisher()


def logo_of(file: bytes) -> bytes:
    """A picture of any common kind and size as a PNG that is fit for a page.

    Refused with BadInput: a file that is no picture, is broken, or is far too large.
    """
    from PIL import Image

    if len(file) > LARGEST_FILE:
        raise BadInput(
            "logo", f"The logo is larger than {LARGEST_FILE // 10**6} MB; save it smaller."
        )
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            with Image.open(io.BytesIO(file)) as picture:
                return _as_png(picture)
    except BadInput:
        raise
    except (OSError, ValueError, SyntaxError, EOFError, Warning, Image.DecompressionBombError):
        raise BadInput(
            "logo", "The logo cannot be read as a picture; save it as PNG or JPEG and try again."
        ) from None


def _as_png(picture: Any) -> bytes:
    if picture.width * picture.height > MOST_PIXELS:
        raise BadInput(
            "logo",
            f"The logo has {picture.width} by {picture.height} pixels; {LARGEST_SIDE} on its "
            "longer side are enough for print.",
        )
    is_clear = picture.mode in ("RGBA", "LA", "PA") or "transparency" in picture.info
    made = picture.convert("RGBA" if is_clear else "RGB")
    made.thumbnail((LARGEST_SIDE, LARGEST_SIDE))
    file = io.BytesIO()
    made.save(file, "PNG")
    return file.getvalue()


# ---------------------------------------------------------------- in a design file


def record_of(publisher: Publisher) -> dict[str, str]:
    """What a design file holds of it: only what is given."""
    logo = base64.b64encode(publisher.logo).decode("ascii")
    told = {"name": publisher.name, "line": publisher.line, "logo": logo}
    return {key: value for key, value in told.items() if value}


def publisher_of(record: Any) -> Publisher:
    """The publisher in a design file; refused with BadInput: what is none."""
    if not isinstance(record, dict):
        raise BadInput("publisher", "publisher must be a list of names and values in braces {}.")
    for key, value in record.items():
        if key not in ("name", "line", "logo"):
            raise BadInput("publisher", f"publisher holds {key!r}; it knows name, line and logo.")
        if not isinstance(value, str):
            raise BadInput("publisher", f"{key} of the publisher must be a text.")
    return Publisher(
        name=checked_line(record.get("name", ""), "shop's name"),
        line=checked_line(record.get("line", ""), "line below the shop's name"),
        logo=_logo(record.get("logo", "")),
    )


def checked_line(words: str, called: str) -> str:
    """One line of text that has room on a page; refused with BadInput."""
    line = " ".join(words.split())
    if len(line) > LONGEST_LINE:
        raise BadInput("publisher", f"The {called} is longer than {LONGEST_LINE} characters.")
    if not line.isprintable():
        raise BadInput("publisher", f"The {called} holds characters that cannot be printed.")
    return line


def _logo(text: str) -> bytes:
    try:
        file = base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        raise BadInput("publisher", "The logo in the design is damaged; choose it anew.") from None
    return logo_of(file) if file else b""
