"""What is asked about a written pattern each time that it is read."""

from __future__ import annotations

from django.db import models

from frogless.studio.library.models import Document


class Asked(models.Model):
    """In which terms a pattern is read, for which size, and which kinds of findings are left out."""

    document = models.OneToOneField(
        Document, on_delete=models.CASCADE, primary_key=True, related_name="asked"
    )
    terms = models.CharField(max_length=4, default="auto")
    size = models.CharField(max_length=60, default="")
    silenced = models.JSONField(default=list)

    def __str__(self) -> str:
        """The pattern that it is asked about."""
        return self.document.name
