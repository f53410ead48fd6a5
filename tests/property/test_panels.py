"""Any flat piece is proven or refused, whatever is asked of it."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pieces_designs import garment, panel, swatch

from frogless.errors import Impossible, InputError
from frogless.fabric.claims import spots
from frogless.fabric.stretches import stretch

MM = st.integers


def length(low: int, high: int) -> st.SearchStrategy[str]:
    """A length in mm, as a design writes it."""
    return MM(low, high).map(lambda value: f"{value} mm")


ROWS = st.sampled_from(["auto", "right side", "any"])
SECTIONS = st.lists(
    st.fixed_dictionaries(
        {"length": length(20, 200)},
        optional={
            "width": length(150, 600),
            "edges": st.sampled_from(["both", "left", "right"]),
            "rate": st.sampled_from(["even", "steep"]),
            "rows": ROWS,
            "at_once": length(0, 40),
        },
    ),
    max_size=3,
).map(lambda found: [{"name": f"part {i}", **each} for i, each in enumerate(found)])
ARMHOLES = st.fixed_dictionaries(
    {"depth": length(100, 260)},
    optional={"width": length(150, 450), "at_once": length(0, 60), "rows": ROWS},
)
NECKS = st.fixed_dictionaries(
    {"width": length(80, 260), "depth": length(20, 260)},
    optional={"shape": st.sampled_from(["round", "V", "square"]), "rows": ROWS},
)
PANELS = st.fixed_dictionaries(
    {"width": length(150, 600), "length": length(300, 700)},
    optional={
        "section": SECTIONS,
        "armhole": ARMHOLES,
        "neck": NECKS,
        "shoulder": st.fixed_dictionaries({"drop": length(10, 60)}),
        "placket": length(10, 200),
        "slit": length(10, 200),
        "full_bust": st.fixed_dictionaries({"extra": length(10, 80), "above": length(50, 400)}),
        "with": st.sampled_from(["chain", "foundation_double_crochet"]),
    },
)


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    keys=PANELS,
    counts=st.booleans(),
    gauge=st.tuples(st.integers(8, 30), st.integers(5, 16)),
)
def test_panel_is_proven_or_refused_whatever_is_asked(
    tmp_path_factory: pytest.TempPathFactory,
    keys: dict[str, object],
    counts: bool,
    gauge: tuple[int, int],
) -> None:
    """Its rows pass every check, and its edges offer each place once."""
    work = f"turning_chain = 3\nturning_chain_counts = {str(counts).lower()}"
    try:
        made = garment(
            tmp_path_factory.mktemp("any"), panel(**keys), work=work, sample=swatch(*gauge)
        )
    except (InputError, Impossible):
        return
    assert made.faults() == {}
    seen: Counter[object] = Counter()
    for each in made.edges("front"):
        assert each.length.value > 0
        for base, places in zip(each.bases, each.places, strict=True):
            found = stretch(base, made.fabric.pieces)
            assert (found.size, found.missing) == (places, 0), each.name
            seen.update(spots(found))
    assert max(seen.values()) == 1
