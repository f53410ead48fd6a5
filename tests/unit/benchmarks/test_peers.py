"""The benchmarks still run, and their peers do the same work. Nothing is timed here."""

from __future__ import annotations

from importlib import import_module
from types import ModuleType

import pytest
from pages import ROOT

from frogless import draft
from frogless.publish.pattern import pattern

DESIGNS = ROOT / "designs"


@pytest.fixture
def drafted() -> draft.Drafted:
    """The example that the benchmarks lengthen."""
    asked = draft.Request(
        DESIGNS / "ring-dance-skirt" / "design.toml",
        DESIGNS / "bodies" / "dancer-3.toml",
        (DESIGNS / "swatches" / "light-cotton.toml",),
    )
    return draft.draft(asked).drafted


def script(name: str, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """A benchmark, which finds its own neighbours beside it."""
    monkeypatch.syspath_prepend(str(ROOT / "benchmarks"))
    return import_module(name)


def test_solver_finds_what_the_planner_finds(
    drafted: draft.Drafted, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Clauses and stray of every shaped section, to a hundredth of a millimetre."""
    bench = script("bench_draft", monkeypatch)
    asked = bench.questions(drafted)
    assert len(asked) == 2
    assert bench.ours(asked) == bench.solver(asked)


def test_planner_took_what_it_finds(
    drafted: draft.Drafted, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The question that is timed is the one that was answered in the plan.

    Its lengths are rounded to hundredths of a millimetre, and seven steps add up what that takes.
    """
    bench = script("bench_draft", monkeypatch)
    taken = [s.chosen for s in drafted.plan.main.sections if s.chosen is not None]
    found = bench.ours(bench.questions(drafted))
    assert [clauses for clauses, _ in found] == [one.rhythm.clause_count for one in taken]
    assert [stray for _, stray in found] == pytest.approx([abs(t.stray) for t in taken], abs=0.05)


def test_peer_lays_out_every_block(
    drafted: draft.Drafted, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """A PDF of several pages, drawings included."""
    bench = script("bench_pdf", monkeypatch)
    caplog.set_level("ERROR", logger="fpdf")
    assert bench.pages(bench.peer(pattern(drafted))) > 3


def test_other_scripts_can_be_read(monkeypatch: pytest.MonkeyPatch) -> None:
    """The skirt of 60 rounds, and the start from the prompt."""
    assert callable(script("bench_start", monkeypatch).main)
    assert script("skirt", monkeypatch).ROUNDS == 60
