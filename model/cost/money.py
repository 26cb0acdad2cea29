"""Money: exact decimals, rounded once for each line, so that a column adds up to its total."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import ROUND_HALF_UP, Decimal

Money = Decimal
NOTHING = Decimal(0)
NOT_PRICED = "not priced"


def exact(figure: float) -> Decimal:
    """A figure as it was typed: 0.1 is a tenth, and not the float that comes nearest to it."""
    return Decimal(repr(figure)) if isinstance(figure, float) else Decimal(figure)


def rounded(amount: Decimal, decimals: int) -> Money:
    """An amount on the smallest coin, halves away from zero."""
    return amount.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP)


def padded(amount: Decimal, decimals: int) -> Decimal:
    """An amount with at least so many places: what is finer than the smallest coin stays so."""
    exponent = amount.as_tuple().exponent
    is_coarse = isinstance(exponent, int) and exponent > -decimals
    return rounded(amount, decimals) if is_coarse else amount


def line(price: Decimal, quantity: float, decimals: int) -> Money:
    """What a line of a list comes to."""
    return rounded(price * exact(quantity), decimals)


def added(amounts: Iterable[Money | None], decimals: int = 0) -> Money:
    """The sum of what is known; nothing has the `decimals` of everything else."""
    nothing = rounded(NOTHING, decimals)
    return sum((each for each in amounts if each is not None), nothing)


def figure(amount: Money | None) -> str:
    """`1234.50`, or that nobody has priced it."""
    return NOT_PRICED if amount is None else f"{amount:f}"


def shown(amount: Money | None, currency: str) -> str:
    """`1234.50 EUR`, or that nobody has priced it."""
    return NOT_PRICED if amount is None else f"{figure(amount)} {currency}".strip()
