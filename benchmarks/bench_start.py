"""How long does a whole `frogless draft` take from the prompt?

The peer is `python -c "import numpy, pydantic"`: what any program that uses these two waits for
before its first line. Both are fresh processes, on files that the system has in memory.
"""

from __future__ import annotations

import subprocess
import sys
from functools import partial
from pathlib import Path

from skirt import ROUNDS, in_a_folder, request
from timing import MEDIANS, ratio, timed


def run(*command: str) -> None:
    """One fresh process."""
    subprocess.run([sys.executable, *command], check=True, capture_output=True)


def main() -> None:
    """Prints the medians and the ratios."""
    with in_a_folder() as folder:
        asked = request(Path(folder))
        files = [str(asked.design), "--body", str(asked.body), "--swatch", str(asked.swatches[0])]
        command = ("-m", "frogless", "draft", *files)
        whole = timed(
            "frogless draft -o, with the PDF", partial(run, *command, "-o", f"{folder}/out")
        )
        dry = timed("frogless draft, the summary alone", partial(run, *command))
        told = timed("frogless --version", partial(run, "-m", "frogless", "--version"))
    bare = timed('python -c "import numpy, pydantic"', partial(run, "-c", "import numpy, pydantic"))
    print(f"a skirt of {ROUNDS} rounds from the prompt, a fresh process each time; {MEDIANS}")
    for one in (whole, dry, told, bare):
        print(one.line())
    print("ratios to the start of Python with the two libraries")
    for one in (whole, dry, told):
        print(ratio(one.name, one, bare))


if __name__ == "__main__":
    main()
