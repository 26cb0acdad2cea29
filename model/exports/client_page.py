"""`client.html`: the bed for the client, to be turned and opened in a browser without a network.

Style, scripts, shapes and the picture are all inside, and the page forbids its browser to fetch
anything. What it says in words is in the page itself, so that it is read without scripts too.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Mapping
from html import escape
from importlib.resources import files
from pathlib import Path

from model.bed import Bed
from model.exports import client_bed, client_words
from model.exports.client_finishes import finishes
from model.exports.still_picture import SIZE, still_picture

_FOLDER = "client"
# In this order: each uses only what stands before it.
_SCRIPTS = (
    "matrix", "camera", "solids", "mattress", "shadow", "shaders", "painter", "scene", "picking",
    "hand", "drawers", "start",
)  # fmt: skip


def write(bed: Bed, path: Path) -> None:
    """Write the page."""
    path.write_text(page(bed), encoding="utf-8", newline="\n")


def page(bed: Bed) -> str:
    """The whole file."""
    worn = finishes(bed)
    style, script = _resource("style.css"), _script()
    width, height = SIZE
    has_drawers = any(bed.pieces.groups)
    parts = {
        "policy": _policy(style, script),
        "title": escape(client_words.title(bed)),
        "name": escape(bed.design.name),
        "style": style,
        "script": script,
        "shop": client_words.shop(bed),
        "described": escape(client_words.described(bed)),
        "drawers": client_words.drawer_buttons(bed),
        "finishes": client_words.finish_choice(worn),
        "mattress": client_words.mattress_switch(),
        "open": " and to open its drawers" if has_drawers else "",
        "tap": ", tap a drawer to open it" if has_drawers else "",
        "sizes": client_words.sizes(bed),
        "still": _data_url("image/png", still_picture(bed, worn.all[worn.first].colour)),
        "still_width": str(width),
        "still_height": str(height),
        "bed": as_script_text(json.dumps(client_bed.content(bed, worn), separators=(",", ":"))),
    }
    return _filled(_resource("page.html"), parts)


def _resource(name: str) -> str:
    return files("resources").joinpath(_FOLDER, name).read_text(encoding="utf-8")


def _script() -> str:
    """All scripts in a room of their own, so that they share names with each other only."""
    inner = "\n".join(_resource(f"{name}.js") for name in _SCRIPTS)
    return f'"use strict";\n(() => {{\n{inner}}})();\n'


def _filled(text: str, parts: Mapping[str, str]) -> str:
    """The text with its places filled, in one go: what is filled in is never searched again."""
    return re.sub(r"@@(\w+)@@", lambda place: parts[place[1]], text)


def _policy(style: str, script: str) -> str:
    """Nothing is fetched, and nothing runs but this style and this script.

    Source: W3C, Content Security Policy Level 3, hash sources.
    """
    rules = {
        "default-src": "'none'",
        "img-src": "data:",
        "style-src": _hash(style),
        "script-src": _hash(script),
        "base-uri": "'none'",
        "form-action": "'none'",
    }
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def _hash(content: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(content.encode()).digest()).decode()}'"


def _data_url(kind: str, content: bytes) -> str:
    return f"data:{kind};base64,{base64.b64encode(content).decode('ascii')}"


def as_script_text(text: str) -> str:
    """JSON that cannot end the element it stands in, nor begin a comment in it."""
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
