"""All of the fit: landmarks, going on, staying up, hanging, cautions."""

from __future__ import annotations

from frogless.body.measurements import Body
from frogless.fit.cautions import cautions
from frogless.fit.ease import landmarks
from frogless.fit.going_on import going_on
from frogless.fit.hanging import SWATCH_WIDTH, hanging
from frogless.fit.model import Fit
from frogless.fit.rounds import begins_with_chain, main_gauge, main_piece
from frogless.fit.staying_up import staying_up
from frogless.plan.model import Plan
from frogless.swatch import Swatch, comfortable_stretch, growth
from frogless.units import Units


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
    hung = growth(swatch, stitch)
    top = main_piece(plan).rows[0]
    width = main_gauge(plan, top.section).width.value
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
        hanging=hanging(
            growth=hung.value if hung else None,
            fibre=swatch.yarn.fibre,
            grams=grams,
            count=top.count,
            swatch_stitches=round(SWATCH_WIDTH / width),
        ),
        cautions=cautions(
            plan, body, for_children=for_children, fibre=swatch.yarn.fibre, units=units
        ),
    )
