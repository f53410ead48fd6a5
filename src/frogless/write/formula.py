"""A design's formula as a maker reads it: "the larger of waist + 2 cm and hip ÷ 1.2"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lark import Token, Tree

from frogless.design.formulas import parse
from frogless.errors import InputError, Place
from frogless.units import Units, parse_length
from frogless.write.near import show_near
from frogless.write.phrases import Phrases

#: Signs of arithmetic with how tightly they bind.
SIGNS: Mapping[str, tuple[str, int]] = {
    "add": ("+", 1),
    "sub": ("\u2212", 1),
    "mul": ("\u00d7", 2),
    "div": ("\u00f7", 2),
}
TIGHTEST = 3


def readable(note: str, units: Units, said: Phrases) -> str:
    """A formula, or a name and its formula, in words, signs and the reader's units.

    What cannot be read as a formula is given back as it is.

    >>> from frogless.write.phrases import phrases
    >>> readable("hem_girth: 1.35 * hip_girth", "cm", phrases())
    'hem girth: 1.35 × hip'
    """
    name, _, text = note.rpartition(": ")
    try:
        told = _Teller(units, said).tell(parse(text, Place()))
    except InputError:
        return note
    return said.say("because_named", name=said.measurement(name), value=told) if name else told


@dataclass(frozen=True, slots=True)
class _Teller:
    """Tells the nodes of a formula."""

    units: Units
    said: Phrases

    def tell(self, node: Tree[Token] | Token, within: int = 0) -> str:
        """A node in words; in brackets when what stands round it binds more tightly."""
        if isinstance(node, Token):
            return str(node)
        if node.data in SIGNS:
            sign, binds = SIGNS[node.data]
            # What is taken away or divided by keeps its brackets: 8 - (3 - 2).
            first, second = (
                self.tell(node.children[0], binds),
                self.tell(node.children[1], binds + (node.data in ("sub", "div"))),
            )
            told = f"{first} {sign} {second}"
            return f"({told})" if binds < within else told
        return self._leaf(node)

    def _leaf(self, node: Tree[Token]) -> str:
        first, *others = node.children
        match node.data:
            case "length":
                return show_near(parse_length(str(first)), self.units)
            case "name":
                return self.said.measurement(str(first))
            case "neg":
                return f"\u2212{self.tell(first, TIGHTEST)}"
            case "call":
                told = [self.tell(other) for other in others]
                return self.said.say(f"because_{first}", first=", ".join(told[:-1]), last=told[-1])
        return str(first)
