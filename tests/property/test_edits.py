"""What is remembered from one draft to the next changes nothing: an edit gives what it gives anew."""

from __future__ import annotations

import functools
import gc
import re
from collections.abc import Sequence
from dataclasses import dataclass

from examples import TEXTS, Example
from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.draft import Texts, draft_texts, plan_text
from frogless.errors import FroglessError
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain
from frogless.stitches.model import Dialect
from frogless.units import Units

NAMES = sorted(TEXTS)
KEYS = ("length", "depth", "radius", "width", "ease", "hem_girth")
FORMULA = re.compile(rf'^({"|".join(KEYS)}) = "([^"\n]+)"', re.MULTILINE)

#: The parser is the same for the same words whoever asks, and dear to make.
KEPT = ("frogless.read.grammar",)


@dataclass(frozen=True, slots=True)
class Edit:
    """A design as it is after an edit, and how it is shown."""

    design: str
    terms: Dialect
    units: Units


def edited(name: str, at: int, by: int) -> str:
    """An example with one of its lengths changed by so many mm."""
    text = TEXTS[name]
    formulas = list(FORMULA.finditer(text))
    if not by or not formulas:
        return text
    found = formulas[at % len(formulas)]
    sign = "+" if by > 0 else "-"
    return (
        text[: found.start()]
        + f'{found[1]} = "({found[2]}) {sign} {abs(by)} mm"'
        + text[found.end() :]
    )


@st.composite
def sequences(draw: st.DrawFn) -> list[Edit]:
    """Edits of one design after each other, as they come while somebody tries what fits."""
    name = draw(st.sampled_from(NAMES))
    edits = st.builds(
        Edit,
        st.builds(edited, st.just(name), st.integers(0, 9), st.integers(-12, 12)),
        st.sampled_from(("us", "uk")),
        st.sampled_from(("cm", "in")),
    )
    return draw(st.lists(edits, min_size=2, max_size=4))


def published(edit: Edit) -> str:
    """The whole pattern and its plan file, or the refusal."""
    texts = Example().texts()
    asked = Texts(edit.design, texts["body.toml"], (texts["swatch.toml"],))
    try:
        drafted = draft_texts(asked, edit.terms, edit.units).drafted
    except FroglessError as error:
        return str(error)
    return plain(pattern(drafted)) + plan_text(drafted)


@functools.cache
def remembering() -> Sequence[functools._lru_cache_wrapper[object]]:
    """Everything of the program that remembers a bounded number of answers."""
    # `isinstance` would ask things that stand in for others, such as settings not made yet.
    found = [one for one in gc.get_objects() if type(one) is functools._lru_cache_wrapper]
    return [one for one in found if _is_bounded(one)]


def _is_bounded(each: functools._lru_cache_wrapper[object]) -> bool:
    module = getattr(each, "__module__", "")
    ours = module.startswith("frogless.") and module not in KEPT
    return ours and each.cache_parameters()["maxsize"] is not None


def anew(edits: Sequence[Edit]) -> list[str]:
    """What each gives when nothing is remembered."""
    given = []
    for edit in edits:
        for each in remembering():
            each.cache_clear()
        given.append(published(edit))
    return given


@settings(max_examples=6, deadline=None)
@given(sequences())
def test_edits_one_after_the_other_give_what_each_gives_alone(edits: list[Edit]) -> None:
    """The same bytes, and the same refusals; also when an edit is taken back."""
    in_a_row = [published(edit) for edit in [*edits, *edits[::-1]]]
    alone = anew(edits)
    assert in_a_row == [*alone, *alone[::-1]]


def test_much_is_remembered() -> None:
    """Rows, lines, pieces, rhythms: otherwise the test above would compare nothing."""
    published(Edit(TEXTS["ring-dance-skirt"], "us", "cm"))
    assert sum(each.cache_info().currsize for each in remembering()) > 100
