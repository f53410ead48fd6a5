"""What raglan and round yokes share: how they are worked, and what they have to measure.

A yoke is worked from the neck down, its rounds joined at centre back. Worked so, with the right
side facing, a round runs from the wearer's left to her right as it passes the back: down from the
neck the work hangs upside down in the hand. So it meets half of the back, the right sleeve, the
front, the left sleeve, and the other half of the back (derived; for a right-handed maker).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from frogless.because import Because, Step
from frogless.design.pieces.yoke import YokeChoice
from frogless.design.work import Work
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.plan.pieces.rounds import FOUNDATION, Manner
from frogless.plan.sections import DEFAULT_ALLOWED, MOST_ROUNDS, worn_height
from frogless.swatch import Gauge

CHAIN = "chain"


@dataclass(frozen=True, slots=True)
class Wanted:
    """A girth that is wanted, and what is allowed of it, mm.

    Args:
        key: the body's own measurement that it is worn on.
    """

    key: str
    wanted: float
    low: float
    high: float
    because: Because

    def allows(self, girth: float) -> bool:
        """Whether a girth is within what is allowed."""
        return self.low - 1e-6 <= girth <= self.high + 1e-6


@dataclass(frozen=True, slots=True)
class Yoke:
    """A yoke before its stitches are counted.

    Args:
        key: of its entry in the design.
        chains: of the turning chain.
        neck: wanted, mm.
        underarm: chains that bridge each underarm.
        rounds: from the foundation to where it parts.
        top: worn height of the foundation round, height: of any other, mm.
        raised: pairs of short rows that raise the back of the neck.
    """

    basis: Basis
    choice: YokeChoice
    key: str
    work: Work
    gauge: Gauge
    manner: Manner
    chains: int
    neck: float
    bust: Wanted
    arm: Wanted
    underarm: int
    rounds: int
    depth: float
    top: float
    height: float
    raised: int

    @property
    def width(self) -> float:
        """Of one stitch, mm."""
        return self.gauge.width.value

    @property
    def name(self) -> str:
        """Of the piece."""
        return self.choice.name

    @property
    def hook(self) -> float:
        """That the gauge was worked with, mm."""
        return self.gauge.hook or self.basis.hook

    def depth_at(self, round_: int) -> float:
        """Worn depth below the neck edge after a round, mm."""
        return self.top + round_ * self.height

    def seen(self, girth: float) -> float:
        """How far a girth may be off before the tape can see it, mm: one stitch at the least."""
        return max(self.width, self.gauge.width.relative * girth)


def yoke(basis: Basis, choice: YokeChoice, key: str) -> Yoke:
    """A yoke as its design describes it.

    Raises:
        InputError: a length is out of reach, or the work is none for a yoke.
    """
    work, prefix = choice.work or basis.design.work, f"{key}.work" if choice.work else "work"
    gauge = basis.gauge(work.stitch, f"{prefix}.stitch")
    height = worn_height(basis, gauge)
    depth = basis.girth_wanted(choice.depth, f"{key}.depth")
    top = _foundation_height(basis, choice, key, gauge) * height
    return Yoke(
        basis=basis,
        choice=choice,
        key=key,
        work=work,
        gauge=gauge,
        manner=_manner(basis, work, prefix),
        chains=work.turning_chain,
        neck=basis.girth_wanted(choice.neck, f"{key}.neck"),
        bust=_wanted(basis, key, "bust", choice.bust, choice.ease, choice.ease_allowed),
        arm=_wanted(basis, key, "arm", choice.arm, choice.arm_ease, choice.arm_ease_allowed),
        underarm=_underarm(basis, choice, key, gauge.width.value),
        rounds=_rounds(basis, key, (depth - top) / height),
        depth=depth,
        top=top,
        height=height,
        raised=_raised(basis, choice, key, height),
    )


def _manner(basis: Basis, work: Work, prefix: str) -> Manner:
    if work.rounds == "spiral":
        raise InputError(
            'a yoke is worked in rounds that are joined; write rounds = "joined and turned" or '
            '"joined"',
            basis.place(f"{prefix}.rounds"),
        )
    if work.join_at != "centre back":
        raise InputError(
            'the rounds of a yoke are joined at the back; write join_at = "centre back"',
            basis.place(f"{prefix}.join_at"),
        )
    if work.turning_chain_counts and not work.turning_chain:
        raise InputError(
            "a turning chain of 0 cannot count as a stitch; give it chains, or write "
            "turning_chain_counts = false",
            basis.place(f"{prefix}.turning_chain_counts"),
        )
    return Manner(
        turned=work.rounds == "joined and turned",
        spiral=False,
        chain_counts=work.turning_chain_counts,
        on_chain=work.turning_chain_counts or work.join_into == "top of chain",
    )


def _foundation_height(basis: Basis, choice: YokeChoice, key: str, gauge: Gauge) -> float:
    """Height of the foundation round, in rounds; a chain has next to none."""
    made_of = basis.stitches.get(choice.made_of)
    able = {
        name: entry
        for name, entry in basis.stitches.items()
        if name == CHAIN or (entry.kind == FOUNDATION and entry.begins_on)
    }
    if made_of is None or made_of.key not in able:
        raise InputError(
            f'"{choice.made_of}" is nothing to begin with; accepted are {", ".join(able)}',
            basis.place(f"{key}.with"),
        )
    if made_of.key == CHAIN:
        return 0.0
    return made_of.height.typical / basis.stitches[gauge.stitch].height.typical


def _wanted(
    basis: Basis,
    key: str,
    name: str,
    girth: str,
    ease: str,
    allowed: tuple[str, str] | None,
) -> Wanted:
    """Body and ease; without a range of its own an inch either way is allowed, as for a skirt."""
    own = "ease" if name == "bust" else f"{name}_ease"
    on_body = basis.girth_wanted(girth, f"{key}.{name}")
    more = basis.length(ease, f"{key}.{own}")
    least, most = (
        (more - DEFAULT_ALLOWED, more + DEFAULT_ALLOWED)
        if allowed is None
        else [basis.length(text, f"{key}.{own}_allowed") for text in allowed]
    )
    if not least - 1e-9 <= more <= most + 1e-9:
        raise InputError(
            f"the ease of {basis.show(more)} lies outside what is allowed, {basis.show(least)} to "
            f"{basis.show(most)}",
            basis.place(f"{key}.{own}"),
        )
    because = basis.because_formula(girth, f"{key}.{name}").then(Step("ease", more))
    measured = "bust_girth" if name == "bust" else "upper_arm_girth"
    return Wanted(measured, on_body + more, on_body + least, on_body + most, because)


def _underarm(basis: Basis, choice: YokeChoice, key: str, width: float) -> int:
    """The even number of chains nearest to it: half of them lie on either side of a sleeve's join."""
    long = basis.length(choice.underarm, f"{key}.underarm")
    if long < 0:
        raise InputError(
            f'"{choice.underarm}" gives {basis.show(long)}; it has to be zero or more',
            basis.place(f"{key}.underarm"),
        )
    return 2 * math.floor(long / width / 2 + 0.5 + 1e-9)


def _rounds(basis: Basis, key: str, exact: float) -> int:
    """The nearest whole number, of two equally near the larger; two at the least."""
    rounds = max(math.floor(exact + 0.5 + 1e-9), 2)
    if rounds > MOST_ROUNDS:
        raise InputError(
            f"the yoke would take {rounds} rounds; at most {MOST_ROUNDS} are planned",
            basis.place(f"{key}.depth"),
        )
    return rounds


def _raised(basis: Basis, choice: YokeChoice, key: str, height: float) -> int:
    """Pairs of short rows: each is two rows high at centre back."""
    high = basis.length(choice.back_raise, f"{key}.back_raise")
    if high < 0:
        raise InputError(
            f'"{choice.back_raise}" gives {basis.show(high)}; it has to be zero or more',
            basis.place(f"{key}.back_raise"),
        )
    pairs = math.floor(high / height / 2 + 0.5 + 1e-9)
    return max(pairs, 1) if high > 0 else 0


def near(exact: float, apart: int) -> Iterator[int]:
    """The whole numbers not farther than `apart` from the nearest one, none below one."""
    middle = math.floor(exact + 0.5)
    return (n for n in range(middle - apart, middle + apart + 1) if n >= 1)
