# What was saved before gets the first step of its history.

from typing import Any

import django.db.models.deletion
import django.utils.timezone
from django.db import migrations, models


def first_steps(apps: Any, schema_editor: Any) -> None:
    document = apps.get_model("library", "Document")
    step = apps.get_model("library", "Step")
    for one in document.objects.all():
        step.objects.create(document=one, number=1, text=one.text, told="")


class Migration(migrations.Migration):
    dependencies = [("library", "0001_initial")]

    operations = [
        migrations.DeleteModel(name="LastForm"),
        migrations.AddField("Document", "revision", models.PositiveIntegerField(default=1)),
        migrations.AddField("Document", "step", models.PositiveIntegerField(default=1)),
        migrations.AddField(
            "Document",
            "made",
            models.DateTimeField(auto_now_add=True, default=django.utils.timezone.now),
            preserve_default=False,
        ),
        migrations.CreateModel(
            name="Step",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("number", models.PositiveIntegerField()),
                ("text", models.TextField()),
                ("told", models.CharField(default="", max_length=200)),
                ("made", models.DateTimeField(auto_now_add=True)),
                (
                    "document",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="steps",
                        to="library.document",
                    ),
                ),
            ],
            options={
                "ordering": ("number",),
                "constraints": [
                    models.UniqueConstraint(fields=("document", "number"), name="one_of_a_number")
                ],
            },
        ),
        migrations.CreateModel(
            name="Version",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("name", models.CharField(max_length=200)),
                ("text", models.TextField()),
                ("made", models.DateTimeField(auto_now_add=True)),
                (
                    "document",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="versions",
                        to="library.document",
                    ),
                ),
            ],
            options={"ordering": ("-made", "-pk")},
        ),
        migrations.CreateModel(
            name="Garment",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("name", models.CharField(max_length=200)),
                ("design", models.CharField(max_length=220)),
                ("body", models.CharField(max_length=220)),
                ("swatches", models.JSONField(default=list)),
                ("terms", models.CharField(default="us", max_length=2)),
                ("units", models.CharField(default="cm", max_length=2)),
                ("hand", models.CharField(default="right", max_length=5)),
                ("made", models.DateTimeField(auto_now_add=True)),
                ("opened", models.DateTimeField(auto_now=True)),
                ("removed", models.BooleanField(default=False)),
            ],
            options={"ordering": ("-opened", "-pk")},
        ),
        migrations.CreateModel(
            name="Preferences",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("values", models.JSONField(default=dict)),
            ],
        ),
        migrations.RunPython(first_steps, migrations.RunPython.noop),
    ]
