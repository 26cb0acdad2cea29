"""The formula of a rule as the maker reads it: what the rule returns, refusals left out."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable, Mapping
from typing import Any


class _Put(ast.NodeTransformer):
    """Puts expressions in place of the local names that stand for them."""

    def __init__(self, known: Mapping[str, ast.expr]) -> None:
        self.known = known

    def visit_Name(self, node: ast.Name) -> ast.expr:
        return self.known.get(node.id, node)


def formula_of(function: Callable[..., Any]) -> str | None:
    """The returned expression as text, `a if condition else b` for cases; None when a rule is no
    formula.

    A rule is a formula when it is made of assignments, refusals, and returns, each perhaps under
    one `if`.
    """
    definition = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    assert isinstance(definition, ast.FunctionDef)
    value = _value(definition.body[1:], {})
    return None if value is None else ast.unparse(value)


def _value(body: list[ast.stmt], known: dict[str, ast.expr]) -> ast.expr | None:
    for i, statement in enumerate(body):
        match statement:
            case ast.Return(value=ast.expr() as value):
                return _put(value, known)
            case ast.Assign(targets=[ast.Name(id=name)], value=value):
                known = known | {name: _put(value, known)}
            case ast.If(test=test, body=[ast.Return(value=ast.expr() as value)], orelse=[]):
                rest = _value(body[i + 1 :], known)
                if rest is None:
                    return None
                return ast.IfExp(test=_put(test, known), body=_put(value, known), orelse=rest)
            case ast.If(body=[ast.Raise()], orelse=[]):
                continue
            case _:
                return None
    return None


def _put(value: ast.expr, known: Mapping[str, ast.expr]) -> ast.expr:
    done = _Put(known).visit(value)
    assert isinstance(done, ast.expr)
    return done
