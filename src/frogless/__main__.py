"""`python -m frogless`."""

import sys

from frogless.cli import main

if __name__ == "__main__":
    sys.exit(main())
