"""Whole numbers that a pattern leaves open: what they are unless said otherwise, and within what."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product
from types import MappingProxyType
from typing import Any, Protocol

from frogless.errors import InputError, near_names


@dataclass(frozen=True, slots=True)
class Parameter:
    """A whole number that a pattern leaves open, with what it is unless said otherwise."""

    default: int
    low: int
    high: int


class Numbered(Protocol):
    """What has a usual value and two ends."""

    @property
    def default(self) -> int:
        """What it is unless said otherwise."""

    @property
    def low(self) -> int:
        """The least that it may be."""

    @property
    def high(self) -> int:
        """The most that it may be."""


def parameters_of(entry: Mapping[str, Any]) -> Mapping[str, Parameter]:
    """The parameters of an entry of a data file."""
    told = entry.get("parameters", {})
    return MappingProxyType({name: Parameter(**each) for name, each in told.items()})


def usual(parameters: Mapping[str, Numbered]) -> dict[str, int]:
    """What each is unless said otherwise."""
    return {name: each.default for name, each in parameters.items()}


def filled_in(
    key: str, parameters: Mapping[str, Numbered], chosen: Mapping[str, int]
) -> dict[str, int]:
    """The chosen values, and the usual ones of those that were not chosen.

    Args:
        key: what has the parameters, for messages.

    Raises:
        InputError: no such parameter, or a value out of range, with what is accepted.
    """
    for name, value in chosen.items():
        if name not in parameters:
            raise InputError(
                f'"{key}" has no parameter "{name}"; '
                f"accepted: {', '.join(parameters) or 'none'}{near_names(name, parameters)}"
            )
        known = parameters[name]
        if type(value) is not int or not known.low <= value <= known.high:
            raise InputError(
                f'"{value}" is not accepted for {name} of "{key}"; '
                f"write a whole number from {known.low} to {known.high}"
            )
    return usual(parameters) | dict(chosen)


def corners(parameters: Mapping[str, Numbered]) -> Iterator[dict[str, int]]:
    """Every choice of least, usual and greatest values."""
    ends = ([(n, v) for v in (p.low, p.default, p.high)] for n, p in parameters.items())
    return (dict(values) for values in product(*ends))
