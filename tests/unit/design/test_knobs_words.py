"""Every key of the format has its words where a person turns it."""

from __future__ import annotations

import typing
from importlib.resources import files

import pytest

from frogless.design.document import PiecesDesign, TubeDesign
from frogless.design.knobs_kinds import named
from frogless.design.knobs_words import is_turned, words
from frogless.design.strict import Strict


def models(model: type[Strict], found: dict[str, type[Strict]]) -> dict[str, type[Strict]]:
    """A model and all that stand in it, by name."""
    if model.__name__ in found:
        return found
    found[model.__name__] = model
    stack: list[object] = [f.annotation for f in model.model_fields.values()]
    while stack:
        kind = stack.pop()
        if isinstance(kind, type) and issubclass(kind, Strict):
            models(kind, found)
        stack.extend(typing.get_args(kind))
    return found


MODELS = models(PiecesDesign, models(TubeDesign, {}))
TURNED = {name: model for name, model in MODELS.items() if is_turned(model)}
KEYS = [
    (model, field.alias or name)
    for model in TURNED.values()
    for name, field in model.model_fields.items()
]


@pytest.mark.parametrize(("model", "key"), KEYS, ids=lambda one: getattr(one, "__name__", one))
def test_key_has_a_label_or_is_for_the_text_only(model: type[Strict], key: str) -> None:
    """A new key of the format is not forgotten."""
    said = words(model, key)
    assert said.label
    assert said.label == said.label.strip()
    field = next(f for n, f in model.model_fields.items() if (f.alias or n) == key)
    tables = any(name in str(field.annotation) for name in MODELS) or key in ("parameters",)
    assert said.hint or not said.knob or said.group or tables


@pytest.mark.parametrize(("model", "key"), KEYS, ids=lambda one: getattr(one, "__name__", one))
def test_what_holds_where_nothing_is_written_is_told(model: type[Strict], key: str) -> None:
    """A key that may be left open without a value of its own says in words what holds then."""
    field = next(f for n, f in model.model_fields.items() if (f.alias or n) == key)
    said = words(model, key)
    is_table = any(f".{name}" in str(field.annotation) for name in MODELS)
    if field.default is None and said.knob and not said.group and not is_table:
        assert said.default


def test_choices_in_the_words_are_those_of_the_format() -> None:
    """Kinds of waist are listed beside each kind."""
    kinds = {
        kind
        for name in ("CoveredElastic", "Drawcord", "RibbedBand")
        for kind in named(MODELS[name].model_fields["kind"])
    }
    for name in ("CoveredElastic", "Drawcord", "RibbedBand"):
        assert set(words(MODELS[name], "kind").choices) == kinds


def test_words_are_for_keys_that_there_are() -> None:
    """No key and no table is left over."""
    import tomllib

    text = files("frogless.design").joinpath("data", "knobs.toml").read_text(encoding="utf-8")
    bases = {"Design", "YokeChoice"}
    for name, table in tomllib.loads(text).items():
        assert name in MODELS.keys() | bases
        fields = {
            f.alias or n
            for model in MODELS.values()
            if name in {one.__name__ for one in model.__mro__}
            for n, f in model.model_fields.items()
        }
        assert table.keys() - {"like", "knob"} <= fields
