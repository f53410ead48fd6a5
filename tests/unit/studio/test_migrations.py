"""A library of an earlier program is brought up to date with nothing of it lost."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from django.core.management import call_command

OLD = """
CREATE TABLE "django_migrations" ("id" integer NOT NULL PRIMARY KEY AUTOINCREMENT, "app" varchar(255) NOT NULL,
  "name" varchar(255) NOT NULL, "applied" datetime NOT NULL);
INSERT INTO django_migrations (app, name, applied) VALUES ('library', '0001_initial', '2026-11-25 08:04:00');
CREATE TABLE "library_lastform" ("id" integer NOT NULL PRIMARY KEY AUTOINCREMENT, "values" text NOT NULL);
CREATE TABLE "library_document" ("id" integer NOT NULL PRIMARY KEY AUTOINCREMENT, "kind" varchar(10) NOT NULL,
  "name" varchar(200) NOT NULL, "text" text NOT NULL, "changed" datetime NOT NULL, "removed" bool NOT NULL);
CREATE UNIQUE INDEX "one_of_a_name" ON "library_document" ("kind", "name") WHERE NOT "removed";
INSERT INTO library_document (kind, name, text, changed, removed) VALUES
  ('body', 'Ada', 'name = "Ada"', '2026-11-20 10:00:00', 0), ('body', 'Bo', 'name = "Bo"', '2026-11-20 10:00:00', 1);
"""

PREPARE = "from frogless.studio import serve; serve.prepared()"


def test_library_of_the_first_program_is_taken_over(tmp_path: Path) -> None:
    """Its documents, also those in the bin, each with the first step of a history."""
    file = tmp_path / "library.sqlite3"
    with closing(sqlite3.connect(file)) as old:
        old.executescript(OLD)
    for _ in range(2):
        subprocess.run(
            [sys.executable, "-c", PREPARE],
            env={**os.environ, "FROGLESS_DATA": str(tmp_path)},
            check=True,
            timeout=60,
        )
    with closing(sqlite3.connect(file)) as library:
        found = library.execute(
            "SELECT d.name, d.text, d.removed, d.revision, d.step, s.number, s.text"
            " FROM library_document d JOIN library_step s ON s.document_id = d.id ORDER BY d.id"
        ).fetchall()
    assert found == [
        ("Ada", 'name = "Ada"', 0, 1, 1, 1, 'name = "Ada"'),
        ("Bo", 'name = "Bo"', 1, 1, 1, 1, 'name = "Bo"'),
    ]


def test_models_have_their_migrations(capsys: pytest.CaptureFixture[str]) -> None:
    """No model was changed without one."""
    call_command("makemigrations", "--check", "--dry-run")
    assert "No changes detected" in capsys.readouterr().out
