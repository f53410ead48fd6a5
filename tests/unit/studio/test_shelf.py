"""Documents with their history: changed, undone, named, deleted."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from django.db import connection

from frogless.errors import InputError
from frogless.studio.library import shelf
from frogless.studio.library.models import Step
from frogless.studio.library.preferences import prefer, preferred


def text(name: str) -> str:
    """A body of that name."""
    return f'format = "frogless-body/1"\nname = "{name}"\n'


def test_undo_and_redo_walk_the_steps() -> None:
    """Back to the first text, forward to the last, and no further."""
    document = shelf.create("body", text("A"))
    for name in ("B", "C"):
        document = shelf.change(document.pk, document.revision, text(name), f"to {name}")
    assert shelf.can_undo(document) == "to C"
    seen = []
    for _ in range(4):
        document = shelf.undo(document.pk, document.revision)
        seen.append(document.text)
    assert seen == [text("B"), text("A"), text("A"), text("A")]
    assert shelf.can_undo(document) is None
    for _ in range(3):
        document = shelf.redo(document.pk, document.revision)
    assert document.text == text("C")
    assert shelf.can_redo(document) is None


def test_change_after_undo_forgets_what_was_undone() -> None:
    """As everywhere else."""
    document = shelf.create("body", text("A"))
    document = shelf.change(document.pk, document.revision, text("B"))
    document = shelf.undo(document.pk, document.revision)
    document = shelf.change(document.pk, document.revision, text("C"))
    assert shelf.can_redo(document) is None
    assert [step.text for step in document.steps.all()] == [text("A"), text("C")]


def test_two_pages_do_not_overwrite_each_other() -> None:
    """The second to save is told, and nothing of either is lost; undo counts as a change too."""
    document = shelf.create("design", "a = 1\n")
    base = document.revision
    shelf.change(document.pk, base, "a = 2\n")
    with pytest.raises(shelf.Conflict, match="changed on another page") as raised:
        shelf.change(document.pk, base, "a = 3\n")
    assert raised.value.document.text == "a = 2\n"
    with pytest.raises(shelf.Conflict):
        shelf.undo(document.pk, base)


def test_old_steps_are_forgotten_and_named_versions_stay(monkeypatch: pytest.MonkeyPatch) -> None:
    """A history does not grow for ever."""
    monkeypatch.setattr(shelf, "MOST_STEPS", 3)
    document = shelf.create("body", text("0"))
    shelf.name_version(document, "the first")
    for number in range(1, 8):
        document = shelf.change(document.pk, document.revision, text(str(number)))
    assert [step.text for step in document.steps.all()] == [text("5"), text("6"), text("7")]
    assert [version.text for version in document.versions.all()] == [text("0")]


def test_names_are_told_apart() -> None:
    """The second of a name gets a number; a document that is renamed in its text follows."""
    first, second = shelf.create("body", text("Ada")), shelf.create("body", text("Ada"))
    assert (first.name, second.name) == ("Ada", "Ada 2")
    third = shelf.create("body", text("Bo"))
    assert shelf.change(third.pk, third.revision, text("Ada")).name == "Ada 3"
    assert shelf.create("swatch", text("Ada")).name == "Ada"
    with pytest.raises(InputError, match="already"):
        shelf.rename(third, "Ada")


@pytest.mark.parametrize("broken", ["name = ", "name = 3", "name = []", "[" * 5000, ""])
def test_text_that_cannot_say_its_name_keeps_the_one_it_had(broken: str) -> None:
    """Nothing is lost because a text is faulty for the moment."""
    document = shelf.create("design", 'title = "Skirt"\n')
    changed = shelf.change(document.pk, document.revision, broken)
    assert (changed.name, changed.text) == ("Skirt", broken)


def test_what_is_too_long_is_refused() -> None:
    """With the limit."""
    with pytest.raises(InputError, match="50,000 are accepted"):
        shelf.create("design", "#" * 50_001)


def test_bin_gives_back_under_a_free_name() -> None:
    """Also when the name was taken meanwhile."""
    first = shelf.create("body", text("Ada"))
    shelf.remove(first)
    shelf.create("body", text("Ada"))
    shelf.bring_back(first)
    assert sorted(one.name for one in shelf.documents("body")) == ["Ada", "Ada 2"]


def test_deleted_for_good_is_in_no_file(library: Path) -> None:
    """Neither in the library nor in its log: it may be somebody's measurements."""
    words = "waist of seventy-one and a half"
    document = shelf.create("body", f"# {words}\n")
    document = shelf.change(document.pk, document.revision, f"# {words}, again\n")
    shelf.name_version(document, "kept")
    shelf.remove(document)
    files = list(library.glob("library.sqlite3*"))
    assert any(words.encode() in file.read_bytes() for file in files)
    shelf.delete_for_good(document)
    assert not Step.objects.filter(document_id=document.pk).exists()
    connection.close()
    files = list(library.glob("library.sqlite3*"))
    assert files
    assert not any(words.encode() in file.read_bytes() for file in files)


def test_preferences_keep_what_is_accepted() -> None:
    """A choice that is none changes nothing."""
    assert preferred().units == "cm"
    prefer(units="in", terms="klingon")
    assert (preferred().units, preferred().terms) == ("in", "us")
    prefer(hand="left")
    assert (preferred().units, preferred().hand) == ("in", "left")


def test_deleting_says_when_another_program_keeps_the_old_pages(library: Path) -> None:
    """What is still in the log is not said to be overwritten."""
    document = shelf.create("body", text("Ada"))
    with closing(sqlite3.connect(library / "library.sqlite3", isolation_level=None)) as other:
        other.execute("BEGIN")
        other.execute("SELECT count(*) FROM library_document").fetchone()
        assert not shelf.delete_for_good(document)
        other.execute("COMMIT")
    assert shelf.forget_traces()


@pytest.mark.parametrize("name", ["a\0b", "x\x07y", "\u202eabc", "a\u200bb"])
def test_names_have_no_letters_that_nobody_sees(name: str) -> None:
    """They would change how a page reads, or be refused by the document itself."""
    assert shelf.checked_name(name).isprintable()
    with pytest.raises(InputError, match="a name is needed"):
        shelf.checked_name("\u202e \u200b")
