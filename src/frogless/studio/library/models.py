"""What the library keeps: whole documents as text, and the form as it was last left."""

from __future__ import annotations

from django.db import models


class Document(models.Model):
    """A design, a body or a swatch under its name. `removed` ones can be brought back."""

    kind = models.CharField(max_length=10)
    name = models.CharField(max_length=200)
    text = models.TextField()
    changed = models.DateTimeField(auto_now=True)
    removed = models.BooleanField(default=False)

    class Meta:
        """Names are told apart within a kind, among what is not removed."""

        ordering = ("kind", "name")
        constraints = (
            models.UniqueConstraint(
                fields=("kind", "name"), condition=models.Q(removed=False), name="one_of_a_name"
            ),
        )

    def __str__(self) -> str:
        """Its name."""
        return self.name


class LastForm(models.Model):
    """The one form that was used last, so that closing the browser loses nothing."""

    values = models.JSONField()
