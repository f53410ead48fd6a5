"""What every yoke from the top has: neck, depth, bust, arms, underarms."""

from __future__ import annotations

from pydantic import Field

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class YokeChoice(Strict):
    """A yoke begun at the neck, which parts into body and sleeves at the underarm.

    The body is a later piece on "yoke.body"; the sleeves stand on "yoke.right sleeve" and "yoke.left
    sleeve", and take up the underarm chains of the piece that is called `body`.
    """

    name: Name
    work: Work | None = None
    made_of: str = Field(alias="with", default="chain")
    neck: Formula
    depth: Formula
    bust: Formula = "bust_girth"
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    arm: Formula = "upper_arm_girth"
    arm_ease: Formula = "0 cm"
    arm_ease_allowed: tuple[Formula, Formula] | None = None
    underarm: Formula
    back_raise: Formula = "0 cm"
    body: Name = "body"
