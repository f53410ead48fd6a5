"""The edits that are timed can be drafted, and what is forgotten is worked out again the same."""

from __future__ import annotations

from importlib import import_module
from types import ModuleType

import pytest
from examples import Example
from pages import ROOT

from frogless.draft import Texts


@pytest.fixture
def bench(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The benchmark, which finds its own neighbours beside it."""
    monkeypatch.syspath_prepend(str(ROOT / "benchmarks"))
    return import_module("bench_edit")


def test_every_edit_of_every_example_changes_what_is_shown(bench: ModuleType) -> None:
    """Two runs of one edit are not the same either, unless terms or units are all that changes."""
    for name in bench.EXAMPLES:
        design, body, swatch = Example(name).texts().values()
        shown = bench.Shown(Texts(design, body, (swatch,)))
        for edit in bench.edits(shown).values():
            assert edit(shown, 0) != shown


def test_what_is_forgotten_comes_out_the_same(bench: ModuleType) -> None:
    """The document of an edit, after a first draft and without one."""
    design, body, swatch = Example("drum-bag").texts().values()
    shown = bench.Shown(Texts(design, body, (swatch,)))
    bench.made(shown)
    for edit in bench.edits(shown).values():
        remembered = bench.made(edit(shown, 0))
        bench.forget()
        assert bench.made(edit(shown, 0)) == remembered
