"""All of the fit: landmarks, going on, staying up, hanging, cautions."""

from __future__ import annotations

from frogless.body.measurements import Body
from frogless.design.document import Kind
from frogless.fit.cautions import cautions
from frogless.fit.ease import landmarks
from frogless.fit.going_on import ORDER, going_on
from frogless.fit.hanging import SWATCH_WIDTH, hanging
from frogless.fit.model import Fit, Hanging
from frogless.fit.openings import nothing_to_pass, openings
from frogless.fit.rounds import begins_with_chain, main_gauge, main_piece
from frogless.fit.staying_up import staying_up, staying_up_on
from frogless.fit.stride import stride
from frogless.plan.model import Plan
from frogless.swatch import Swatch, comfortable_stretch, growth
from frogless.units import Units


def fit_garment(
    plan: Plan,
    body: Body,
    swatch: Swatch,
    *,
    kind: Kind,
    stitch: str,
    grams: float | None,
    for_children: bool = False,
    units: Units = "cm",
) -> Fit:
    """How a garment of several pieces will sit: as `fit`, by what kind of garment it is.

    A skirt of pieces whose first one is a tube from the waist is a skirt like any other.
    """
    if kind == "skirt" and any(m.key == "waist_girth" for m in plan.main.landmarks):
        return fit(
            plan, body, swatch, stitch=stitch, grams=grams, for_children=for_children, units=units
        )
    passed = openings(plan, kind, body, comfortable_stretch(swatch, stitch), units)
    worst = max(passed, key=lambda o: (ORDER.index(o.verdict), o.needed_stretch), default=None)
    return Fit(
        landmarks=landmarks(plan),
        going_on=worst or nothing_to_pass(kind),
        staying_up=staying_up_on(plan, kind, units),
        hanging=_hanging(plan, swatch, stitch, grams),
        cautions=cautions(
            plan, body, for_children=for_children, fibre=swatch.yarn.fibre, units=units
        ),
        openings=passed,
        stride=stride(plan, body, units),
    )


def _hanging(plan: Plan, swatch: Swatch, stitch: str, grams: float | None) -> Hanging:
    hung = growth(swatch, stitch)
    top = main_piece(plan).rows[0]
    return hanging(
        growth=hung.value if hung else None,
        fibre=swatch.yarn.fibre,
        grams=grams,
        count=top.count,
        swatch_stitches=round(SWATCH_WIDTH / main_gauge(plan, top.section).width.value),
    )


def fit(
    plan: Plan,
    body: Body,
    swatch: Swatch,
    *,
    stitch: str,
    grams: float | None,
    for_children: bool = False,
    units: Units = "cm",
) -> Fit:
    """How the garment will sit on this body.

    Args:
        swatch: the main one; its stretch, its growth and its yarn's fibre.
        stitch: what the garment is mostly made of.
        grams: mass of the garment when it is known.
        for_children: what the design says of itself.

    Raises:
        InputError: the body has no hip girth.
    """
    return Fit(
        landmarks=landmarks(plan),
        going_on=going_on(
            plan,
            stretch=comfortable_stretch(swatch, stitch),
            start_kind="chain" if begins_with_chain(plan) else "foundation",
            body=body,
            units=units,
        ),
        staying_up=staying_up(plan, units),
        hanging=_hanging(plan, swatch, stitch, grams),
        cautions=cautions(
            plan, body, for_children=for_children, fibre=swatch.yarn.fibre, units=units
        ),
        stride=stride(plan, body, units),
    )
