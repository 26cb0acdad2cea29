"""Which Bedwright this is."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import metadata
from pathlib import Path

_PROJECT = Path(__file__).resolve().parents[2] / "pyproject.toml"


@cache
def version() -> str:
    """The version's number: of the sources where they lie with their project, else as installed."""
    try:
        with _PROJECT.open("rb") as file:
            return str(tomllib.load(file)["project"]["version"])
    except OSError:
        return metadata.version("bedwright")
