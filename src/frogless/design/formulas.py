"""Formulas over lengths and names, evaluated safely: no code is run, faults say where they are.

A value is a number with a power of length: 0 a plain number, 1 a length in mm. Only lengths and
plain numbers can be the answer of a formula.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, lru_cache
from importlib.resources import files

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput

from frogless.errors import InputError, Place, near_names
from frogless.units import parse_length

FUNCTIONS: Mapping[str, Callable[..., float]] = {"min": min, "max": max}
Where = Callable[[str], Place]
LONGEST = 500
EXAMPLE = "such as hip_girth + 4 cm"


@dataclass(frozen=True, slots=True)
class Value:
    """A number and its power of length."""

    value: float
    power: int = 1


@dataclass(frozen=True, slots=True)
class Scope:
    """What names mean in a formula.

    Args:
        lengths: measurements and other lengths, mm.
        numbers: plain numbers by name.
        formulas: the design's own lengths, by name, still as text.
        wanting: names that a body file may give but this one does not.
        where: the place of a key of the design, for faults in its own lengths.
    """

    lengths: Mapping[str, float]
    numbers: Mapping[str, float] = field(default_factory=dict)
    formulas: Mapping[str, str] = field(default_factory=dict)
    wanting: frozenset[str] = frozenset()
    where: Where = lambda key: Place(key=key)

    def known(self) -> list[str]:
        """Every name that can be used."""
        return [*self.lengths, *self.numbers, *self.formulas, *FUNCTIONS]


@cache
def _parser() -> Lark:
    return Lark(files(__package__).joinpath("formula.lark").read_text("utf-8"), parser="lalr")


@lru_cache(maxsize=1024)
def _tree(text: str) -> Tree[Token] | Token:
    """Nobody changes a tree, so one that was read before is as good."""
    return _parser().parse(text)


def parse(text: str, place: Place) -> Tree[Token] | Token:
    """The tree of a formula.

    Raises:
        InputError: `text` is not a formula; says at which character.
    """
    if len(text) > LONGEST:
        message = f'"{text[:40]}…" is too long for a formula; {LONGEST} characters are accepted'
        raise InputError(message, place)
    try:
        return _tree(text)
    except UnexpectedInput as error:
        token = getattr(error, "token", None)
        ended = token is not None and token.type == "$END"
        at = "its end" if ended else f"character {getattr(error, 'column', 1)}"
        message = (
            f'"{text}" is not a formula (stuck at {at}); write arithmetic over lengths and names, '
            f"{EXAMPLE}"
        )
        raise InputError(message, place) from None


def is_name(text: str) -> bool:
    """Whether a formula can use this as a name."""
    return text.isascii() and text.isidentifier()


def names_in(text: str, place: Place) -> tuple[str, ...]:
    """The names a formula uses, in order, functions left out."""
    tree = parse(text, place)
    if isinstance(tree, Token):
        return ()
    found = [str(node.children[0]) for node in tree.find_data("name")]
    return tuple(dict.fromkeys(found))


def evaluate(text: str, scope: Scope, place: Place) -> Value:
    """The value of a formula.

    Raises:
        InputError: no formula, an unknown name, a cycle of formulas, or units that do not go
            together.
    """
    try:
        return _Evaluator(scope, place, ()).of(parse(text, place))
    except RecursionError:
        raise InputError("this formula is nested too deeply", place) from None


def length(text: str, scope: Scope, place: Place) -> float:
    """The length a formula gives, mm.

    Raises:
        InputError: as `evaluate`, or the answer is not a length.
    """
    value = evaluate(text, scope, place)
    if value.power != 1:
        what = "a plain number" if value.power == 0 else "an area or the like"
        message = f'"{text}" gives {what} ({value.value:g}), where a length is wanted, {EXAMPLE}'
        raise InputError(message, place)
    return value.value


@dataclass(frozen=True, slots=True)
class _Evaluator:
    scope: Scope
    place: Place
    trail: tuple[str, ...]

    def of(self, tree: Tree[Token] | Token) -> Value:
        if isinstance(tree, Token):
            raise InputError(f'"{tree}" is not a formula; write {EXAMPLE}', self.place)
        return getattr(self, f"_{tree.data}")(tree.children)  # type: ignore[no-any-return]

    def _length(self, children: Sequence[Token]) -> Value:
        try:
            return Value(parse_length(str(children[0])), 1)
        except InputError as error:
            raise error.at(self.place) from None

    def _number(self, children: Sequence[Token]) -> Value:
        return Value(float(str(children[0])), 0)

    def _name(self, children: Sequence[Token]) -> Value:
        name = str(children[0])
        if name in self.scope.lengths:
            return Value(self.scope.lengths[name], 1)
        if name in self.scope.numbers:
            return Value(self.scope.numbers[name], 0)
        if name in self.scope.formulas:
            return self._own(name)
        if name in self.scope.wanting:
            raise InputError(
                f'"{name}" is needed here and was not measured; measure it and add it to the body',
                self.place,
            )
        near = near_names(name, self.scope.known()) or (
            "; a formula may use the body's measurements and the names under [lengths]"
        )
        raise InputError(f'unknown name "{name}" in a formula{near}', self.place)

    def _own(self, name: str) -> Value:
        if name in self.trail:
            circle = " -> ".join((*self.trail[self.trail.index(name) :], name))
            raise InputError(f"these lengths are defined by each other: {circle}", self.place)
        text, place = self.scope.formulas[name], self.scope.where(f"lengths.{name}")
        return _Evaluator(self.scope, place, (*self.trail, name)).of(parse(text, place))

    def _call(self, children: Sequence[Token | Tree[Token]]) -> Value:
        name = str(children[0])
        if name not in FUNCTIONS:
            near = near_names(name, FUNCTIONS) or "; there are min and max"
            raise InputError(f'unknown function "{name}" in a formula{near}', self.place)
        values = [self.of(child) for child in children[1:]]
        return Value(FUNCTIONS[name](v.value for v in values), self._same(name, values))

    def _same(self, doing: str, values: Sequence[Value]) -> int:
        powers = {v.power for v in values}
        if len(powers) > 1:
            message = (
                f'a length and a plain number do not go together in "{doing}"; give the number a '
                "unit"
            )
            raise InputError(message, self.place)
        return powers.pop()

    def _two(self, children: Sequence[Token | Tree[Token]]) -> tuple[Value, Value]:
        return self.of(children[0]), self.of(children[1])

    def _add(self, children: Sequence[Token | Tree[Token]]) -> Value:
        a, b = self._two(children)
        return Value(a.value + b.value, self._same("+", (a, b)))

    def _sub(self, children: Sequence[Token | Tree[Token]]) -> Value:
        a, b = self._two(children)
        return Value(a.value - b.value, self._same("-", (a, b)))

    def _mul(self, children: Sequence[Token | Tree[Token]]) -> Value:
        a, b = self._two(children)
        return Value(a.value * b.value, a.power + b.power)

    def _div(self, children: Sequence[Token | Tree[Token]]) -> Value:
        a, b = self._two(children)
        if b.value == 0:
            raise InputError("a formula divides by zero", self.place)
        return Value(a.value / b.value, a.power - b.power)

    def _neg(self, children: Sequence[Token | Tree[Token]]) -> Value:
        a = self.of(children[0])
        return Value(-a.value, a.power)
