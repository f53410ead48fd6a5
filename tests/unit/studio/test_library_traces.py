"""Where the name of a person stays when she is deleted for good."""

from __future__ import annotations

import html

from django.test import Client

from frogless.studio.library import shelf
from frogless.studio.library.models import Garment
from frogless.studio.library.uses import named_after

BODY = 'format = "frogless-body/1"\nname = "Ada"\n'


def garment(name: str, *, removed: bool = False) -> Garment:
    """A garment that is called so."""
    return Garment.objects.create(
        name=name,
        design="example:ring-skirt",
        body="example:dancer-3",
        swatches=["example:light-cotton"],
        removed=removed,
    )


def asked(client: Client, key: int) -> str:
    """What is said before a document is deleted for good."""
    return html.unescape(client.get(f"/library/{key}/delete-for-good/").content.decode())


def test_garments_that_keep_the_name_are_named(client: Client) -> None:
    """With the field where each gets another; for one in the bin, the bin."""
    body = shelf.create("body", BODY)
    skirt, binned = garment("Skirt for Ada"), garment("Shawl for ada 2", removed=True)
    said = asked(client, body.pk)
    assert "2 garments keep their own names" in said
    assert f'<a href="/garments/#name-{skirt.pk}">Rename Skirt for Ada</a>' in said
    assert f"{binned.name}, which is in the" in said
    assert f'id="name-{skirt.pk}"' in client.get("/garments/").content.decode()


def test_garments_of_other_names_are_not(client: Client) -> None:
    """A name within another word is not hers, and signs of a search mean themselves."""
    body = shelf.create("body", BODY)
    garment("Skirt for Adam")
    assert "keep" not in asked(client, body.pk).split("<main")[1].split("Keep it")[0]
    assert named_after("A.am") == ()
    assert [one.name for one in named_after("adam")] == ["Skirt for Adam"]


def test_names_of_swatches_and_designs_are_no_persons(client: Client) -> None:
    """Only where it is a person's name it is told."""
    design = shelf.create("design", 'format = "frogless-design/1"\n', "Skirt")
    garment("Skirt for Ada")
    assert "own name" not in asked(client, design.pk)


def test_emptied_bin_tells_it_too(client: Client) -> None:
    """Of garments that stay; those in the bin go with it."""
    shelf.remove(shelf.create("body", BODY))
    garment("Skirt for Ada")
    garment("Shawl for Ada", removed=True)
    said = html.unescape(client.get("/library/empty-bin/").content.decode())
    assert "Rename Skirt for Ada" in said
    assert "Rename Shawl for Ada" not in said
