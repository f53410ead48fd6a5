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
from frogless.units import Units


def fit(
    plan: Plan,
    body: Body,
    *,
    stretch: float | None,
    growth: float | None,
    fibre: str,
    grams: float | None,
    for_children: bool = False,
    units: Units = "cm",
) -> Fit:
    """How the garment will sit on this body.

    Args:
        stretch: comfortable stretch of the swatch, as a ratio; None: not measured.
        growth: of the hang test, as a ratio; None: not measured.
        fibre: as the yarn's label names it.
        grams: mass of the garment when it is known.
        for_children: what the design says of itself.

    Raises:
        InputError: the body has no hip girth.
    """
    top = main_piece(plan).rows[0]
    width = main_gauge(plan, top.section).width.value
    return Fit(
        landmarks=landmarks(plan),
        going_on=going_on(
            plan,
            stretch=stretch,
            start_kind="chain" if begins_with_chain(plan) else "foundation",
            body=body,
            units=units,
        ),
        staying_up=staying_up(plan, units),
        hanging=hanging(
            growth=growth,
            fibre=fibre,
            grams=grams,
            count=top.count,
            swatch_stitches=round(SWATCH_WIDTH / width),
        ),
        cautions=cautions(plan, body, for_children=for_children, fibre=fibre, units=units),
    )
