"""Whole numbers written as small sums over parameters: names, + - * and brackets, nothing else."""

from __future__ import annotations

import ast
import operator
from collections.abc import Callable, Mapping

from frogless.errors import InputError, near_names

_OPERATORS: dict[type[ast.operator], Callable[[int, int], int]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
}


def whole(written: int | str, parameters: Mapping[str, int]) -> int:
    """The whole number, 0 or more, that `written` gives.

    Raises:
        InputError: not whole numbers, known names, + - * and brackets; or a result below 0.

    >>> whole("singles - 1", {"singles": 4})
    3
    """
    try:
        value = _value(ast.parse(str(written), mode="eval").body, parameters)
    except (SyntaxError, RecursionError) as error:
        raise InputError(_refusal(written, parameters)) from error
    if value < 0:
        raise InputError(f'"{written}" gives {value}; a number of stitches is 0 or more')
    return value


def _value(node: ast.expr, parameters: Mapping[str, int]) -> int:
    match node:
        case ast.Constant(value=int(number)) if not isinstance(number, bool):
            return number
        case ast.Name(id=name) if name in parameters:
            return parameters[name]
        case ast.Name(id=name):
            raise InputError(f'unknown parameter "{name}"{near_names(name, parameters)}')
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _OPERATORS:
            return _OPERATORS[type(op)](_value(left, parameters), _value(right, parameters))
    raise InputError(_refusal(ast.unparse(node), parameters))


def _refusal(written: int | str, parameters: Mapping[str, int]) -> str:
    names = f" ({', '.join(parameters)})" if parameters else ""
    accepted = f"whole numbers, parameters{names}, + - * and brackets"
    return f'"{written}" is not understood; write {accepted}'
