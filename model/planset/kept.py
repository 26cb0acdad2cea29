"""What is worked out once for a whole set: its list of pages asks for it, and a page again."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar
from weakref import WeakKeyDictionary

from model.planset.setting import Setting

T = TypeVar("T")
P = ParamSpec("P")
Of = Callable[Concatenate[Setting, P], T]


def kept(make: Of[P, T]) -> Of[P, T]:
    """The same function, called once for each set and each of its further arguments, which are
    given by place. What it gave goes away with the set.
    """
    found: WeakKeyDictionary[Setting, dict[Hashable, T]] = WeakKeyDictionary()

    @wraps(make)
    def once(setting: Setting, /, *further: P.args, **none: P.kwargs) -> T:
        own = found.setdefault(setting, {})
        if further not in own:
            own[further] = make(setting, *further, **none)
        return own[further]

    return once
