"""Nodes as data files write them."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Together, Work
from frogless.stitches.load import dictionary
from frogless.stitches.node_data import read_nodes

DC = Work("double_crochet")
V = (DC, Chain(1), DC)


@pytest.mark.parametrize(
    ("written", "nodes"),
    [
        ([{"work": "double_crochet"}], (DC,)),
        ([{"work": "double_crochet", "times": "n - 2"}], (Work("double_crochet", 1),)),
        ([{"work": "double_crochet", "times": "n - 3"}], ()),
        ([{"skip": 2}, {"chain": "n"}], (Skip(2), Chain(3))),
        ([{"together": "treble", "places": 2}], (Together("treble", 2),)),
        ([{"repeat": [{"skip": 1}], "times": "n"}], (Repeat((Skip(1),), 3),)),
        ([{"repeat": [{"skip": 1}], "times": 1}], (Skip(1),)),
        ([{"into": [{"work": "double_crochet"}, {"chain": 2}]}], (Into((DC, Chain(2))),)),
        ([{"work": "v_stitch"}], (Into(V),)),
        ([{"work": "v_stitch", "times": 2}], (Repeat((Into(V),), 2),)),
        ([{"into": [{"work": "v_stitch"}, {"chain": 2}]}], (Into((*V, Chain(2))),)),
        ([{"into": [{"work": "v_stitch", "times": 2}]}], (Into((Repeat(V, 2),)),)),
    ],
)
def test_nodes_are_those_written_when_read(written: object, nodes: tuple[Node, ...]) -> None:
    """Sums are worked out, what is there 0 times is left out, a group is what it works."""
    assert read_nodes(written, {"n": 3}, dictionary()) == nodes


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ([{"work": "v_stich"}], 'unknown stitch "v_stich"; did you mean "v_stitch"'),
        ([{"work": ["treble"]}], "['treble'] is no stitch; write its key"),
        ([{"works": "treble"}], "is not a node; write one of work, into"),
        ([3], "3 is not a node"),
        ({"work": "treble"}, "is no list of nodes"),
        ([{"into": 3}], "3 is no list of nodes"),
        ([{"together": "treble"}], "says no places"),
        ([{"repeat": []}], "says no times"),
        ([{"skip": "m"}], 'unknown parameter "m"'),
        ([{"work": "treble", "time": 2}], 'with "work" has no "time"; it may have "times"'),
        ([{"skip": 1, "chain": 2}], 'a node with "skip" has no "chain"'),
    ],
)
def test_what_is_no_node_is_refused_when_read(written: object, said: str) -> None:
    """In one sentence with what is accepted."""
    with pytest.raises(InputError) as caught:
        read_nodes(written, {"n": 3}, dictionary())
    assert said in str(caught.value)
