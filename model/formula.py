"""The formula of a rule as the maker reads it: what the rule returns, refusals left out."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any


class _Put(ast.NodeTransformer):
    """Puts expressions in place of the local names that stand for them."""

    def __init__(self, known: Mapping[str, ast.expr]) -> None:
        self.known = known

    def visit_Name(self, node: ast.Name) -> ast.expr:
        return self.known.get(node.id, node)


@cache  # a rule's source does not change while the program runs
def formula_of(function: Callable[..., Any]) -> str | None:
    """The returned expression as text, `a if condition else b` for cases; None when a rule is no
    formula.

    A rule is a formula when it is made of assignments, refusals, and returns, each perhaps under
    one `if`. A helper of the same file (`_set_back`) is written out: the maker cannot look it up.
    """
    value = _value(_body(function), {})
    if value is None:
        return None
    return ast.unparse(ast.fix_missing_locations(_WriteOut(function.__globals__).visit(value)))


def _body(function: Callable[..., Any]) -> list[ast.stmt]:
    """The statements of a function, its docstring left out."""
    definition = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    assert isinstance(definition, ast.FunctionDef)
    return definition.body[1:] if ast.get_docstring(definition) else definition.body


class _WriteOut(ast.NodeTransformer):
    """Puts the formula of a private helper in place of the call to it."""

    def __init__(self, names: Mapping[str, Any]) -> None:
        self.names = names

    def visit_Call(self, node: ast.Call) -> ast.expr:
        self.generic_visit(node)
        if not isinstance(node.func, ast.Name) or not node.func.id.startswith("_") or node.keywords:
            return node
        helper = self.names.get(node.func.id)
        if not inspect.isfunction(helper):
            return node
        parameters = inspect.signature(helper).parameters
        value = _value(_body(helper), dict(zip(parameters, node.args, strict=False)))
        return node if value is None else self.visit(value)


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
