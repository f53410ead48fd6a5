"""What the studio keeps: documents as text with their history, and the garments made of them."""

from __future__ import annotations

from django.db import models


class Document(models.Model):
    """A design, a body or a swatch. Its text is the truth; `removed` ones lie in the bin.

    `revision` grows with every change, whatever it is, so that two pages that change the same
    document notice each other. `step` is the number of the `Step` that the text stands at.
    """

    kind = models.CharField(max_length=10)
    name = models.CharField(max_length=200)
    text = models.TextField()
    revision = models.PositiveIntegerField(default=1)
    step = models.PositiveIntegerField(default=1)
    made = models.DateTimeField(auto_now_add=True)
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

    @property
    def ref(self) -> str:
        """What garments and forms call it: `own:12`."""
        return f"own:{self.pk}"


class Step(models.Model):
    """One text that a document had: what undo and redo walk along."""

    document = models.ForeignKey(Document, on_delete=models.CASCADE, related_name="steps")
    number = models.PositiveIntegerField()
    text = models.TextField()
    told = models.CharField(max_length=200, default="")
    made = models.DateTimeField(auto_now_add=True)

    class Meta:
        """Steps are numbered from 1 within their document."""

        ordering = ("number",)
        constraints = (
            models.UniqueConstraint(fields=("document", "number"), name="one_of_a_number"),
        )

    def __str__(self) -> str:
        """What it did."""
        return self.told


class Version(models.Model):
    """A text of a document that its author gave a name; it stays until she deletes it."""

    document = models.ForeignKey(Document, on_delete=models.CASCADE, related_name="versions")
    name = models.CharField(max_length=200)
    text = models.TextField()
    made = models.DateTimeField(auto_now_add=True)

    class Meta:
        """The newest first."""

        ordering = ("-made", "-pk")

    def __str__(self) -> str:
        """Its name."""
        return self.name


class Garment(models.Model):
    """A design for a body in a yarn, and how its pattern is shown. Each is named by a ref."""

    name = models.CharField(max_length=200)
    design = models.CharField(max_length=220)
    body = models.CharField(max_length=220)
    swatches = models.JSONField(default=list)
    terms = models.CharField(max_length=2, default="us")
    units = models.CharField(max_length=2, default="cm")
    hand = models.CharField(max_length=5, default="right")
    made = models.DateTimeField(auto_now_add=True)
    opened = models.DateTimeField(auto_now=True)
    removed = models.BooleanField(default=False)

    class Meta:
        """The one that was opened last comes first."""

        ordering = ("-opened", "-pk")

    def __str__(self) -> str:
        """Its name."""
        return self.name


class Preferences(models.Model):
    """The one row of what the person prefers."""

    values = models.JSONField(default=dict)
