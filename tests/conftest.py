"""What holds for all tests, whatever order and however busy a machine they run in."""

from __future__ import annotations

import os

from hypothesis import settings

# No test measures time, and a busy machine is no fault of a property.
# The same cases in every run, so that a change alone decides whether it passes;
# --hypothesis-profile=search looks for new ones.
settings.register_profile("frogless", deadline=None, derandomize=True, max_examples=40)
settings.register_profile("search", deadline=None, max_examples=500)
settings.load_profile("frogless")

# A browser test leaves its loop running in the thread, and Django then refuses its database to the
# tests that follow in the same process. Nothing of ours runs on that loop.
os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"

# What the command line prints is wrapped to the terminal; the width of the one that tests happen to
# run in is no part of what they look at.
os.environ["COLUMNS"] = "100"
