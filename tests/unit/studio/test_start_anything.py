"""Whatever is typed into the forms of people and of a first garment: a page, never a fault of ours."""

from __future__ import annotations

from django.test import Client
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from studio_page import Page

from frogless.studio import entrance
from frogless.studio.library.models import Document, Garment

SKIRT = "/start/example:ring-dance-skirt/"
words = st.one_of(
    st.sampled_from(
        ["72", "28 1/4 in", "0", "-5", "1e9", "101 cm", "½", "18", '"', "\\", "#", "NaN"]
    ),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=30),
    st.integers(-(10**12), 10**12).map(str),
)
BODY = ("name", "age", "waist_girth", "hip_girth", "stature", "body_mass")
FIRST = (
    "body-name", "body-age", "body-waist_girth", "body-hip_girth", "body-stature", "swatch-hook",
    "swatch-r1-count", "swatch-r1-rows", "swatch-r1-width", "swatch-name", "swatch-state",
)  # fmt: skip


def owner() -> Client:
    """The owner's browser."""
    client = Client(headers={"host": "localhost"})
    client.get(entrance.link())
    return client


slow = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@slow
@given(st.dictionaries(st.sampled_from(BODY), words))
def test_body_is_saved_or_refused_with_everything_kept(typed: dict[str, str]) -> None:
    """And a body that was saved is shown again as it was typed."""
    client = owner()
    answer = client.post("/people/new/", {"units_were": "cm", "do": "save", **typed})
    assert answer.status_code in (302, 422)
    if answer.status_code == 422:
        fields = Page(answer).fields
        kept = {name: text.replace("\0", "") for name, text in typed.items() if text.strip(" \0")}
        shown = {name: fields[name] for name in kept}
        assert {k: v.split() for k, v in shown.items()} == {k: v.split() for k, v in kept.items()}
    else:
        assert client.get(answer.headers["Location"]).status_code == 200
    assert client.post("/people/said/", {"units_were": "in", **typed}).status_code == 200
    assert client.post("/people/new/", {"do": "in", **typed}).status_code == 200


@slow
@given(st.text(st.characters(exclude_categories=["Cs"]), max_size=200))
def test_pasted_text_is_a_body_or_is_refused(text: str) -> None:
    """Whatever it is."""
    assert owner().post("/people/open/", {"text": text}).status_code in (302, 422)


@slow
@given(st.dictionaries(st.sampled_from(FIRST), words))
def test_first_garment_is_made_whole_or_not_at_all(typed: dict[str, str]) -> None:
    """A body, a swatch and a garment, or none of them."""
    client = owner()
    before = (Document.objects.count(), Garment.objects.count())
    answer = client.post(SKIRT, {"units_were": "cm", "do": "make", **typed})
    assert answer.status_code in (302, 422)
    made = answer.status_code == 302
    after = (before[0] + 2 * made, before[1] + made)
    assert (Document.objects.count(), Garment.objects.count()) == after
    assert client.post(f"{SKIRT}said/", {"units_were": "in", **typed}).status_code == 200
