"""Elements of a page: text stays text."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from frogless.publish.markup import Markup, element, joined

NASTY = "<script>alert(1)</script> & \"'"


def test_text_is_escaped_when_it_looks_like_markup() -> None:
    """Children and attributes alike."""
    assert element("p", NASTY, title=NASTY) == (
        '<p title="&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;&#x27;">'
        "&lt;script&gt;alert(1)&lt;/script&gt; &amp; \"'</p>"
    )


def test_markup_is_kept_when_it_is_a_child() -> None:
    """Elements nest."""
    assert element("ul", element("li", "a < b"), Markup("<hr>")) == (
        "<ul><li>a &lt; b</li><hr></ul>"
    )


def test_attributes_are_named_as_in_html() -> None:
    """An underscore at the end falls away, one inside is a hyphen, None and False leave it out."""
    made = element("input", class_="a", aria_label="b", checked=True, id=None, hidden=False)
    assert made == '<input class="a" aria-label="b" checked>'


@given(st.text())
def test_joined_text_holds_no_tag_whatever_it_says(text: str) -> None:
    """No plain text opens an element."""
    assert "<" not in joined(text)
