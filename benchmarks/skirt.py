"""The skirt that is measured: the ring-dance skirt of `designs/`, made 60 rounds long."""

from __future__ import annotations

import tempfile
from pathlib import Path

from frogless import draft
from frogless.publish.drafted import Drafted

ROUNDS = 60
DESIGNS = Path(__file__).parents[1] / "designs"
BODY = DESIGNS / "bodies" / "dancer-3.toml"
SWATCH = DESIGNS / "swatches" / "light-cotton.toml"
_LENGTH = 'skirt_length = "waist_to_knee - 2 cm"'
_LONGEST = 1000  # mm
_SHORTEST = 500


def request(folder: Path) -> draft.Request:
    """The files of the skirt; its design is written at the first whole cm that makes 60 rounds.

    Raises:
        SystemExit: no length does; the example has changed too far.
    """
    text = (DESIGNS / "ring-dance-skirt" / "design.toml").read_text(encoding="utf-8")
    asked = draft.Request(folder / "design.toml", BODY, (SWATCH,))
    for length in range(_SHORTEST, _LONGEST, 10):
        longer = text.replace(_LENGTH, f'skirt_length = "{length} mm"')
        asked.design.write_text(longer, encoding="utf-8")
        if rounds(draft.draft(asked).drafted) == ROUNDS:
            return asked
    raise SystemExit(
        f"no length of the example skirt makes {ROUNDS} rounds; mend benchmarks/skirt.py"
    )


def rounds(drafted: Drafted) -> int:
    """Rounds before the edging."""
    return drafted.plan.sections[-1].last_round


def in_a_folder() -> tempfile.TemporaryDirectory[str]:
    """A folder that goes away with the benchmark."""
    return tempfile.TemporaryDirectory(prefix="frogless-bench-")
