"""What ships with the program and can be chosen: examples, and the sizes of tables as body files."""

from __future__ import annotations

import tomlkit

from frogless.body.measurements import Body
from frogless.body.size_tables import TABLES, sizes
from frogless.studio.examples import Example, examples

ANYBODY = "example:anybody"
"""The body of a garment that needs no measurement: nothing measured, what is used is estimated."""

ANYBODY_NAME = "anybody"
ANYBODY_TEXT = f'format = "frogless-body/1"\nname = "{ANYBODY_NAME}"\n\n[measurements]\n'


def with_us(kind: str, ref: str) -> Example | None:
    """The example or size that a ref stands for: `example:light-cotton`, `size:women:M`.

    Args:
        kind: "design", "body" or "swatch".
    """
    if (kind, ref) == ("body", ANYBODY):
        return Example(ANYBODY_NAME, ANYBODY_TEXT)
    where, _, key = ref.partition(":")
    if where == "example":
        return examples(kind).get(key)
    if where == "size" and kind == "body":
        table, _, size = key.partition(":")
        body = next((one for one in _sizes(table) if one.name == size), None)
        if body is not None:
            return Example(size_name(table, body), size_text(table, body))
    return None


def size_name(table: str, body: Body) -> str:
    """ "Women's size M", "Child of 8"."""
    return (
        f"Child of {body.name}"
        if table == "children"
        else f"{table.capitalize()}’s size {body.name}"
    )


def size_text(table: str, body: Body) -> str:
    """A size of a table as a body file."""
    document: dict[str, object] = {"format": "frogless-body/1", "name": size_name(table, body)}
    if body.age is not None:
        document["age"] = int(body.age)
    document["measurements"] = {
        key: f"{round(one.value.value / 10, 2):g} cm" for key, one in body.measurements.items()
    }
    return tomlkit.dumps(document)


def _sizes(table: str) -> tuple[Body, ...]:
    return sizes(table) if table in TABLES else ()
