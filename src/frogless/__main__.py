"""`python -m frogless`."""

import sys

from frogless.cli import main

sys.exit(main())
